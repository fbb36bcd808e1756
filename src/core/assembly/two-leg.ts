import { reach } from '../geometry/overlap.ts';
import type { Vector } from '../geometry/shapes.ts';
import { clashAlong } from '../geometry/sweep.ts';
import { dot, times } from '../geometry/vector.ts';
import { boxesMeet, inTheWay } from './blocking.ts';
import { type Body, movedBody } from './body.ts';
import { boxVolume } from './exit.ts';
import type { Scene } from './scene.ts';

/** One body's way out round a corner: `distance` mm along `first`, then off along `second` (unit length). */
export type Detour = {
  readonly member: number;
  readonly first: Vector;
  readonly distance: number;
  readonly second: Vector;
};

/** Most distances tried along one leg; more corners than this in one piece are not followed. */
const MOST_STOPS = 16;
/** Directions and bodies beyond these are not combined: their number grows with the square. */
const MOST_DIRECTIONS = 12;

/** A first leg shorter than this leads nowhere, mm. */
const SHORTEST = 1e-3;

/** The shortest first leg by which one of some bodies gets out of a set that none of them leaves straight, or null. */
export function detour(at: Scene, present: ReadonlySet<number>, among: ReadonlySet<number>): Detour | null {
  let best: Detour | null = null;
  for (const member of among) {
    const found = detourOf(at, present, member);
    if (found !== null && (best === null || shorter(at, found, best))) best = found;
  }
  return best;
}

/** The shorter first leg; of equals the smaller body. */
function shorter(at: Scene, a: Detour, b: Detour): boolean {
  if (Math.abs(a.distance - b.distance) > 1e-6) return a.distance < b.distance;
  const size = ({ member }: Detour) => boxVolume(at.bodies[member]?.box ?? { min: [0, 0, 0], max: [0, 0, 0] });
  return size(a) < size(b);
}

/** One body's way out round a corner with the shortest first leg, or null. */
export function detourOf(at: Scene, present: ReadonlySet<number>, member: number): Detour | null {
  const moving = at.bodies[member];
  if (moving === undefined) return null;
  const others = [...present].flatMap((i) => (i === member ? [] : (at.bodies[i] ?? [])));
  const ways = at.graphs.map(({ direction }) => direction).slice(0, MOST_DIRECTIONS);
  let best: Detour | null = null;
  for (const first of ways) {
    for (const distance of stops(moving, others, first)) {
      if (best !== null && distance >= best.distance - 1e-6) break;
      const away = movedBody(moving, times(first, distance));
      const second = ways.find((d) => Math.abs(dot(d, first)) < 0.999 && others.every((o) => !inTheWay(away, o, d)));
      if (second !== undefined) best = { member, first, distance, second };
    }
  }
  return best;
}

/** Distances along a first leg at which the body has just passed a face, as far as the leg is free, in rising order; mm. */
function stops(moving: Body, others: readonly Body[], first: Vector): readonly number[] {
  const free = freeTravel(moving, others, first);
  if (free < SHORTEST) return [];
  const still = others.flatMap((other) => other.pieces).map((piece) => reach(piece, first));
  const own = moving.pieces.map((piece) => reach(piece, first));
  const passed = own.flatMap(([low]) => still.map(([, high]) => high - low));
  const reached = own.flatMap(([, high]) => still.map(([low]) => low - high));
  const all = [...passed, ...reached, free].filter((t) => t > SHORTEST && t <= free + 1e-9 && Number.isFinite(t));
  const rising = all.sort((a, b) => a - b);
  return rising.filter((t, i) => i === 0 || t - (rising[i - 1] ?? t) > 1e-6).slice(0, MOST_STOPS);
}

/** How far a body goes along a direction before it cuts into another, mm; not followed once it is next to nothing. */
function freeTravel(moving: Body, others: readonly Body[], direction: Vector): number {
  let free = Number.POSITIVE_INFINITY;
  for (const other of others) {
    if (!boxesMeet(moving.box, other.box, direction)) continue;
    for (const piece of moving.pieces) {
      for (const still of other.pieces) {
        if (!boxesMeet(piece.box, still.box, direction)) continue;
        free = Math.min(free, clashAlong(piece, still, direction)?.from ?? free);
        if (free < SHORTEST) return free;
      }
    }
  }
  return free;
}
