import { expect, test } from 'vitest';
import type { Point } from '../../../src/core/geometry/shapes.ts';
import { nearestOnStretch } from '../../../src/core/scenery/distance.ts';
import { heightField } from '../../../src/core/scenery/field.ts';
import { sampled } from '../../../src/core/scenery/grid.ts';
import { foamLayers } from '../../../src/core/scenery/layer.ts';
import { bare } from './table.ts';

// a line aslant that climbs from the deck: its bank is a strip with straight sides and square ends
const [a, b] = [[100, 100] as const, [900, 420] as const];
const line = {
  ...{ id: 'main', half: 19, slope: 2 / 3, free: [] },
  points: [
    { at: 0, x: a[0], y: a[1], z: 0 },
    { at: 862, x: b[0], y: b[1], z: 8 },
  ],
};
const field = heightField({ ...bare, paths: [line] });
const grid = sampled(field, { low: [0, 0], high: [1000, 600] }, 5);

/** Places on a loop, twenty to a side. */
function along(loop: readonly Point[]): readonly Point[] {
  return loop.flatMap(([x, y], i) => {
    const [nx, ny] = loop[(i + 1) % loop.length] ?? [x, y];
    return Array.from({ length: 20 }, (_, k): Point => [x + ((nx - x) * k) / 20, y + ((ny - y) * k) / 20]);
  });
}

/** How far places on the bank's outline lie off its sides at most, mm: half + z / slope off the line. */
function offSides(of: typeof field | null): number {
  const [layer] = foamLayers({
    ...{ grid, field: of, thickness: 25, hollow: null, without: [], room: () => [] },
    within: [
      [
        [0, 0],
        [1000, 0],
        [1000, 600],
        [0, 600],
      ],
    ],
  });
  const places = (layer?.template ?? []).flatMap(({ outline }) => along(outline));
  const sides = places.flatMap((place) => {
    const { distance, share, raw } = nearestOnStretch(a, b, place);
    return raw < 0.03 || raw > 0.97 ? [] : [Math.abs(distance - 19 - (8 * share) / (2 / 3))];
  });
  expect(sides.length).toBeGreaterThan(1);
  return Math.max(...sides);
}

test('the outline of a low bank is as straight as the bank, where the grid alone leaves teeth', () => {
  expect(offSides(field)).toBeLessThan(0.3);
  // the planted fault: corners left where the grid puts them
  expect(offSides(null)).toBeGreaterThan(1);
});
