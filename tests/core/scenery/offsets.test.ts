import { expect, test } from 'vitest';
import { circle, rectangle } from '../../../src/core/geometry/polygon.ts';
import { evenStops, offsets, sharpCorners } from '../../../src/core/scenery/offsets.ts';
import { sceneryModel } from '../../../src/core/scenery/scenery.ts';
import { partOutline } from '../../../src/core/stock/outline.ts';
import { around, bare, hill } from './table.ts';

test('stations are even from the datum, and the end has one', () => {
  expect(evenStops(245, 100)).toEqual([0, 100, 200, 245]);
  expect(evenStops(200, 100)).toEqual([0, 100, 200]);
});

test("a dome's templates are circles to be set out by their offsets (plane geometry)", () => {
  const model = sceneryModel({ ...bare, forms: [hill] }, around);
  expect(model.layers.length).toBeGreaterThan(2);
  for (const { id, from } of model.layers) {
    const part = model.parts.find((one) => one.id === id);
    if (part === undefined) throw new Error(`${id} has no part`);
    // r = R sqrt(1 - z / H), and a chord stands sqrt(r2 - x2) to both sides
    const r = hill.footRadius * Math.sqrt(1 - from / hill.height);
    const off = (shift: number) =>
      offsets(partOutline(part), 25)
        .slice(1, -1)
        .map(({ at, crossings }) => {
          const half = Math.sqrt(Math.max(0, r * r - (at + shift - r) ** 2));
          return Math.max(...[r - half, r + half].map((y, i) => Math.abs(y - (crossings[i] ?? Number.NaN))));
        });
    expect(Math.max(...off(0))).toBeLessThan(0.8);
    // the planted fault: stations counted from half a step off the datum
    expect(Math.max(...off(12.5))).toBeGreaterThan(2);
  }
});

test('a ring has two pairs at its middle, a straight end both its corners, a rectangle four corners and a circle none', () => {
  const ring = { outline: rectangle([10, 20], [110, 120]), holes: [rectangle([40, 50], [80, 90])] };
  expect(offsets(ring, 50).map(({ crossings }) => crossings)).toEqual([
    [0, 100],
    [0, 30, 70, 100],
    [0, 100],
  ]);
  expect(sharpCorners({ outline: ring.outline, holes: [] })).toEqual(rectangle([0, 0], [100, 100]));
  expect(sharpCorners({ outline: circle([0, 0], 100, 90), holes: [] })).toEqual([]);
});
