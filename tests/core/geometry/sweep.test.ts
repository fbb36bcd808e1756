import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shifted } from '../../../src/core/geometry/convex.ts';
import { depth } from '../../../src/core/geometry/overlap.ts';
import type { Vector } from '../../../src/core/geometry/shapes.ts';
import { clashAlong, clashOnLine } from '../../../src/core/geometry/sweep.ts';
import { times, unit } from '../../../src/core/geometry/vector.ts';
import { anyBox, at, box } from './solids.ts';

const part = fc.integer({ min: -4, max: 4 });
const direction = fc
  .tuple(part, part, part)
  .map((v) => unit(v))
  .filter((v): v is Vector => v !== null);

describe('a sweep along a direction', () => {
  it('clashes from the first touch to the last', () => {
    const clash = clashAlong(box([2, 2, 2]), box([3, 2, 2], at([7, 0, 0])), [1, 0, 0]);
    expect(clash?.from).toBeCloseTo(5, 5);
    expect(clash?.to).toBeCloseTo(10, 5);
    expect(clashAlong(box([2, 2, 2]), box([3, 2, 2], at([7, 2, 0])), [1, 0, 0])).toBeNull();
    expect(clashAlong(box([2, 2, 2]), box([3, 2, 2], at([7, 0, 0])), [-1, 0, 0])).toBeNull();
  });

  it('looks behind as well on a whole line', () => {
    const clash = clashOnLine(box([2, 2, 2]), box([3, 2, 2], at([7, 0, 0])), [-1, 0, 0]);
    expect(clash?.from).toBeCloseTo(-10, 5);
    expect(clash?.to).toBeCloseTo(-5, 5);
  });

  it('agrees with the depth at sampled places of the move', () => {
    fc.assert(
      fc.property(anyBox, anyBox, direction, (moving, still, way) => {
        const clash = clashAlong(moving, still, way);
        for (const t of [0, 0.37, 1.9, 5.3, 11.1, 23.7]) {
          const deep = depth(shifted(moving, times(way, t)), still);
          const inside = clash !== null && t >= clash.from && t < clash.to;
          if (Math.abs(deep) > 1e-4) expect(deep > 0).toBe(inside);
        }
      }),
      { seed: 20261202, numRuns: 500 },
    );
  });

  it('would not agree if the clash were a tenth shorter: the fault that shows the law can fail', () => {
    const moving = box([2, 2, 2]);
    const still = box([3, 2, 2], at([7, 0, 0]));
    const clash = clashAlong(moving, still, [1, 0, 0]);
    const t = (clash?.to ?? 0) - 0.05;
    expect(depth(shifted(moving, [t, 0, 0]), still)).toBeGreaterThan(0);
    expect(t).toBeGreaterThan((clash?.to ?? 0) - 0.1);
  });
});
