import type { Point } from '../geometry/shapes.ts';
import { type Bay, bayAt, nearestBay } from './routing/bays.ts';
import type { Drop } from './routing/stops.ts';

/** Where a drop's wires meet the bus: a point of it, and its distance along it from the supply; mm. */
export type Tap = {
  readonly drop: string;
  readonly at: Point;
  readonly along: number;
  /** from the tap to below the drop, as the crow flies under the deck */
  readonly across: number;
  readonly bay: string;
};

/** Length of a path, mm. */
export function pathLength(path: readonly Point[]): number {
  return path
    .slice(1)
    .reduce((sum, [x, y], i) => sum + Math.hypot(x - (path[i]?.[0] ?? x), y - (path[i]?.[1] ?? y)), 0);
}

/** The nearest point of the bus to a drop, in the drop's own bay so that no tail has to cross a strut; null where the bus does not pass it. */
export function tapFor(path: readonly Point[], bays: readonly Bay[], drop: Drop): Tap | null {
  const home = nearestBay(bays, drop.at);
  if (home === null) return null;
  let [along, best]: [number, Tap | null] = [0, null];
  for (const [i, to] of path.entries()) {
    const from = path[i - 1] ?? to;
    const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const part = insideBay(from, to, home.bay);
    if (part !== null) {
      const share = Math.min(part[1], Math.max(part[0], nearestShare(from, to, home.point)));
      const at: Point = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
      const across = Math.hypot(at[0] - drop.at[0], at[1] - drop.at[1]);
      if (best === null || across < best.across - 1e-6)
        best = { drop: drop.id, at, along: along + share * long, across, bay: home.bay.id };
    }
    along += long;
  }
  return best;
}

function nearestShare(from: Point, to: Point, point: Point): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  return square === 0 ? 0 : ((point[0] - from[0]) * dx + (point[1] - from[1]) * dy) / square;
}

/** The shares of a straight between which it lies in a bay; null where it does not (Liang and Barsky, 1984). */
function insideBay(from: Point, to: Point, bay: Bay): readonly [number, number] | null {
  let [low, high] = [0, 1];
  for (const i of [0, 1] as const) {
    const step = to[i] - from[i];
    const [a, b] = i === 0 ? bay.x : bay.y;
    if (step === 0) {
      if (from[i] < a || from[i] > b) return null;
      continue;
    }
    const [s, t] = [(a - from[i]) / step, (b - from[i]) / step];
    low = Math.max(low, Math.min(s, t));
    high = Math.min(high, Math.max(s, t));
  }
  return low <= high ? [low, high] : null;
}

/** The bays a path passes through, in order, each once. */
export function baysAlong(path: readonly Point[], bays: readonly Bay[]): readonly string[] {
  const met = path.flatMap((to, i) => {
    const from = path[i - 1] ?? to;
    const steps = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / 20));
    return Array.from(
      { length: steps + 1 },
      (_, k) =>
        bayAt(bays, [from[0] + ((to[0] - from[0]) * k) / steps, from[1] + ((to[1] - from[1]) * k) / steps])?.id ?? null,
    );
  });
  return [...new Set(met.filter((id) => id !== null))];
}
