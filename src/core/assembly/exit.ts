import type { Box, Vector } from '../geometry/shapes.ts';
import { dot } from '../geometry/vector.ts';
import type { Blocking } from './blocking.ts';
import { components } from './components.ts';
import { boxRound, engagedTravel } from './engagement.ts';
import type { Scene } from './scene.ts';

/** Bodies that can leave as one, straight along `direction`; `travel` is how far they slide while engaged, mm. */
export type Exit = { readonly members: readonly number[]; readonly direction: Vector; readonly travel: number };

/** Which way is up while the frame itself is put together (`home`), and which way is up now; unit length, vertical. */
export type Standing = { readonly home: Vector; readonly now: Vector };

/** A slide shorter than this is a touch, mm. */
export const TOUCHING = 1e-6;

/**
 * Of all that can leave, what slides least while engaged, since a long slide scrapes the glue off; then what only lies on
 * its mates lifts straight off them; then what needs no turning over; then the smaller; then what lifts up.
 */
export function bestExit(at: Scene, present: ReadonlySet<number>, standing: Standing): Exit | null {
  if (present.size < 2) return null;
  let best: Ranked | null = null;
  for (const graph of at.graphs) {
    for (const members of leavers(graph, present)) {
      if (members.length >= present.size || !connected(at, members)) continue;
      const exit = { members, direction: graph.direction, travel: travelOf(at, members, { present, graph }) };
      if (best !== null && exit.travel > best.exit.travel + 1e-6) continue;
      const next = ranked(exit, standing, isLarger(at, members, present));
      if (best === null || before(next, best)) best = next;
    }
  }
  return best === null ? null : best.exit;
}

/** Which way must be up for a move: touching parts are laid on from above, engaged ones go in as the frame stands. */
export function upFor(exit: Exit, standing: Standing): Vector {
  const rise = exit.direction[2];
  const level = Math.abs(rise) < 1e-9;
  if (exit.travel > TOUCHING) {
    return level || dot(exit.direction, standing.home) > 0 ? standing.home : flipped(standing.home);
  }
  if (level) return standing.now;
  return rise > 0 ? [0, 0, 1] : [0, 0, -1];
}

export function flipped(up: Vector): Vector {
  return [0, 0, 0 - up[2]];
}

function before(a: Ranked, b: Ranked): boolean {
  const [ka, kb] = [a.rank, b.rank];
  for (let i = 0; i < ka.length; i += 1) {
    const difference = (ka[i] ?? 0) - (kb[i] ?? 0);
    if (Math.abs(difference) > 1e-6) return difference < 0;
  }
  return false;
}

type Ranked = { readonly exit: Exit; readonly rank: readonly number[] };

function ranked(exit: Exit, standing: Standing, larger: boolean): Ranked {
  const { members, direction, travel } = exit;
  const slides = travel > TOUCHING ? 0 : 1 - Math.abs(direction[2]);
  const turns = upFor(exit, standing)[2] === standing.now[2] ? 0 : 1;
  const rise = dot(direction, standing.home);
  return { exit, rank: [travel, slides, turns, larger ? 1 : 0, members.length, -rise, -(members[0] ?? 0)] };
}

/** Whether what leaves fills a larger box than what it leaves behind: then the rest is what a hand would move. */
function isLarger(at: Scene, members: readonly number[], present: ReadonlySet<number>): boolean {
  const leaving = members.flatMap((member) => at.bodies[member] ?? []);
  const staying = [...present].flatMap((member) => (members.includes(member) ? [] : (at.bodies[member] ?? [])));
  return boxVolume(boxRound(leaving)) > boxVolume(boxRound(staying)) + 1e-6;
}

export function boxVolume({ min, max }: Box): number {
  return (max[0] - min[0]) * (max[1] - min[1]) * (max[2] - min[2]);
}

/** Groups along one direction that nothing left standing blocks: strongly connected, with no arrow out. */
function leavers(graph: Blocking, present: ReadonlySet<number>): readonly (readonly number[])[] {
  const nodes = [...present];
  const position = new Map(nodes.map((node, i) => [node, i]));
  const arrows = nodes.map((node) => (graph.blocks[node] ?? []).flatMap((other) => position.get(other) ?? []));
  return components(nodes.length, (i) => arrows[i] ?? [])
    .filter((group) => closed(group, arrows))
    .map((group) => group.flatMap((i) => nodes[i] ?? []).sort((a, b) => a - b));
}

function closed(group: readonly number[], arrows: readonly (readonly number[])[]): boolean {
  if (group.length === 1) return (arrows[group[0] ?? 0] ?? []).length === 0;
  const members = new Set(group);
  return group.every((i) => (arrows[i] ?? []).every((j) => members.has(j)));
}

/** Whether joints hold the members together. */
export function connected(at: Scene, members: readonly number[]): boolean {
  if (members.length === 1) return true;
  const [first] = members;
  if (first === undefined) return false;
  const all = new Set(members);
  const seen = new Set([first]);
  for (const node of seen) for (const next of at.joined[node] ?? []) if (all.has(next)) seen.add(next);
  return seen.size === all.size;
}

type Leaving = { readonly present: ReadonlySet<number>; readonly graph: { readonly direction: Vector } };

function travelOf(at: Scene, members: readonly number[], { present, graph }: Leaving): number {
  const leaving = new Set(members);
  return members.reduce((longest, member) => {
    const mates = (at.joined[member] ?? []).filter((mate) => present.has(mate) && !leaving.has(mate));
    const boxes = mates.flatMap((mate) => at.bodies[mate]?.box ?? []);
    const moving = at.bodies[member];
    return moving === undefined ? longest : Math.max(longest, engagedTravel(moving.box, boxes, graph.direction));
  }, 0);
}
