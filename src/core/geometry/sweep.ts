import type { Convex } from './convex.ts';
import { reach, separatingAxes, TOUCH } from './overlap.ts';
import type { Box, Vector } from './shapes.ts';
import { dot } from './vector.ts';

/** The stretch of a move, in mm along its direction, in which two bodies would stand in each other. */
export type Clash = { readonly from: number; readonly to: number };

/**
 * When `moving` goes off along `direction` (unit length) without end, the stretch in which it would cut into `still`
 * deeper than a touch, or null. Exact: along each separating axis the two overlap in one interval of the move.
 */
export function clashAlong(moving: Convex, still: Convex, direction: Vector): Clash | null {
  return within(moving, still, { direction, from: 0 });
}

/**
 * The same stretch on the whole line, also behind: `from` below 0 and `to` above 0 say that they stand in each other
 * now. Null when the line never brings them together; mm.
 */
export function clashOnLine(moving: Convex, still: Convex, direction: Vector): Clash | null {
  return within(moving, still, { direction, from: Number.NEGATIVE_INFINITY });
}

/** The same for boxes: a stretch that holds that of any two bodies inside them. */
export function boxClashOnLine(moving: Box, still: Box, direction: Vector): Clash | null {
  let from = Number.NEGATIVE_INFINITY;
  let to = Number.POSITIVE_INFINITY;
  for (const i of [0, 1, 2] as const) {
    const enters = still.min[i] + TOUCH - moving.max[i];
    const leaves = still.max[i] - TOUCH - moving.min[i];
    const speed = direction[i];
    if (Math.abs(speed) < 1e-12) {
      if (enters >= 0 || leaves <= 0) return null;
      continue;
    }
    from = Math.max(from, speed > 0 ? enters / speed : leaves / speed);
    to = Math.min(to, speed > 0 ? leaves / speed : enters / speed);
  }
  return from < to ? { from, to } : null;
}

type Line = { readonly direction: Vector; readonly from: number };

function within(moving: Convex, still: Convex, line: Line): Clash | null {
  let from = line.from;
  let to = Number.POSITIVE_INFINITY;
  for (const axis of separatingAxes(moving, still)) {
    const [low, high] = reach(moving, axis);
    const [stillLow, stillHigh] = reach(still, axis);
    const speed = dot(line.direction, axis);
    const enters = stillLow + TOUCH - high;
    const leaves = stillHigh - TOUCH - low;
    if (Math.abs(speed) < 1e-12) {
      if (enters >= 0 || leaves <= 0) return null;
      continue;
    }
    const [t0, t1] = speed > 0 ? [enters / speed, leaves / speed] : [leaves / speed, enters / speed];
    from = Math.max(from, t0);
    to = Math.min(to, t1);
    if (from >= to) return null;
  }
  return { from, to };
}
