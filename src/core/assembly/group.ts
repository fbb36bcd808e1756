import { type Body, joinedBody, type Link } from './body.ts';
import { type Knot, knotOf } from './knot.ts';
import { type Manner, type Move, orderOf } from './order.ts';
import { scene } from './scene.ts';

/** Parts that are built first and then go in as one: a drawer, a leg. */
export type Group = { readonly id: string; readonly members: readonly string[] };

/** A move, and the sub-assembly it builds; null for the bench itself. */
export type Placed = Move & { readonly within: string | null };

/** Moves in order, groups taken apart inside, and what nothing takes apart. */
export type Built = { readonly moves: readonly Placed[]; readonly knots: readonly Knot[] };

/** Drawers and legs by what their members' ids begin with: `drawer.front-2` holds `drawer.front-2.side-left`. */
export function groupsOf(ids: readonly string[]): readonly Group[] {
  const prefixes = new Set(ids.map((id) => id.slice(0, Math.max(0, id.lastIndexOf('.')))));
  return [...prefixes].flatMap((id) => {
    const members = ids.filter((one) => one.startsWith(`${id}.`));
    return WHOLE.test(id) && members.length > 1 ? [{ id, members }] : [];
  });
}

/** Groups as far as one step puts all of them in: what a later step adds, a drawer's face, goes to its place by itself. */
export function builtInOneStep(groups: readonly Group[], steps: ReadonlyMap<string, number>): readonly Group[] {
  return groups.flatMap(({ id, members }): readonly Group[] => {
    const known = members.flatMap((member) => steps.get(member) ?? []);
    const first = known.reduce((least, step) => Math.min(least, step), Number.POSITIVE_INFINITY);
    const together = members.filter((member) => (steps.get(member) ?? first) === first);
    return together.length > 1 ? [{ id, members: together }] : [];
  });
}

/** A prefix that names one drawer or one leg, with or without its bench. */
const WHOLE = /(^|\.)(drawer|leg)\.[^.]+$/;

/** Everything that is put together, and the joints that hold it. */
export type Kit = {
  readonly bodies: readonly Body[];
  readonly links: readonly Link[];
  readonly groups: readonly Group[];
};

/** The order of the bench with each group as one body, and before each group's move the order inside it. */
export function builtOf({ bodies, links, groups }: Kit, manner: Manner): Built {
  const owner = new Map(groups.flatMap(({ id, members }) => members.map((member) => [member, id])));
  const outer = outerBodies(bodies, groups);
  const at = scene(
    outer,
    links.map((link) => outerLink(link, owner)),
  );
  const outside = withGroups(manner, groups);
  const { moves, locked } = orderOf(at, outside);
  const knots = locked.map((members) => knotOf(at, members, outside));
  const inside = new Map(groups.map((group) => [group.id, insideOf(group, { bodies, links, manner })]));
  return {
    moves: runsOf(moves, inside).flatMap((run) => expanded(run, { groups, inside })),
    knots: [...knots, ...[...inside.values()].flatMap((built) => built.knots)],
  };
}

/** The manner with every group put in by the step that puts its members in. */
function withGroups(manner: Manner, groups: readonly Group[]): Manner {
  const { steps } = manner;
  if (steps === undefined) return manner;
  const ofGroups = groups.flatMap(({ id, members }) => {
    const step = members.flatMap((member) => steps.get(member) ?? [])[0];
    return step === undefined ? [] : [[id, step] as const];
  });
  return { ...manner, steps: new Map([...steps, ...ofGroups]) };
}

function outerBodies(bodies: readonly Body[], groups: readonly Group[]): readonly Body[] {
  const grouped = new Set(groups.flatMap(({ members }) => members));
  const whole = groups.map(({ id, members }) =>
    joinedBody(
      id,
      bodies.filter((one) => members.includes(one.id)),
    ),
  );
  return [...bodies.filter(({ id }) => !grouped.has(id)), ...whole];
}

function outerLink({ id, between: [a, b] }: Link, owner: ReadonlyMap<string, string>): Link {
  return { id, between: [owner.get(a) ?? a, owner.get(b) ?? b] };
}

type Inside = { readonly bodies: readonly Body[]; readonly links: readonly Link[]; readonly manner: Manner };

function insideOf(group: Group, { bodies, links, manner }: Inside): Built {
  const at = scene(
    bodies.filter(({ id }) => group.members.includes(id)),
    links,
  );
  const upright: Manner = { ...manner, up: [0, 0, 1] };
  const { moves, locked } = orderOf(at, upright);
  return {
    moves: moves.map((move) => ({ ...move, within: group.id })),
    knots: locked.map((members) => knotOf(at, members, upright)),
  };
}

type Expansion = { readonly groups: readonly Group[]; readonly inside: ReadonlyMap<string, Built> };

/** Moves in their order, those of groups that follow each other together: all four legs are glued before the first is bolted on. */
function runsOf(moves: readonly Move[], inside: Expansion['inside']): readonly (readonly Move[])[] {
  const isGroup = ({ bodies: [id = ''], bodies }: Move) => bodies.length === 1 && inside.has(id);
  const runs: Move[][] = [];
  for (const move of moves) {
    const run = runs.at(-1);
    const before = run?.at(-1);
    if (run !== undefined && before !== undefined && isGroup(before) && isGroup(move)) run.push(move);
    else runs.push([move]);
  }
  return runs;
}

/** What is built by itself first, each group in its own order, then every group in its place. */
function expanded(run: readonly Move[], { groups, inside }: Expansion): readonly Placed[] {
  const before = run.flatMap(({ bodies: [id = ''], bodies }) =>
    bodies.length === 1 ? (inside.get(id)?.moves ?? []) : [],
  );
  const going = run.map((move): Placed => {
    const members = move.bodies.flatMap((id) => groups.find((group) => group.id === id)?.members ?? [id]);
    return { ...move, bodies: members, within: null };
  });
  return [...before, ...going];
}
