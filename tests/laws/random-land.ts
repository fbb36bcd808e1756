import fc from 'fast-check';
import type { Form, Land, Path, Spot, Water } from '../../src/core/scenery/land.ts';
import { selfCrossing } from '../../src/core/scenery/outline-faults.ts';
import { bare } from '../core/scenery/table.ts';

const along = (from: number, to: number) => fc.integer({ min: from, max: to });
const place = fc.tuple(along(0, 1000), along(0, 600));

const hill: fc.Arbitrary<Form> = fc.record({
  kind: fc.constant('hill' as const),
  id: fc.constantFrom('down', 'tor', 'knoll'),
  form: fc.constantFrom('dome', 'cone'),
  top: place,
  height: along(15, 160),
  footRadius: along(60, 300),
});

const ridge: fc.Arbitrary<Form> = fc.record({
  kind: fc.constant('ridge' as const),
  id: fc.constant('edge'),
  form: fc.constantFrom('round', 'sharp'),
  along: fc.array(place, { minLength: 2, maxLength: 4 }),
  height: along(15, 90),
  half: along(40, 150),
});

const spot: fc.Arbitrary<Spot> = fc.record({
  x: along(0, 1000),
  y: along(0, 600),
  height: along(0, 80),
  at: fc.constant(''),
});

/** A water of four or five corners about a middle; now and then it crosses itself. */
const water: fc.Arbitrary<Water> = fc
  .record({
    x: along(60, 940),
    y: along(60, 540),
    size: along(20, 180),
    turns: fc.array(along(0, 628), { minLength: 4, maxLength: 5 }),
    crossed: fc.integer({ min: 0, max: 9 }),
    depth: along(2, 30),
  })
  .map(({ x, y, size, turns, crossed, depth }) => ({
    ...{ id: 'pond', at: '', surface: -3, depth, floor: 3, pour: 3, resin: null, tray: null },
    outline: (crossed === 0 ? turns : turns.toSorted((a, b) => a - b)).map(
      (turn) => [x + size * Math.cos(turn / 100), y + (size / 2) * Math.sin(turn / 100)] as const,
    ),
  }));

export type RandomLand = { readonly land: Land; readonly lines: readonly Path[] };

const line: fc.Arbitrary<Path> = fc
  .record({ y: along(50, 550), z: along(0, 40), rise: along(0, 20) })
  .map(({ y, z, rise }) => ({
    ...{ id: 'main', half: 19, slope: 2 / 3, free: [] },
    points: [0, 250, 500, 750, 1000].map((x, i) => ({ at: x, x, y, z: z + (i % 2) * rise })),
  }));

/** Land on the test's table: most of it can be built. */
export const randomLand: fc.Arbitrary<RandomLand> = fc
  .record({
    forms: fc.array(fc.oneof(hill, ridge), { maxLength: 4 }),
    spots: fc.array(spot, { maxLength: 3 }),
    water: fc.array(water, { maxLength: 2 }),
    lines: fc.array(line, { maxLength: 2 }),
    hollow: fc.option(fc.constant(40), { nil: null, freq: 3 }),
  })
  .map(({ forms, spots, water: waters, lines, hollow }) => ({
    land: { ...bare, forms, spots, water: waters, hollow },
    lines,
  }));

/** Whether a plan has no mistake that evaluation would tell. */
export function isSound({ land }: RandomLand): boolean {
  const crossing = land.water.some(({ outline }) => selfCrossing(outline) !== null);
  const twice = land.spots.some((a, i) => land.spots.slice(0, i).some((b) => Math.hypot(a.x - b.x, a.y - b.y) < 0.5));
  const stuck = land.forms.some((form) => form.kind === 'ridge' && new Set(form.along.map(String)).size < 2);
  return !crossing && !twice && !stuck;
}
