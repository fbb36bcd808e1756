import type { Point } from './shapes.ts';

/** The convex loop around points, counter-clockwise (Andrew, Information Processing Letters 9, 1979). */
export function convexHull(points: readonly Point[]): readonly Point[] {
  const sorted = points.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const chain = (all: readonly Point[]) => {
    const kept: Point[] = [];
    for (const p of all) {
      while (kept.length > 1 && turn(kept.at(-2) ?? p, kept.at(-1) ?? p, p) <= 1e-9) kept.pop();
      kept.push(p);
    }
    return kept.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.toReversed())];
}

function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
