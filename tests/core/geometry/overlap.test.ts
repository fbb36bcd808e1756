import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { intersection } from '../../../src/core/geometry/booleans.ts';
import { shifted } from '../../../src/core/geometry/convex.ts';
import { depth, TOUCH } from '../../../src/core/geometry/overlap.ts';
import { area } from '../../../src/core/geometry/polygon.ts';
import { anyBox, at, box } from './solids.ts';

describe('how deep two convex bodies stand in each other', () => {
  it('is the least overlap of two boxes, 0 when they touch, less when they are apart', () => {
    const one = box([10, 10, 10]);
    expect(depth(one, box([10, 10, 10], at([7, 2, 1])))).toBeCloseTo(3, 12);
    expect(depth(one, box([10, 10, 10], at([10, 0, 0])))).toBeCloseTo(0, 12);
    expect(depth(one, box([10, 10, 10], at([14, 0, 0])))).toBeCloseTo(-4, 12);
  });

  it('of a corner turned 45 degrees into a face is how far the corner goes in (plane geometry)', () => {
    const corner = box([10, 10, 10], at([10 + 5 * Math.SQRT2 - 1, 5 - 5 * Math.SQRT2, 0], Math.PI / 4));
    expect(corner.box.min[0]).toBeCloseTo(9, 12);
    expect(depth(box([10, 10, 10]), corner)).toBeCloseTo(1, 9);
  });

  it('is the same both ways and unchanged when both are moved', () => {
    fc.assert(
      fc.property(anyBox, anyBox, (a, b) => {
        const deep = depth(a, b);
        expect(depth(b, a)).toBeCloseTo(deep, 9);
        if (deep > -TOUCH) expect(depth(shifted(a, [3, -2, 7]), shifted(b, [3, -2, 7]))).toBeCloseTo(deep, 9);
      }),
      { seed: 20261130, numRuns: 500 },
    );
  });

  it('says they share room exactly where their shadows from above and their heights do (another way to it)', () => {
    fc.assert(
      fc.property(anyBox, anyBox, (a, b) => {
        const [low, high] = [Math.max(a.box.min[2], b.box.min[2]), Math.min(a.box.max[2], b.box.max[2])];
        const plan = (one: typeof a) => (one.faces[1] ?? []).map(([x, y]) => [x, y] as const);
        const common = intersection([plan(a)], [plan(b)]);
        const shared = common.reduce((sum, one) => sum + area(one), 0);
        const apart = shared < 1e-3 || high - low < 1e-9;
        fc.pre(shared === 0 || shared > 1e-3);
        expect(depth(a, b) > TOUCH).toBe(!apart);
      }),
      { seed: 20261201, numRuns: 500 },
    );
  });
});
