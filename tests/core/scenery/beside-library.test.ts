import { contours as libraryContours } from 'd3-contour';
import { expect, test } from 'vitest';
import { area } from '../../../src/core/geometry/polygon.ts';
import type { Point } from '../../../src/core/geometry/shapes.ts';
import { contourLength, contours } from '../../../src/core/scenery/contour.ts';
import { type Grid, sampled } from '../../../src/core/scenery/grid.ts';
import { regionAbove } from '../../../src/core/scenery/region.ts';

// d3-contour 4.0.2 (ISC), a general library for contours of a grid of values; it has no part in the product
const DOMAIN = { low: [0, 0], high: [400, 300] } as const;

/** The library's regions as high as a level, moved from its cells to ours: its values stand in the middle of cells. */
function libraryRings({ nx, ny, dx, dy, values }: Grid, level: number): readonly (readonly Point[])[] {
  const found = libraryContours().size([nx, ny]).contour(Array.from(values), level);
  return found.coordinates.flatMap((rings) =>
    rings.map((ring) => ring.map(([x = 0, y = 0]): Point => [(x - 0.5) * dx, (y - 0.5) * dy])),
  );
}

function ringArea(ring: readonly Point[]): number {
  return ring.reduce((sum, [x, y], i) => {
    const [px, py] = ring[(i + ring.length - 1) % ring.length] ?? [x, y];
    return sum + (px * y - x * py) / 2;
  }, 0);
}

function ringLength(ring: readonly Point[]): number {
  return contourLength({ points: ring, closed: true });
}

/** Smooth ground: low at the border, so that every line closes within the grid. */
const smooth: Readonly<Record<string, (x: number, y: number) => number>> = {
  dome: (x, y) => 90 * (1 - ((x - 210) ** 2 + (y - 140) ** 2) / 130 ** 2),
  'two tops': (x, y) =>
    80 * Math.exp(-((x - 130) ** 2 + (y - 150) ** 2) / 3600) + 60 * Math.exp(-((x - 270) ** 2 + (y - 160) ** 2) / 4900),
  'ring with a hollow': (x, y) => 70 - (Math.hypot(x - 200, y - 150) - 80) ** 2 / 30,
};

const ours = (grid: Grid, level: number) => ({
  area: regionAbove(grid, level).reduce((sum, region) => sum + area(region), 0),
  length: contours(grid, level).reduce((sum, line) => sum + contourLength(line), 0),
  lines: contours(grid, level).length,
});

function theirs(grid: Grid, level: number) {
  const rings = libraryRings(grid, level);
  return {
    area: Math.abs(rings.reduce((sum, ring) => sum + ringArea(ring), 0)),
    length: rings.reduce((sum, ring) => sum + ringLength(ring), 0),
    lines: rings.length,
  };
}

for (const [name, field] of Object.entries(smooth)) {
  test(`contours of ${name} have the area, length and number that a general library finds`, () => {
    const grid = sampled(field, DOMAIN, 5);
    for (const level of [7.3, 21.1, 33.7, 52.9]) {
      const [own, other] = [ours(grid, level), theirs(grid, level)];
      expect(own.lines).toBe(other.lines);
      expect(own.area / other.area).toBeCloseTo(1, 9);
      expect(own.length / other.length).toBeCloseTo(1, 9);
    }
  });
}

test('a level half a millimetre off is told from the library at once', () => {
  const grid = sampled(smooth.dome ?? (() => 0), DOMAIN, 5);
  const [own, other] = [ours(grid, 33.7), theirs(grid, 34.2)];
  expect(Math.abs(own.area / other.area - 1)).toBeGreaterThan(1e-3);
});
