import type { Wire } from '../core/wiring/wire.ts';
import { below, both, type Html, line, text } from './html.ts';
import { figurePair, lengthPair, sentencePair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { stockName } from './sheet-words.ts';
import type { Told } from './table.ts';
import { counted, UNIT_NAMES } from './words.ts';

const KINDS: Readonly<Record<Wire['kind'], string>> = {
  bus: 'bus',
  unit: 'to or from a unit',
  feeder: 'feeder',
  lead: 'flexible lead with a plug',
  load: 'to a load',
  frog: 'for a live frog',
};

/** Every wire as it is cut, in the order of its number. */
export function wireTable(book: Book): Told {
  return {
    label: 'Wires to cut',
    caption: line(
      text('Lengths as cut, with slack for bends, ends and mistakes, in '),
      both(UNIT_NAMES),
      text('; the label goes on both ends'),
    ),
    columns: [['Label'], ['Length', 'right'], ['From'], ['To'], ['Wire']],
    rows: (book.notebook.wiring?.wires ?? []).map((wire) => [
      text(wire.label),
      both(figurePair(wire.length)),
      both(sentencePair(wire.from)),
      both(sentencePair(wire.to)),
      line(text(stockName(book, wire.stock)), below(text(`${wire.colour}, ${KINDS[wire.kind]}`))),
    ]),
  };
}

/** What the wires come to, one sentence for each stock. */
export function wireSums(book: Book): readonly Html[] {
  const wires = book.notebook.wiring?.wires ?? [];
  return [...new Set(wires.map(({ stock }) => stock))].map((stock) => {
    const mine = wires.filter((wire) => wire.stock === stock);
    const length = mine.reduce((sum, wire) => sum + wire.length, 0);
    const longest = Math.max(...mine.map((wire) => wire.length));
    const shades = [...new Set(mine.map(({ colour }) => colour))].map((colour) => {
      const same = mine.filter((wire) => wire.colour === colour);
      return line(text(`, ${colour} `), both(lengthPair(same.reduce((sum, wire) => sum + wire.length, 0))));
    });
    return line(
      text(`${stockName(book, stock)}: ${counted(mine.length, 'wire')}, `),
      both(lengthPair(length)),
      text(' in all, the longest '),
      both(lengthPair(longest)),
      ...shades,
    );
  });
}
