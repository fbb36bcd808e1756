import { holds } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';

/** The place on a path nearest to a point: how far off, on which stretch, and what share along it. mm. */
export type Nearest = { readonly distance: number; readonly stretch: number; readonly share: number };

/** A place on a straight stretch: `share` 0 to 1 along it, `raw` the same on the whole line; mm. */
export type OnStretch = { readonly distance: number; readonly share: number; readonly raw: number };

/** Where a straight stretch comes nearest to a point. */
export function nearestOnStretch(a: Point, b: Point, p: Point): OnStretch {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const size = dx * dx + dy * dy;
  const raw = size === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / size;
  const share = Math.min(1, Math.max(0, raw));
  return { distance: Math.hypot(p[0] - a[0] - share * dx, p[1] - a[1] - share * dy), share, raw };
}

/** The nearest place of a path of two points or more. */
export function nearestOnPath(path: readonly Point[], p: Point): Nearest {
  let best: Nearest = { distance: Number.POSITIVE_INFINITY, stretch: 0, share: 0 };
  for (let i = 0; i + 1 < path.length; i += 1) {
    const [a = p, b = p] = [path[i], path[i + 1]];
    const here = nearestOnStretch(a, b, p);
    if (here.distance < best.distance) best = { distance: here.distance, share: here.share, stretch: i };
  }
  return best;
}

/** A loop as a path that comes back to its first point. */
export function alongPath(loop: readonly Point[]): readonly Point[] {
  const [first] = loop;
  return first === undefined ? [] : [...loop, first];
}

export function insideLoop(loop: readonly Point[], p: Point): boolean {
  return holds({ outline: loop, holes: [] }, p);
}

/** Where a level line crosses an outline, from left to right; mm. */
export function chord(outline: readonly Point[], y: number): readonly number[] {
  return outline
    .flatMap(([ax, ay], i) => {
      const [bx, by] = outline[(i + 1) % outline.length] ?? [ax, ay];
      return ay > y === by > y ? [] : [ax + ((y - ay) * (bx - ax)) / (by - ay)];
    })
    .sort((a, b) => a - b);
}
