import fc from 'fast-check';
import { baysBehind } from '../../src/core/benchwork/drawers/bays.ts';
import { longestSlide } from '../../src/core/benchwork/drawers/box.ts';
import { lappedGrid } from '../../src/core/benchwork/grid.ts';
import type { BenchworkInput, DrawersInput, LegsInput, ShelvesInput } from '../../src/core/benchwork/input.ts';
import { knownThickness } from '../../src/core/stock/thickness-check.ts';
import { CASTER, DRAWERS, GOODS, PLY_6, PLY_12, POSTS, SHELVES } from '../core/benchwork/fitted.ts';
import { randomTable } from './random-table.ts';

/** Random tables with drawers, legs and shelves as someone might ask for them; bays and sizes fit more often than not. */
export const randomFitted: fc.Arbitrary<BenchworkInput> = fc
  .record({
    table: randomTable,
    form: fc.constantFrom('post', 'post', 'angle', 'trestle'),
    layers: fc.integer({ min: 3, max: 5 }),
    width: fc.integer({ min: 850, max: 1200 }).map((n) => n / 10),
    foot: fc.option(fc.integer({ min: 65, max: 95 }), { nil: null }),
    wheels: fc.constantFrom('casters', 'feet', 'floor'),
    side: fc.constantFrom('front', 'front', 'back', 'left', 'right'),
    bays: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 3 }),
    fits: fc.integer({ min: 0, max: 9 }),
    taller: fc.constantFrom(0, 50, 50, 80),
    slide: fc.constantFrom(250, 300, 350, 400, 450, 500),
    clearance: fc.constantFrom(12.7, 12.7, 13, 13.4),
    faces: fc.constantFrom('cut-out', 'overlaid'),
    bit: fc.constantFrom(6, 6.35, 8, 12.7),
    corners: fc.constantFrom('rabbet', 'dado'),
    shelfSide: fc.constantFrom('front', 'back'),
    shelfBays: fc.array(fc.integer({ min: 1, max: 6 }), { maxLength: 3 }),
  })
  .map((raw): BenchworkInput => {
    const table = taller(raw.table, raw.taller);
    const [bench] = table.benches;
    if (bench === undefined) return table;
    const grid = lappedGrid(table, bench);
    const known = (side: DrawersInput['side'], bays: readonly number[]) => {
      const count = grid === null ? 1 : baysBehind(grid, side).length;
      return [...new Set(bays.map((bay) => ((bay - 1) % count) + 1))];
    };
    const [deepest] = grid === null ? [] : baysBehind(grid, raw.side);
    const longest = deepest === undefined ? null : longestSlide(deepest.deep - 2);
    const slide = raw.fits > 0 && longest !== null ? Math.min(longest, raw.slide) : raw.slide;
    const drawers: DrawersInput = {
      ...DRAWERS,
      side: raw.side,
      bays: known(raw.side, raw.bays),
      slides: { length: slide, clearance: raw.clearance },
      faces: raw.faces,
      bit: raw.bit,
      corners: raw.corners,
    };
    const shelves: ShelvesInput = { ...SHELVES, side: raw.shelfSide, bays: known(raw.shelfSide, raw.shelfBays) };
    return {
      ...table,
      materials: {
        ...table.materials,
        drawer: { stock: PLY_12, thickness: knownThickness(PLY_12, [11.9, 12.1]) },
        'drawer-bottom': { stock: PLY_6, thickness: knownThickness(PLY_6, [6.4]) },
      },
      goods: GOODS,
      benches: [{ ...bench, drawers: [drawers], shelves: [shelves], legs: legs(raw) }],
    };
  });

/** Sides and struts deeper by this, so that drawers have room more often. */
function taller(table: BenchworkInput, by: number): BenchworkInput {
  const { side = 0, strut = 0 } = table.dimensions;
  return { ...table, dimensions: { ...table.dimensions, side: side + by, strut: strut + by } };
}

type Legs = {
  readonly form: 'post' | 'angle' | 'trestle';
  readonly layers: number;
  readonly width: number;
  readonly foot: number | null;
  readonly wheels: 'casters' | 'feet' | 'floor';
};

function legs({ form, layers, width, foot, wheels }: Legs): LegsInput {
  const thick = GOODS.hardware.find((one) => one.form === 'foot');
  const stand: LegsInput['stand'] =
    wheels === 'casters' || thick === undefined
      ? { kind: 'caster', caster: CASTER, free: null }
      : wheels === 'feet'
        ? { kind: 'foot', foot: thick, travel: 20, height: 25 }
        : { kind: 'floor' };
  return {
    ...POSTS,
    form,
    layers: form === 'post' ? layers : 1,
    width: form === 'post' ? null : width,
    footWidth: form === 'angle' && foot !== null ? Math.min(foot, width) : null,
    stand,
  };
}
