import type { Box, Vector } from '../geometry/shapes.ts';
import { dot } from '../geometry/vector.ts';
import type { Body } from './body.ts';
import { boxRound, engagedTravel } from './engagement.ts';
import { connected, leavers } from './leavers.ts';
import type { Scene } from './scene.ts';

/** Bodies that can leave as one, straight along `direction`; `travel` is how far they slide while engaged, mm. */
export type Exit = { readonly members: readonly number[]; readonly direction: Vector; readonly travel: number };

/** Which way is up while the frame itself is put together (`home`), and which way is up now; unit length, vertical. */
export type Standing = {
  readonly home: Vector;
  readonly now: Vector;
  /** the body that the others leave, if one is to stay whatever goes */
  readonly stays?: number | undefined;
  /** which step of the work puts each body in */
  readonly steps: readonly number[];
};

/** A slide shorter than this is a touch, mm. */
export const TOUCHING = 1e-6;

/**
 * What the latest step puts in goes before all else. Each group leaves along its best way: the least slide while engaged, since a long slide scrapes the glue off; then off
 * its mates rather than along them; then the shortest way past them; then up or down rather than sideways. Of all groups
 * the one that slides least goes first; then one that is not most of what stands; then one that needs no turning over; then
 * one that comes off its mates; then the smaller; then what lifts up.
 */
export function bestExit(at: Scene, present: ReadonlySet<number>, standing: Standing): Exit | null {
  if (present.size < 2) return null;
  const ways = new Map<string, Way>();
  let least = Number.POSITIVE_INFINITY;
  let latest = Number.NEGATIVE_INFINITY;
  for (const graph of at.graphs) {
    for (const members of leavers(graph, present)) {
      const step = earliestOf(members, standing.steps);
      if (step < latest || members.length >= present.size || !connected(at, members)) continue;
      if (standing.stays !== undefined && members.includes(standing.stays)) continue;
      if (step > latest) {
        latest = step;
        least = Number.POSITIVE_INFINITY;
        ways.clear();
      }
      const leaving = { present, direction: graph.direction, standing };
      const travel = travelOf(at, members, { ...leaving, most: least });
      if (travel > least + TOUCHING) continue;
      least = Math.min(least, travel);
      const way = wayOut(at, { members, direction: graph.direction, travel }, leaving);
      const key = members.join(' ');
      const known = ways.get(key);
      if (known === undefined || before(way, known)) ways.set(key, way);
    }
  }
  return firstOf(at, [...ways.values()], { present, standing });
}

/** The first step that puts in one of some bodies. */
function earliestOf(members: readonly number[], steps: readonly number[]): number {
  return members.reduce((least, member) => Math.min(least, steps[member] ?? least), Number.MAX_SAFE_INTEGER);
}

type Choice = { readonly present: ReadonlySet<number>; readonly standing: Standing };

/** The exit that goes first, of those that slide as little as the least. */
function firstOf(at: Scene, ways: readonly Way[], { present, standing }: Choice): Exit | null {
  const least = ways.reduce((low, { exit }) => Math.min(low, exit.travel), Number.POSITIVE_INFINITY);
  const whole = boxVolume(boxRound([...present].flatMap((member) => at.bodies[member] ?? [])));
  let best: Ranked | null = null;
  for (const way of ways.filter(({ exit }) => exit.travel <= least + TOUCHING)) {
    const next = { exit: way.exit, rank: rankOf(way, standing, isLarger(at, way.exit.members, whole)) };
    if (best === null || before(next, best)) best = next;
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

/** One group's way out, and how many mates it scrapes along. */
type Way = Ranked & { readonly scraped: number };

type Ranked = { readonly exit: Exit; readonly rank: readonly number[] };

type Leaving = {
  readonly present: ReadonlySet<number>;
  readonly direction: Vector;
  readonly standing: Standing;
};

/** How far a group slides while engaged, mm; once over `most` it is not followed further. */
function travelOf(at: Scene, members: readonly number[], leaving: Leaving & { readonly most: number }): number {
  let travel = 0;
  for (const member of members) {
    const one = at.bodies[member];
    for (const mate of at.joined[member] ?? []) {
      const other = at.bodies[mate];
      if (!leaving.present.has(mate) || one === undefined || other === undefined) continue;
      if (members.length > 1 && members.includes(mate)) continue;
      // by its parts: the box round an angled leg holds a corner of the frame that the leg does not
      for (const box of one.boxes) travel = Math.max(travel, engagedTravel(box, other.boxes, leaving.direction));
      if (travel > leaving.most + TOUCHING) return travel;
    }
  }
  return travel;
}

/** One way out of a group, ranked among its own ways. */
function wayOut(at: Scene, exit: Exit, leaving: Leaving): Way {
  const { members, direction, travel } = exit;
  const { standing } = leaving;
  const pairs = matesOf(at, members, leaving.present);
  const scraped = travel > TOUCHING ? 0 : pairs.filter(([one, mate]) => scrapes(one.box, mate.box, direction)).length;
  const turns = upFor(exit, standing)[2] === standing.now[2] ? 0 : 1;
  const past = pairs.reduce((most, [one, mate]) => Math.max(most, pastOther(one.box, mate.box, direction)), 0);
  const oblique = isOblique(at, members, direction) ? 1 : 0;
  // what no joint of its own step or an earlier one holds runs in the frame, as a drawer does: it goes in level
  const runs = members.every((member) => isHeldLater(at, member, standing.steps));
  const rise = runs ? Math.abs(direction[2]) : 1 - Math.abs(direction[2]);
  return {
    exit,
    scraped,
    rank: [travel, oblique, scraped, past, rise, turns, -dot(direction, standing.home)],
  };
}

/** How far a box goes along a direction until it has passed another, mm: a leg drops off its rail rather than rises by it. */
function pastOther(one: Box, mate: Box, direction: Vector): number {
  const ways = AXES.flatMap((i) => {
    const speed = direction[i];
    if (Math.abs(speed) < 1e-9) return [];
    return [(speed > 0 ? mate.max[i] - one.min[i] : one.max[i] - mate.min[i]) / Math.abs(speed)];
  });
  return Math.max(0, Math.min(...ways));
}

/** Whether a box that touches another would slide along it rather than come off it. */
function scrapes(one: Box, mate: Box, direction: Vector): boolean {
  return AXES.every((i) => {
    const touches = Math.abs(one.max[i] - mate.min[i]) < 1e-6 || Math.abs(mate.max[i] - one.min[i]) < 1e-6;
    return !touches || Math.abs(direction[i]) < 1e-9;
  });
}

const AXES = [0, 1, 2] as const;

function rankOf({ exit, scraped }: Way, standing: Standing, larger: boolean): readonly number[] {
  const { members, direction } = exit;
  const turns = upFor(exit, standing)[2] === standing.now[2] ? 0 : 1;
  return [larger ? 1 : 0, turns, scraped, members.length, -dot(direction, standing.home), -(members[0] ?? 0)];
}

/** Whether all that a body is joined to is put in by later steps. */
function isHeldLater({ joined }: Scene, member: number, steps: readonly number[]): boolean {
  const own = steps[member] ?? 0;
  return (joined[member] ?? []).every((mate) => (steps[mate] ?? 0) > own);
}

/** Whether what leaves fills more than half of the box round all that stands: then a hand would move the rest. */
function isLarger(at: Scene, members: readonly number[], whole: number): boolean {
  return boxVolume(boxRound(members.flatMap((member) => at.bodies[member] ?? []))) > whole / 2;
}

/** Whether a direction is none of the bodies' own three: a slide along a slanted cut. */
function isOblique(at: Scene, members: readonly number[], direction: Vector): boolean {
  const own = members.flatMap((member) => at.bodies[member]?.axes.slice(0, 3) ?? []);
  return !own.some((axis) => Math.abs(dot(axis, direction)) > 1 - 1e-9);
}

export function boxVolume({ min, max }: Box): number {
  return (max[0] - min[0]) * (max[1] - min[1]) * (max[2] - min[2]);
}

/** Every leaving body with every body it is joined to that stays. */
function matesOf(
  at: Scene,
  members: readonly number[],
  present: ReadonlySet<number>,
): readonly (readonly [Body, Body])[] {
  const leaving = new Set(members);
  return members.flatMap((member) =>
    (at.joined[member] ?? []).flatMap((mate): readonly (readonly [Body, Body])[] => {
      const [one, other] = [at.bodies[member], at.bodies[mate]];
      const stays = present.has(mate) && !leaving.has(mate);
      return stays && one !== undefined && other !== undefined ? [[one, other]] : [];
    }),
  );
}
