import type { AtPlace, DistrictFigures } from '../core/wiring/layout-circuit.ts';
import { below, both, type Html, line, strong, text } from './html.ts';
import { lengthPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import type { Told } from './table.ts';

/** More than any wire carries: a loop without resistance. */
const BEYOND = 1e6;

function placeOn({ at, line: own }: AtPlace): Html {
  return line(text(`${own} at `), both(lengthPair(at)));
}

function amperes(amps: number): string {
  return amps > BEYOND ? 'without limit' : `${Number(amps.toFixed(amps < 10 ? 2 : 0))}\u00A0A`;
}

function nameOf({ name, lines }: DistrictFigures): Html {
  return line(text(name), below(text(lines.length === 0 ? 'no line' : lines.join(', '))));
}

function voltsOf({ forTrains, worst }: DistrictFigures): Html {
  if (worst === null) return text('nothing here is fed');
  const trains = line(text(`trains draw ${amperes(forTrains)} on `), placeOn(worst));
  return line(text(`${Number(worst.volts.toFixed(2))}\u00A0V`), below(trains));
}

function shortOf({ short }: DistrictFigures): Html {
  if (short === null) return text('nothing here is fed');
  const loop = line(text(`${short.loop.toFixed(2)}\u00A0Ω there and back, on `), placeOn(short));
  return line(text(amperes(short.amps)), below(loop));
}

function tripsOf({ short, trips }: DistrictFigures): Html {
  if (short === null) return text('cannot be said');
  return trips ? text('yes, anywhere') : strong('no: do not run');
}

/** What every district gives at its worst places, and whether a short switches it off. */
export function districtTable({ notebook }: Book): Told {
  const { wiring } = notebook;
  return {
    label: 'Districts',
    caption: text(
      `Voltage of ${Number((wiring?.volts ?? 0).toFixed(2))}\u00A0V at the supply; places along each line from its start; copper taken at ${wiring?.warm ?? 0}\u00A0°C. The current of a short is what the wires let through`,
    ),
    columns: [
      ['District'],
      ['Trips at', 'right'],
      ['Lowest voltage'],
      ['Short at the worst place'],
      ['Does a short trip it?'],
    ],
    rows: (wiring?.districts ?? []).map((district) => [
      nameOf(district),
      text(amperes(district.tripsAt)),
      voltsOf(district),
      shortOf(district),
      tripsOf(district),
    ]),
  };
}
