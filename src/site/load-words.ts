import type { DistrictFigures, LoadFigures } from '../core/wiring/layout-circuit.ts';
import { ohmName } from '../core/wiring/small-parts.ts';
import { below, type Html, line, text } from './html.ts';
import type { Book } from './notebooks.ts';
import type { Told } from './table.ts';
import { counted, plainName } from './words.ts';

function amperes(amps: number): string {
  return `${Number(amps.toFixed(amps < 0.1 ? 3 : 2))}\u00A0A`;
}

/** What a load draws, told apart: all the time, or for a moment as it is thrown. */
function drawnBy({ amps, kind }: LoadFigures): Html {
  const when = kind === 'steady' ? 'all the time' : 'for a moment, one at a time';
  return line(text(amperes(amps)), below(text(when)));
}

/** Resistors, rectifier and fuse before a load. */
function before({ notebook }: Book, load: string): Html {
  const leds = notebook.wiring?.leds.find((one) => one.load === load);
  const fuse = notebook.wiring?.fuses.find((one) => one.load === load);
  const resistor = leds?.resistor ?? null;
  const said = [
    ...(leds === undefined || resistor === null
      ? []
      : [`${counted(leds.rows, 'resistor')} of ${ohmName(resistor.bought)}, ${leds.rating ?? 'over 10'} W`]),
    ...(leds?.rectifier === true ? ['bridge rectifier'] : []),
    ...(fuse === undefined || fuse.amps === null ? [] : [`slow fuse of ${fuse.amps} A`]),
  ];
  return text(said.length === 0 ? 'nothing' : said.join('; '));
}

/** Every load with what it draws, the voltage it has, and what stands before it; null where there is none. */
export function loadTable(book: Book): Told | null {
  const districts = book.notebook.wiring?.districts ?? [];
  const rows = districts.flatMap(({ name, loads }) => loads.map((load) => ({ district: name, load })));
  if (rows.length === 0) return null;
  return {
    label: 'Loads',
    caption: text('Loads with the voltage at their own place: steady ones all on, a pulse thrown alone'),
    columns: [['Load'], ['Draws', 'right'], ['Has', 'right'], ['Before it']],
    rows: rows.map(({ district, load }) => [
      line(text(plainName(load.load)), below(text(`on ${district}`))),
      drawnBy(load),
      text(load.volts === null ? 'not fed' : `${load.volts.toFixed(1)}\u00A0V`),
      before(book, load.load),
    ]),
  };
}

/** What a district's steady loads do as it is switched on; nothing where they draw no more than later. */
export function startWords({ name, startUp, steady, tripsAt }: DistrictFigures): string | null {
  if (startUp <= steady) return null;
  return `Switched on, ${name} draws ${amperes(startUp)} for a moment and ${amperes(steady)} after it; it switches off at ${amperes(tripsAt)}.`;
}
