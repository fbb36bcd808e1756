import type { SetOutRow } from '../core/track/set-out.ts';
import { below, both, type Html, line, text } from './html.ts';
import { figurePair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import type { Column, Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

type Kind = SetOutRow['kind'];

/** The three ways to mark: by a trammel about a centre, by two measures, by an offset from a straight. */
const GROUPS: readonly { readonly title: string; readonly kinds: readonly Kind[]; readonly own: readonly Column[] }[] =
  [
    { title: 'Centres of the arcs', kinds: ['centre'], own: [['Radius', 'right']] },
    {
      title: 'Tangent points, turnouts and ends',
      kinds: ['tangent', 'turnout', 'frog', 'end'],
      own: [['Along the line', 'right']],
    },
    {
      title: 'Easements',
      kinds: ['easement'],
      own: [
        ['Along the straight', 'right'],
        ['Off it', 'right'],
      ],
    },
  ];

const MARKS: Readonly<Record<Kind, string>> = {
  centre: 'centre',
  tangent: 'tangent point',
  easement: 'on the easement',
  turnout: 'end of the turnout',
  frog: 'point of the frog',
  end: 'end of the line',
};

function figure(mm: number | null): Html {
  return mm === null ? text('–') : both(figurePair(mm));
}

function ownFigures({ along, at, kind, offset, radius }: SetOutRow): readonly Html[] {
  if (kind === 'centre') return [figure(radius)];
  return kind === 'easement' ? [figure(along), figure(offset)] : [figure(at)];
}

function rowOf(row: SetOutRow): readonly Html[] {
  const off = row.onDeck ? [] : [below(text('off the deck'))];
  const [left, right] = row.diagonals ?? [null, null];
  return [
    text(row.id),
    line(text(MARKS[row.kind]), ...off),
    ...ownFigures(row),
    figure(row.x),
    figure(row.y),
    figure(left),
    figure(right),
  ];
}

function datum(bench: string | null): string {
  if (bench === null) return 'off every bench: measured from the zero of the plan, to the right and to the back';
  return `from the left and the front edge of the frame of ${bench}; the last two from its front corners, as a check`;
}

/** What a trammel and a square need, bench by bench: centres, then points, then offsets of easements. */
export function setOutTables({ notebook }: Book): readonly Told[] {
  const rows = notebook.track?.setOut ?? [];
  const benches = [...new Set(rows.map(({ bench }) => bench))];
  return benches.flatMap((bench) =>
    GROUPS.flatMap(({ kinds, own, title }): readonly Told[] => {
      const mine = rows.filter((row) => row.bench === bench && kinds.includes(row.kind));
      if (mine.length === 0) return [];
      return [
        {
          label: bench === null ? title : `${title}, ${bench}`,
          caption: line(text(`${title}, ${datum(bench)}. In `), both(UNIT_NAMES)),
          columns: [
            ['Mark'],
            ['What'],
            ...own,
            ['From left', 'right'],
            ['From front', 'right'],
            ['Left corner', 'right'],
            ['Right corner', 'right'],
          ],
          rows: mine.map(rowOf),
        },
      ];
    }),
  );
}
