import type { Finding } from '../finding.ts';
import { atLeast, length, say } from '../units/say.ts';
import { edgeProfiles, LEAST_BOARD } from './board.ts';
import type { Field } from './field.ts';
import { found, PRACTICE } from './found.ts';
import type { BoardAsk, Edge, Form, Land } from './land.ts';
import type { Site } from './site.ts';
import { toBench } from './site.ts';

const EDGES: readonly Edge[] = ['front', 'back', 'left', 'right'];

/** Ground that is cut off at an edge without a board to hold it, and boards where there is nothing to hold. */
export function edgeFindings(land: Land, field: Field, sites: readonly Site[]): readonly Finding[] {
  return sites.flatMap((site) =>
    EDGES.flatMap((edge) => {
      const boards = land.boards.filter((board) => board.bench === site.bench.id && board.edge === edge);
      const profiles = edgeProfiles(field, site, edge);
      const highest = profiles.reduce((most, { points }) => points.reduce((top, [, h]) => Math.max(top, h), most), 0);
      if (profiles.length === 0) return boards.map((board) => needless(board, edge));
      return boards.length === 0 ? [open({ land, site, edge, highest, first: site === sites[0] })] : [];
    }),
  );
}

function needless({ id }: BoardAsk, edge: Edge): Finding {
  return found({
    ...{ rule: 'board-needless', level: 'note', where: `board.${id}`, figure: 0, limit: LEAST_BOARD },
    what: say`The ground stays under ${length(LEAST_BOARD)} along the ${edge} edge, so board ${id} has nothing to hold.`,
    mend: say`Take the board off, or bring the ground to the edge.`,
    source: 'geometry',
  });
}

type Open = {
  readonly land: Land;
  readonly site: Site;
  readonly edge: Edge;
  readonly highest: number;
  readonly first: boolean;
};

function open({ land, site, edge, highest, first: onFirst }: Open): Finding {
  const hills = land.forms.flatMap((form) => pastEdge(form, site, edge));
  const [first] = hills;
  const remedy = first === undefined ? say`` : [...say` Or move ${first.id} ${atLeast(first.past)} in.`];
  return found({
    ...{
      rule: 'hill-past-edge',
      level: 'care',
      where: first?.id ?? site.bench.id,
      figure: highest,
      limit: LEAST_BOARD,
    },
    what: say`The ground is cut off ${length(highest)} high at the ${edge} edge of ${site.bench.id}, with no board to hold it.`,
    mend: [
      ...say`Add a profile board: boards: [{ id: ${edge}, ${onFirst ? '' : `bench: ${site.bench.id}, `}edge: ${edge}, stock: ... }] under ground.`,
      ...remedy,
    ],
    source: PRACTICE,
  });
}

/** How far a hill's foot runs past an edge. */
function pastEdge(form: Form, site: Site, edge: Edge): readonly { readonly id: string; readonly past: number }[] {
  if (form.kind !== 'hill') return [];
  const [x, y] = toBench(site.pose, form.top);
  const { length: long, width } = site.bench;
  const room = edge === 'front' ? y : edge === 'back' ? width - y : edge === 'left' ? x : long - x;
  const past = form.footRadius - room;
  return past > 0 ? [{ id: form.id, past: Math.ceil(past) }] : [];
}
