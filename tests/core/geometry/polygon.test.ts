import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { difference, intersection, union } from '../../../src/core/geometry/booleans.ts';
import { area, centroid, circle, clipConvex, holds, loopArea, rectangle } from '../../../src/core/geometry/polygon.ts';
import type { Point, Polygon } from '../../../src/core/geometry/shapes.ts';

const plain = (outline: readonly Point[]): Polygon => ({ outline, holes: [] });
const total = (polygons: readonly Polygon[]) => polygons.reduce((sum, polygon) => sum + area(polygon), 0);

describe('area and centre', () => {
  it('a 3-4-5 triangle has area 6 and its centre a third up each leg', () => {
    const triangle = plain([
      [0, 0],
      [4, 0],
      [0, 3],
    ]);
    expect(area(triangle)).toBe(6);
    expect(centroid(triangle)).toEqual([4 / 3, 1]);
  });

  it('a T of flange 90 x 20 on a web 30 x 60 has its centre 50 from the base (Engineering Statics, open textbook, chapter 10)', () => {
    const tee = plain([
      [30, 0],
      [60, 0],
      [60, 60],
      [90, 60],
      [90, 80],
      [0, 80],
      [0, 60],
      [30, 60],
    ]);
    expect(area(tee)).toBe(3600);
    expect(centroid(tee)?.[1]).toBeCloseTo(50, 9);
  });

  it('a hole counts against, whichever way it runs', () => {
    const hole = rectangle([1, 1], [2, 2]);
    for (const holes of [[hole], [[...hole].reverse()]]) {
      const frame = { outline: rectangle([0, 0], [4, 4]), holes };
      expect(area(frame)).toBe(15);
      expect(centroid(frame)?.[0]).toBeCloseTo((16 * 2 - 1.5) / 15, 12);
    }
  });

  it('an inscribed polygon of n sides has area n/2 r^2 sin(2 pi / n)', () => {
    expect(loopArea(circle([5, -3], 10, 24))).toBeCloseTo(12 * 100 * Math.sin(Math.PI / 12), 9);
  });

  it('nothing has no centre', () => {
    expect(centroid(plain([]))).toBeNull();
  });
});

describe('clipping', () => {
  it('halves a square along its diagonal', () => {
    const half = clipConvex(rectangle([0, 0], [2, 2]), { normal: [Math.SQRT1_2, Math.SQRT1_2], offset: Math.SQRT2 });
    expect(loopArea(half)).toBeCloseTo(2, 12);
  });

  it('knows inside, hole and outside', () => {
    const frame = { outline: rectangle([0, 0], [4, 4]), holes: [rectangle([1, 1], [2, 2])] };
    expect([holds(frame, [0.5, 0.5]), holds(frame, [1.5, 1.5]), holds(frame, [5, 1])]).toEqual([true, false, false]);
  });
});

describe('booleans', () => {
  const box = fc
    .tuple(
      fc.integer({ min: 0, max: 900 }),
      fc.integer({ min: 0, max: 900 }),
      fc.integer({ min: 1, max: 900 }),
      fc.integer({ min: 1, max: 900 }),
    )
    .map(([x, y, w, h]) => rectangle([x / 7, y / 7], [(x + w) / 7, (y + h) / 7]));
  const shape = fc.oneof(
    box,
    fc
      .tuple(fc.integer({ min: 0, max: 90 }), fc.integer({ min: 3, max: 40 }))
      .map(([x, r]) => circle([x, x / 2], r, 17)),
  );

  it('areas obey a + b = union + intersection, and difference + intersection = a, on 1000 random pairs', () => {
    fc.assert(
      fc.property(shape, shape, (a, b) => {
        const [sum, both, less] = [total(union([a], [b])), total(intersection([a], [b])), total(difference([a], [b]))];
        expect(Math.abs(sum + both - loopArea(a) - loopArea(b))).toBeLessThan(0.05);
        expect(Math.abs(less + both - loopArea(a))).toBeLessThan(0.05);
      }),
      { numRuns: 1000, seed: 7 },
    );
  });

  it('keeps straight cuts exact where the clipper rounds to 0.0001', () => {
    const sixtyFourth = 25.4 / 64;
    const [left] = difference([rectangle([0, 0], [100 / 3, 10])], [rectangle([sixtyFourth, 0], [100 / 3, 10])]);
    expect(left?.outline.map(([x]) => x).sort((a, b) => a - b)).toEqual([0, 0, sixtyFourth, sixtyFourth]);
  });

  it('gives holes and islands their places', () => {
    const ring = difference([rectangle([0, 0], [9, 9])], [rectangle([1, 1], [8, 8])]);
    expect(ring).toHaveLength(1);
    expect(ring[0]?.holes).toHaveLength(1);
    expect(total(union([rectangle([0, 0], [1, 1])], [rectangle([3, 3], [4, 4])]))).toBeCloseTo(2, 9);
  });
});
