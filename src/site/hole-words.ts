import { standing, within } from '../core/geometry/pose.ts';
import type { Request } from '../core/stock/part.ts';
import { requestFeature } from '../core/stock/request-feature.ts';
import type { BusHole, DrillAccess } from '../core/wiring/holes.ts';
import { below, both, type Html, line, partLink, text } from './html.ts';
import { figurePair, lengthPair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { partNamed, pieceLabel } from './parts.ts';
import type { Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

const DRILLS: Readonly<Record<DrillAccess, string>> = {
  'in place': 'before assembly, or in place',
  'angle drill': 'before assembly, or with an angle drill',
  'before assembly': 'only before assembly',
};

/** The middle of a hole on its piece, from the left end and the bottom edge; null when it misses the piece. mm */
export function holeOnPart(
  book: Book,
  hole: Pick<BusHole, 'at' | 'diameter' | 'part'>,
): readonly [number, number] | null {
  const part = partNamed(book, hole.part);
  const place = part?.places.find(({ id }) => id === hole.part);
  const bench = book.notebook.benches.find(({ id }) => id === part?.bench);
  if (part === null || place === undefined || bench === undefined) return null;
  const { diameter } = hole;
  const request: Request = {
    by: 'bus',
    part: hole.part,
    kind: 'hole',
    at: hole.at,
    size: [diameter, diameter],
    limit: null,
  };
  const pose = within(standing([bench.place.x, bench.place.y], bench.place.turn), place.pose);
  const feature = requestFeature(part.blank, pose, request);
  return feature?.kind === 'hole' ? feature.at : null;
}

function figure(mm: number | undefined): Html {
  return mm === undefined ? text('–') : both(figurePair(mm));
}

/** The holes the bus goes through, each on its piece as the piece's drawing lies. */
export function holeTable(book: Book): Told {
  return {
    label: 'Holes for the bus',
    caption: line(
      text('Middle of each hole from the left end and the bottom edge of its piece, as its drawing lies, in '),
      both(UNIT_NAMES),
    ),
    columns: [
      ['Hole'],
      ['Through'],
      ['From left', 'right'],
      ['From bottom', 'right'],
      ['Across', 'right'],
      ['Drilled'],
    ],
    rows: (book.notebook.wiring?.holes ?? []).map((hole) => {
      const at = holeOnPart(book, hole);
      const most = line(text('for '), text(`${hole.wires} wires; at most `), both(lengthPair(hole.limit)));
      return [
        text(hole.id.replace('hole-', 'H')),
        partLink(book, hole.part, pieceLabel(book, hole.part)),
        figure(at?.[0]),
        figure(at?.[1]),
        figure(hole.diameter),
        line(text(DRILLS[hole.access]), below(most)),
      ];
    }),
  };
}
