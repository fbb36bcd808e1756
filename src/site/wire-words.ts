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

/** Wires of one number: a pair, or the one up to a frog. */
type Numbered = { readonly number: string; readonly wires: readonly [Wire, ...Wire[]] };

function numbered({ notebook }: Book): readonly Numbered[] {
  const groups: { number: string; wires: [Wire, ...Wire[]] }[] = [];
  for (const wire of notebook.wiring?.wires ?? []) {
    const number = wire.label.replace(/[a-z]$/, '');
    const known = groups.find((one) => one.number === number);
    if (known === undefined) groups.push({ number, wires: [wire] });
    else known.wires.push(wire);
  }
  return groups;
}

/** How many wires there are to cut, and of which numbers. */
export function wireCount(book: Book): string {
  const wires = book.notebook.wiring?.wires ?? [];
  const last = wires.at(-1)?.label.replace(/[a-z]$/, '') ?? '';
  return `${counted(wires.length, 'wire')} to cut, numbers 1 to ${last}`;
}

/** Every wire as it is cut, those of one number in one row, in the order of the numbers. */
export function wireTable(book: Book): Told {
  return {
    label: 'Wires to cut',
    caption: line(
      text('Length of each wire as cut, with slack for bends, ends and mistakes, in '),
      both(UNIT_NAMES),
      text(
        '; its number and letter go on both ends. Along and across are from a bench’s front left corner, seen from above',
      ),
    ),
    columns: [['Wires'], ['Each', 'right'], ['From and to']],
    rows: numbered(book).map(({ number, wires: [first, ...rest] }) => {
      const letters = [first, ...rest].map(({ colour, label }) => `${label.slice(number.length)} ${colour}`);
      const way = line(both(sentencePair(first.from)), text(' to '), both(sentencePair(first.to)));
      return [
        line(text(number), below(text(letters.join(', ')))),
        both(figurePair(first.length)),
        line(way, ...noteWords(first), below(text(`${stockName(book, first.stock)}, ${KINDS[first.kind]}`))),
      ];
    }),
  };
}

function noteWords({ note }: Wire): readonly Html[] {
  return note === undefined ? [] : [text('; '), both(sentencePair(note))];
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
