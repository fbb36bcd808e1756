import fc from 'fast-check';
import type { Point } from '../../../src/core/geometry/shapes.ts';
import { baysOf, footprintOf } from '../../../src/core/wiring/routing/bays.ts';
import type { Obstruction, Site } from '../../../src/core/wiring/routing/site.ts';
import { wallsOf } from '../../../src/core/wiring/routing/walls.ts';
import { tableParts } from './tables.ts';

const level = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } as const;

/** The test table with obstructions under it. */
export function siteWith(obstructions: readonly Obstruction[], radius = 3): Site {
  const walls = wallsOf(tableParts, [{ bench: 'table', pose: level }]);
  const footprint = footprintOf('table', walls);
  return { footprints: footprint === null ? [] : [footprint], walls, obstructions, radius, hole: 5, reach: 600 };
}

export const bays = baysOf(siteWith([]));

const inside = fc
  .tuple(fc.integer({ min: 4, max: 56 }), fc.integer({ min: 4, max: 36 }))
  .map(([x, y]): Point => [x * 20, y * 20]);

/** A start, one to four places to pass, and up to three boxes in the way. */
export const randomAsk = fc.record({
  from: inside,
  drops: fc.array(inside, { minLength: 1, maxLength: 4 }),
  boxes: fc
    .array(fc.tuple(inside, fc.integer({ min: 30, max: 200 }), fc.integer({ min: 30, max: 200 })), { maxLength: 3 })
    .map((boxes) =>
      boxes.map(
        ([[x, y], long, wide], i): Obstruction => ({
          id: `box-${i}`,
          box: { min: [x, y, 520], max: [x + long, y + wide, 600] },
        }),
      ),
    ),
});
