import type { Vector } from '../geometry/shapes.ts';
import { dot } from '../geometry/vector.ts';
import { type Blocking, blocking } from './blocking.ts';
import type { Body, Link } from './body.ts';
import { components } from './components.ts';
import { directionsOf } from './directions.ts';
import { engagedTravel } from './engagement.ts';

/**
 * Bodies that go to their place together in one straight move along `direction` (unit length); `travel` is how far they
 * slide while engaged, mm.
 */
export type Move = { readonly bodies: readonly string[]; readonly direction: Vector; readonly travel: number };

/** Every body in the order it goes in, or the smallest set found that no straight move takes apart. */
export type Order =
  | { readonly kind: 'found'; readonly moves: readonly Move[] }
  | { readonly kind: 'knot'; readonly knot: readonly string[] };

/** What stands, who blocks whom along each direction, who is joined to whom, and which way is up. */
export type Scene = {
  readonly bodies: readonly Body[];
  readonly graphs: readonly Blocking[];
  readonly joined: readonly (readonly number[])[];
  readonly up: Vector;
};

type Exit = { readonly members: readonly number[]; readonly direction: Vector; readonly travel: number };

export function scene(bodies: readonly Body[], links: readonly Link[], up: Vector): Scene {
  const index = new Map(bodies.map((one, i) => [one.id, i]));
  const joined = bodies.map((one) =>
    links.flatMap(({ between: [a, b] }) => {
      const other = a === one.id ? index.get(b) : b === one.id ? index.get(a) : undefined;
      return other === undefined ? [] : [other];
    }),
  );
  const graphs = directionsOf(bodies).map((direction) => blocking(bodies, direction));
  return { bodies, graphs, joined, up };
}

/**
 * The order in which bodies go together, each by one straight free move: the order in which they come apart, read
 * backwards (Wilson and Latombe 1994). Of all that can leave, what slides least while engaged goes first, since a long
 * slide scrapes the glue off; then the smaller group; then what lifts up.
 */
export function orderOf(at: Scene): Order {
  const present = new Set(at.bodies.keys());
  const apart = takeApart(at, present);
  if (present.size > 1) return { kind: 'knot', knot: names(at, smallestKnot(at, present)) };
  return { kind: 'found', moves: apart.reverse() };
}

/** Takes what can leave out of `present`, in order; what cannot stays there. */
function takeApart(at: Scene, present: Set<number>): Move[] {
  const moves: Move[] = [];
  for (let exit = bestExit(at, present); exit !== null; exit = bestExit(at, present)) {
    for (const member of exit.members) present.delete(member);
    moves.push(moveOf(at, exit));
    if (exit.members.length < 2) continue;
    const group = new Set(exit.members);
    moves.push(...takeApart(at, group));
    if (group.size > 1) for (const member of group) present.add(member);
    if (group.size > 1) return moves;
  }
  const [last] = present;
  if (present.size === 1 && last !== undefined)
    moves.push(moveOf(at, { members: [last], direction: at.up, travel: 0 }));
  return moves;
}

function bestExit(at: Scene, present: ReadonlySet<number>): Exit | null {
  let best: Exit | null = null;
  if (present.size < 2) return null;
  for (const graph of at.graphs) {
    for (const members of exits(graph, present)) {
      if (members.length >= present.size || !connected(at, members)) continue;
      const exit = { members, direction: graph.direction, travel: travelOf(at, members, present, graph.direction) };
      if (best === null || before(at, exit, best)) best = exit;
    }
  }
  return best;
}

/** Groups along one direction that nothing left standing blocks. */
function exits(graph: Blocking, present: ReadonlySet<number>): readonly (readonly number[])[] {
  const nodes = [...present];
  const position = new Map(nodes.map((node, i) => [node, i]));
  const arrows = nodes.map((node) =>
    (graph.blocks[node] ?? []).flatMap((other) => {
      const there = position.get(other);
      return there === undefined ? [] : [there];
    }),
  );
  return components(nodes.length, (i) => arrows[i] ?? [])
    .filter((group) => group.every((i) => (arrows[i] ?? []).every((j) => group.includes(j))))
    .map((group) => group.flatMap((i) => nodes[i] ?? []).sort((a, b) => a - b));
}

function connected(at: Scene, members: readonly number[]): boolean {
  const [first] = members;
  if (first === undefined) return false;
  const seen = new Set([first]);
  for (const node of seen) for (const next of at.joined[node] ?? []) if (members.includes(next)) seen.add(next);
  return seen.size === members.length;
}

function travelOf(at: Scene, members: readonly number[], present: ReadonlySet<number>, direction: Vector): number {
  return members.reduce((longest, member) => {
    const mates = (at.joined[member] ?? []).filter((mate) => present.has(mate) && !members.includes(mate));
    const boxes = mates.flatMap((mate) => at.bodies[mate]?.box ?? []);
    const moving = at.bodies[member];
    return moving === undefined ? longest : Math.max(longest, engagedTravel(moving.box, boxes, direction));
  }, 0);
}

function before(at: Scene, a: Exit, b: Exit): boolean {
  if (Math.abs(a.travel - b.travel) > 1e-6) return a.travel < b.travel;
  if (a.members.length !== b.members.length) return a.members.length < b.members.length;
  const rise = dot(a.direction, at.up) - dot(b.direction, at.up);
  if (Math.abs(rise) > 1e-9) return rise > 0;
  return (a.members[0] ?? 0) < (b.members[0] ?? 0);
}

/** A locked set none of whose bodies can be left out without unlocking it. */
function smallestKnot(at: Scene, locked: ReadonlySet<number>): readonly number[] {
  let core = new Set(locked);
  for (const candidate of locked) {
    if (!core.has(candidate)) continue;
    const rest = new Set([...core].filter((member) => member !== candidate));
    takeApart(at, rest);
    if (rest.size > 1) core = rest;
  }
  return [...core].sort((a, b) => a - b);
}

function moveOf(at: Scene, exit: Exit): Move {
  return { bodies: names(at, exit.members), direction: opposite(exit.direction), travel: exit.travel };
}

function names(at: Scene, members: readonly number[]): readonly string[] {
  return members.flatMap((member) => at.bodies[member]?.id ?? []);
}

function opposite(d: Vector): Vector {
  return [0 - d[0], 0 - d[1], 0 - d[2]];
}
