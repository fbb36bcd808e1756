import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Spot } from '../../src/drawing/mark.ts';
import { distance, nearestFirst, type SpotGrid } from '../../src/drawing/near-spots.ts';

const place = fc.tuple(fc.integer({ min: 0, max: 120 }), fc.integer({ min: 0, max: 90 }));
const grid: fc.Arbitrary<SpotGrid> = fc
  .tuple(fc.integer({ min: 0, max: 160 }), fc.integer({ min: 0, max: 100 }), fc.constantFrom(1.5, 4, 7), place)
  .map(([width, height, step, [x, y]]) => ({
    origin: [0, 0] as const,
    within: { x0: width / 9, y0: height / 7, x1: width, y1: height },
    step,
    about: { x0: x, y0: y, x1: x, y1: y },
    far: (spot: Spot) => distance(spot, [x, y]),
  }));

/** Every place of a grid, sorted as a whole. */
function sortedWhole({ within, step, far }: SpotGrid): readonly Spot[] {
  const spots: Spot[] = [];
  for (let y = 0; y * step <= within.y1; y += 1) {
    for (let x = 0; x * step <= within.x1; x += 1) {
      if (x * step >= within.x0 && y * step >= within.y0) spots.push([x * step, y * step]);
    }
  }
  return spots.sort((a, b) => far(a) - far(b) || a[1] - b[1] || a[0] - b[0]);
}

describe('places the nearest first', () => {
  it('are all places of the grid in the order of a sort of the whole', () => {
    let longest = 0;
    fc.assert(
      fc.property(grid, (asked) => {
        const found = [...nearestFirst(asked)];
        longest = Math.max(longest, found.length);
        expect(found).toEqual(sortedWhole(asked));
      }),
      { seed: 5, numRuns: 200 },
    );
    expect(longest).toBeGreaterThan(1000);
  });

  it('come in another order, as this law sees, where a place counts nearer than it is', () => {
    const within = { x0: 0, y0: 0, x1: 100, y1: 0 };
    const asked = { origin: [0, 0] as const, within, step: 4, about: { x0: 0, y0: 0, x1: 0, y1: 0 } };
    const wrong = { ...asked, far: ([x]: Spot) => Math.abs(x - 80) };
    expect([...nearestFirst(wrong)]).not.toEqual(sortedWhole(wrong));
  });
});
