import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference } from '../../../src/core/geometry/booleans.ts';
import { area, circle, loopArea, rectangle } from '../../../src/core/geometry/polygon.ts';
import type { Point } from '../../../src/core/geometry/shapes.ts';
import { slabs } from '../../../src/core/geometry/slabs.ts';

function isConvex(loop: readonly Point[]): boolean {
  return loop.every(([ax, ay], i) => {
    const [bx, by] = loop[(i + 1) % loop.length] ?? [0, 0];
    const [cx, cy] = loop[(i + 2) % loop.length] ?? [0, 0];
    return (bx - ax) * (cy - by) - (by - ay) * (cx - bx) >= -1e-6;
  });
}

/** A sheet with boxes and a round hole taken out, on a whole grid. */
const sheet = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 90 }), fc.integer({ min: 0, max: 50 }), fc.integer({ min: 1, max: 30 })), {
    maxLength: 6,
  })
  .map((boxes) => [circle([70, 30], 7, 12), ...boxes.map(([x, y, size]) => rectangle([x, y], [x + size, y + size]))])
  .map((cutters) => difference([rectangle([0, 0], [100, 60])], cutters));

describe('slabs of a polygon', () => {
  it('are convex, share no inside and add up to it: their areas sum to its own', () => {
    fc.assert(
      fc.property(sheet, (polygons) => {
        for (const polygon of polygons) {
          const pieces = slabs(polygon);
          expect(pieces.every(isConvex)).toBe(true);
          expect(pieces.reduce((sum, piece) => sum + loopArea(piece), 0)).toBeCloseTo(area(polygon), 6);
        }
      }),
      { seed: 20261129, numRuns: 300 },
    );
  });

  it('leave a rectangle whole, and a notched one in three', () => {
    expect(slabs({ outline: rectangle([0, 0], [100, 60]), holes: [] })).toHaveLength(1);
    const [notched] = difference([rectangle([0, 0], [100, 60])], [rectangle([40, 30], [60, 60])]);
    expect(notched === undefined ? [] : slabs(notched)).toHaveLength(3);
  });
});
