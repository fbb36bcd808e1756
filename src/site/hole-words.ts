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
