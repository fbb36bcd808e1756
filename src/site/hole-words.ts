import type { DeckHole } from '../core/wiring/deck-holes.ts';
import { holeOnPart } from '../core/wiring/hole-on-part.ts';
import { type DrillAccess, holeTag } from '../core/wiring/holes.ts';
import { below, both, type Html, line, partLink, text } from './html.ts';
import { figurePair, lengthPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
import type { Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

const DRILLS: Readonly<Record<DrillAccess, string>> = {
  'in place': 'before assembly, or in place',
  'angle drill': 'before assembly, or with an angle drill',
  'before assembly': 'only before assembly',
};

function figure(mm: number | undefined): Html {
  return mm === undefined ? text('–') : both(figurePair(mm));
}

const LIES: Readonly<Record<DeckHole['lies'], Readonly<Record<DeckHole['kind'], string>>>> = {
  below: {
    feeder: 'between the rails, at the middle',
    lead: 'between the rails, at the middle',
    load: 'right below it',
    frog: 'below the frog',
  },
  beside: {
    feeder: 'beside the rails: its wires go on over the deck',
    lead: 'at the hinge, its wires go on along the span',
    load: 'beside it: its wires go on over the deck',
    frog: 'beside the frog: its wire goes on over the deck',
  },
};

/** How a feeder's hole came where it is. */
function movedWords({ moved }: DeckHole): Html {
  return line(text('moved '), both(lengthPair(Math.abs(moved))), text(' along its line, clear of what is there'));
}

/** The holes down through the deck; null where none is drilled. */
export function deckHoleTable(book: Book): Told | null {
  const holes = book.notebook.wiring?.deckHoles ?? [];
  if (holes.length === 0) return null;
  return {
    label: 'Holes through the deck',
    caption: line(
      text('Middle of each hole from the left end and the front edge of its board as it lies in the deck, in '),
      both(UNIT_NAMES),
      text('; its number is the number of its wires'),
    ),
    columns: [
      ['For wires'],
      ['Through'],
      ['From left', 'right'],
      ['From front', 'right'],
      ['Across', 'right'],
      ['Where it comes up'],
    ],
    rows: holes.map((hole) => [
      text(hole.label),
      hole.part === null ? text('no board') : partLink(book, hole.part, pieceLabel(book, hole.part)),
      figure(hole.at?.[0]),
      figure(hole.at?.[1]),
      figure(hole.diameter),
      line(text(LIES[hole.lies][hole.kind]), ...(hole.moved === 0 ? [] : [below(movedWords(hole))])),
    ]),
  };
}

/** The holes the bus goes through, each on its piece as the piece's drawing lies. */
export function holeTable(book: Book): Told {
  return {
    label: 'Holes for the bus',
    caption: line(
      text('Middle of each hole from the left end and the underside of its board, as the board’s drawing lies, in '),
      both(UNIT_NAMES),
    ),
    columns: [
      ['Hole'],
      ['Through'],
      ['From left end', 'right'],
      ['From underside', 'right'],
      ['Across', 'right'],
      ['Drilled'],
    ],
    rows: (book.notebook.wiring?.holes ?? []).map((hole) => {
      const on = holeOnPart(book.notebook, hole);
      const most = line(text('for '), text(`${hole.wires} wires; at most `), both(lengthPair(hole.limit)));
      return [
        text(holeTag(hole.id)),
        partLink(book, hole.part, pieceLabel(book, hole.part)),
        on?.end == null ? figure(on?.at?.[0]) : line(figure(on.at?.[0]), below(text(`the ${on.end} end`))),
        on?.edge === 'underside'
          ? figure(on.at?.[1])
          : line(figure(on?.at?.[1]), below(text(`from its ${on?.edge ?? 'bottom edge'}`))),
        figure(hole.diameter),
        line(text(DRILLS[hole.access]), below(most)),
      ];
    }),
  };
}
