import type { Vector } from '../geometry/shapes.ts';
import { times } from '../geometry/vector.ts';
import { bestExit, type Exit, type Standing, upFor } from './exit.ts';
import { names, opposite, type Scene } from './scene.ts';
import { detour } from './two-leg.ts';

/** One straight stretch of a move: `distance` mm along `direction` (unit length), or from far off when null. */
export type Leg = { readonly direction: Vector; readonly distance: number | null };

/**
 * Bodies that go to their place together. `direction` is the last leg's, the one that closes the joints; `travel` is how
 * far they slide while engaged, mm; `up` is which way the frame stands meanwhile; `path` says how it was found: a tilt is
 * declared by the builder and not proved; `first` marks what the others come to.
 */
export type Move = {
  readonly bodies: readonly string[];
  readonly direction: Vector;
  readonly travel: number;
  readonly legs: readonly Leg[];
  readonly path: 'first' | 'straight' | 'two-leg' | 'tilt';
  readonly up: Vector;
};

/** The order of what goes together, and every set that no move takes apart; `locked` holds indices. */
export type Order = { readonly moves: readonly Move[]; readonly locked: readonly (readonly number[])[] };

/** Which way is up while the frame is built, and bodies that the builder says go in by tilting. */
export type Manner = {
  readonly up: Vector;
  readonly tilts: ReadonlySet<string>;
  /** the body that the others leave; any may go first when absent */
  readonly stays?: string;
  /** which step of the work puts a body in, by its id; a later one goes in later wherever it can */
  readonly steps?: ReadonlyMap<string, number>;
};

/**
 * The order in which bodies go together: the order in which they come apart, read backwards (Wilson and Latombe 1994).
 * The finished bench stands upright; straight moves come first, then moves round one corner, then declared tilts. What a
 * later step puts in comes out first where it can: nothing is lost by it, since a body that is out bars no other's way.
 */
export function orderOf(at: Scene, manner: Manner): Order {
  const steps = at.bodies.map(({ id }) => manner.steps?.get(id) ?? LAST);
  const work: Work = { at, manner, steps, now: [0, 0, 1], moves: [], locked: [] };
  takeApart(work, new Set(at.bodies.keys()));
  return { moves: work.moves.reverse(), locked: work.locked };
}

/** Whether all of a scene comes apart. */
export function comesApart(at: Scene, manner: Manner): boolean {
  return orderOf(at, manner).locked.length === 0;
}

/** What no step puts in comes last. */
const LAST = Number.MAX_SAFE_INTEGER;

type Work = {
  readonly at: Scene;
  readonly manner: Manner;
  readonly steps: readonly number[];
  now: Vector;
  readonly moves: Move[];
  readonly locked: (readonly number[])[];
};

function takeApart(work: Work, present: Set<number>): void {
  while (present.size > 1) {
    const members = takeOne(work, present);
    if (members === null) {
      work.locked.push([...present]);
      return;
    }
    for (const member of members) present.delete(member);
    if (members.length > 1) takeApart(work, new Set(members));
  }
  for (const last of present) work.moves.push(firstMove(work, last));
}

/** Notes the next move out and gives who made it; null when nothing moves. */
function takeOne(work: Work, present: ReadonlySet<number>): readonly number[] | null {
  const { up, stays } = work.manner;
  const kept = stays === undefined ? -1 : work.at.bodies.findIndex(({ id }) => id === stays);
  const standing: Standing = { home: up, now: work.now, steps: work.steps, stays: kept < 0 ? undefined : kept };
  const exit = bestExit(work.at, present, standing);
  const last = ofLastStep(work, present);
  const isOfLast = exit === null || exit.members.every((member) => last.has(member));
  // what the last step puts in may have a way round a corner, or be tilted, while an earlier step's piece has a straight one
  const early = isOfLast || kept >= 0 ? null : (roundCorner(work, present, last) ?? tilted(work, last));
  if (early !== null) return [early];
  if (exit !== null) {
    work.now = upFor(exit, standing);
    work.moves.push(straightMove(work, exit));
    return exit.members;
  }
  if (kept >= 0) return null;
  const member = roundCorner(work, present, present) ?? tilted(work, present);
  return member === null ? null : [member];
}

/** Of what stands, the bodies that the last step puts in. */
function ofLastStep({ steps }: Work, present: ReadonlySet<number>): ReadonlySet<number> {
  const latest = [...present].reduce((most, member) => Math.max(most, steps[member] ?? LAST), 0);
  return new Set([...present].filter((member) => (steps[member] ?? LAST) === latest));
}

function straightMove({ at, now }: Work, exit: Exit): Move {
  const direction = opposite(exit.direction);
  const legs = [{ direction, distance: null }];
  return { bodies: names(at, exit.members), direction, travel: exit.travel, legs, path: 'straight', up: now };
}

function firstMove({ at, manner }: Work, member: number): Move {
  const direction = opposite(manner.up);
  return { bodies: names(at, [member]), direction, travel: 0, legs: [], path: 'first', up: manner.up };
}

function roundCorner(work: Work, present: ReadonlySet<number>, among: ReadonlySet<number>): number | null {
  const found = detour(work.at, present, among);
  if (found === null) return null;
  work.now = work.manner.up;
  const direction = opposite(found.first);
  const legs = [
    { direction: opposite(found.second), distance: null },
    { direction, distance: found.distance },
  ];
  const bodies = names(work.at, [found.member]);
  work.moves.push({ bodies, direction, travel: found.distance, legs, path: 'two-leg', up: work.now });
  return found.member;
}

function tilted(work: Work, among: ReadonlySet<number>): number | null {
  const { at, manner } = work;
  const member = [...among].find((i) => manner.tilts.has(at.bodies[i]?.id ?? ''));
  if (member === undefined) return null;
  work.now = manner.up;
  const direction = times(manner.up, -1);
  work.moves.push({ bodies: names(at, [member]), direction, travel: 0, legs: [], path: 'tilt', up: work.now });
  return member;
}
