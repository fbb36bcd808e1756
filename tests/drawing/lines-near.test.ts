import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crosses } from '../../src/drawing/labels.ts';
import { linesNear, type Straight } from '../../src/drawing/lines-near.ts';
import type { Extent } from '../../src/drawing/mark.ts';

const place = fc.tuple(fc.double({ min: -60, max: 200, noNaN: true }), fc.double({ min: -60, max: 200, noNaN: true }));
const line: fc.Arbitrary<Straight> = fc.tuple(place, place);
const box: fc.Arbitrary<Extent> = fc
  .tuple(place, fc.double({ min: 0.1, max: 40, noNaN: true }), fc.double({ min: 0.1, max: 12, noNaN: true }))
  .map(([[x, y], width, height]) => ({ x0: x, x1: x + width, y0: y, y1: y + height }));

describe('lines found by place', () => {
  it('cross a box just when one of all lines does', () => {
    const seen = { crossed: 0, clear: 0 };
    fc.assert(
      fc.property(fc.array(line, { maxLength: 12 }), box, (lines, around) => {
        const test = (one: Straight) => crosses(one, around);
        const found = linesNear(lines)(around, test);
        seen[found ? 'crossed' : 'clear'] += 1;
        expect(found).toBe(lines.some(test));
      }),
      { seed: 11, numRuns: 2000 },
    );
    expect(Math.min(seen.crossed, seen.clear)).toBeGreaterThan(200);
  });

  it('are asked only when they are near', () => {
    const far: Straight = [
      [100, 100],
      [120, 100],
    ];
    expect(linesNear([far])({ x0: 0, y0: 0, x1: 10, y1: 5 }, () => true)).toBe(false);
  });
});
