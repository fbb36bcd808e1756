import type { Goods } from '../../../src/core/benchwork/goods.ts';
import type {
  BenchInput,
  BenchworkInput,
  DrawersInput,
  LegsInput,
  ShelvesInput,
} from '../../../src/core/benchwork/input.ts';
import type { CasterStock, CoverStock, HardwareStock } from '../../../src/core/stock/goods.ts';
import { knownThickness } from '../../../src/core/stock/thickness-check.ts';
import { sheet, table } from './example.ts';

export const PLY_12 = sheet('birch-ply-12', { nominal: 12, listed: 12, low: 11.5, high: 12.5 }, [2440, 1220]);
export const PLY_6 = sheet('birch-ply-6.5', { nominal: 6.5, listed: 6.4, low: 6.1, high: 6.9 }, [1525, 1525]);

function item(
  id: string,
  form: HardwareStock['form'],
  size: { readonly diameter?: number; readonly length?: number },
): HardwareStock {
  const { diameter = null, length = null } = size;
  return { kind: 'hardware', id, name: id, source: 'made for the test', price: null, form, diameter, length, pack: 10 };
}

function cover(
  id: string,
  size: { readonly coversArea: number | null; readonly fillsVolume: number | null },
): CoverStock {
  return {
    kind: 'cover',
    id,
    name: id,
    source: 'made for the test',
    price: null,
    unit: 'tin',
    massPerSquareMetre: null,
    ...size,
  };
}

export const GOODS: Goods = {
  show: 'mm',
  hardware: [
    item('screw-3.5x12', 'screw', { diameter: 3.5, length: 12 }),
    item('screw-3.5x16', 'screw', { diameter: 3.5, length: 16 }),
    item('screw-4x25', 'screw', { diameter: 4, length: 25 }),
    item('screw-4x30', 'screw', { diameter: 4, length: 30 }),
    item('screw-4x45', 'screw', { diameter: 4, length: 45 }),
    item('bolt-m6x16', 'bolt', { diameter: 6, length: 16 }),
    item('bolt-m6x40', 'bolt', { diameter: 6, length: 40 }),
    item('bolt-m8x60', 'bolt', { diameter: 8, length: 60 }),
    item('bolt-m8x110', 'bolt', { diameter: 8, length: 110 }),
    item('nut-m8', 'nut', { diameter: 8 }),
    item('washer-m6', 'washer', { diameter: 6 }),
    item('washer-m8', 'washer', { diameter: 8 }),
    item('insert-m6', 'insert', { diameter: 6, length: 15 }),
    item('insert-m8', 'insert', { diameter: 8, length: 18 }),
    item('slide-450', 'slide', { length: 450 }),
    item('bracket-40', 'bracket', { length: 40 }),
    item('catch', 'catch', {}),
    item('biscuit-10', 'biscuit', { length: 53 }),
    item('foot-m8', 'foot', { diameter: 8, length: 40 }),
  ],
  covers: [
    cover('wood-glue', { coversArea: null, fillsVolume: 500_000 }),
    cover('sealer', { coversArea: 9e6, fillsVolume: null }),
  ],
};

export const CASTER: CasterStock = {
  kind: 'caster',
  id: 'caster-75',
  name: 'caster-75',
  source: 'made for the test',
  price: null,
  mount: 'plate',
  overallHeight: 100,
  wheel: 75,
  swivelRadius: 68,
  plate: [60, 60],
  bolts: { diameter: 6, spacing: [44, 44] },
  locks: true,
  load: 50,
};

export const DRAWERS: DrawersInput = {
  at: 'benchwork.benches.0.drawers',
  side: 'front',
  bays: [2, 3],
  slides: { length: 450, clearance: 12.7 },
  faces: 'cut-out',
  bit: 6.35,
  corners: 'rabbet',
  pull: 'bar',
  opening: null,
  ligament: null,
  material: 'drawer',
  bottom: 'drawer-bottom',
};

export const POSTS: LegsInput = {
  at: 'benchwork.benches.0.legs',
  form: 'post',
  material: 'frame',
  layers: 4,
  width: null,
  footWidth: null,
  stand: { kind: 'caster', caster: CASTER, free: null },
};

export const SHELVES: ShelvesInput = {
  at: 'benchwork.benches.0.shelves',
  side: 'back',
  bays: [2, 3],
  material: 'deck',
  below: null,
};

/** The demo's table with drawers in front, shelves behind and posts on casters, or other fittings. */
export function fittedTable(bench: Partial<BenchInput> = {}, more: Partial<BenchworkInput> = {}): BenchworkInput {
  const plain = table([17.7], {}, { drawers: [DRAWERS], legs: POSTS, shelves: [SHELVES], ...bench });
  const materials = {
    ...plain.materials,
    drawer: { stock: PLY_12, thickness: knownThickness(PLY_12, [12]) },
    'drawer-bottom': { stock: PLY_6, thickness: knownThickness(PLY_6, [6.4]) },
  };
  return { ...plain, materials, goods: GOODS, ...more };
}
