import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexHull } from '../../../src/core/geometry/hull.ts';
import type { Point } from '../../../src/core/geometry/shapes.ts';

const places = fc.array(fc.tuple(fc.integer({ min: -50, max: 50 }), fc.integer({ min: -50, max: 50 })), {
  minLength: 3,
  maxLength: 30,
});

/** How far a point lies to the left of a line from a to b, times the line's length. */
function left([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): number {
  return (bx - ax) * (y - ay) - (by - ay) * (x - ax);
}

function isRound(loop: readonly Point[], points: readonly Point[]): boolean {
  return loop.every((a, i) => points.every((p) => left(a, loop[(i + 1) % loop.length] ?? a, p) >= 0));
}

describe('the convex hull', () => {
  it('has every point on its left or on it, and no corner of its own making', () => {
    fc.assert(
      fc.property(places, (points) => {
        const loop = convexHull(points);
        expect(isRound(loop, points)).toBe(true);
        for (const corner of loop) expect(points).toContainEqual(corner);
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  it('is told wrong when a corner is left out', () => {
    const square: readonly Point[] = [
      [0, 0],
      [4, 0],
      [4, 4],
      [0, 4],
      [2, 2],
    ];
    const loop = convexHull(square);
    expect(loop).toHaveLength(4);
    expect(isRound(loop.slice(1), square)).toBe(false);
  });
});
