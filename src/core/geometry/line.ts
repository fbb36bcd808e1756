import type { Convex } from './convex.ts';
import { reach } from './overlap.ts';
import type { Vector } from './shapes.ts';
import { dot } from './vector.ts';

/** A straight line: a point on it and its direction, unit length. */
export type Line = { readonly point: Vector; readonly direction: Vector };

/** The stretch of a line inside a convex body, mm from its point along its direction; null where it misses it. */
export function stretchInside(piece: Convex, { point, direction }: Line): readonly [from: number, to: number] | null {
  let from = Number.NEGATIVE_INFINITY;
  let to = Number.POSITIVE_INFINITY;
  for (const normal of piece.normals) {
    const [low, high] = reach(piece, normal);
    const [speed, at] = [dot(normal, direction), dot(normal, point)];
    if (Math.abs(speed) < 1e-12) {
      if (at < low || at > high) return null;
      continue;
    }
    const [a, b] = [(low - at) / speed, (high - at) / speed];
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
  }
  return from < to && Number.isFinite(to - from) ? [from, to] : null;
}
