import { frame } from '../../../src/core/benchwork/frame.ts';
import type { BenchInput, BenchworkInput, BenchworkModel } from '../../../src/core/benchwork/input.ts';
import type { SheetStock } from '../../../src/core/stock/goods.ts';
import type { Part, Placement } from '../../../src/core/stock/part.ts';
import { knownThickness } from '../../../src/core/stock/thickness-check.ts';

/** A birch sheet as makers list it (mean, low, high), mm; sizes as the demo's. */
export const PLY_18 = sheet('birch-ply-18', { nominal: 18, listed: 17.7, low: 17.1, high: 18.1 }, [2440, 1220]);
export const PLY_9 = sheet('birch-ply-9', { nominal: 9, listed: 9.2, low: 8.8, high: 9.5 }, [1525, 1525]);

export function sheet(
  id: string,
  thickness: SheetStock['thickness'],
  [length, width]: readonly [number, number],
): SheetStock {
  return {
    kind: 'sheet',
    id,
    name: id,
    source: 'made for the test',
    price: null,
    material: 'plywood',
    thickness,
    sizes: [{ length, width, grain: 'length', price: null }],
    density: 685,
    stiffness: null,
    bending: null,
  };
}

export const TABLE: BenchInput = {
  id: 'table',
  at: 'benchwork.benches.0',
  place: { x: 0, y: 0, turn: 0 },
  phase: 'now',
  construction: 'lapped-grid',
  struts: { along: { kind: 'even', count: 1 }, across: { kind: 'even', count: 3 } },
  flangeStrips: 60,
  deck: { overhang: 3, flush: 'front-left', seams: [{ parallelTo: 'y', on: 'strut.across-3' }] },
};

export const DIMENSIONS = {
  length: 1600,
  width: 1100,
  height: 700,
  side: 170,
  strut: 135,
  clearance: 0.3,
  'lap-relief': 0.4,
};

/** The demo's table with its frame sheet measured at the given readings. */
export function table(
  readings: readonly number[],
  dimensions: Partial<typeof DIMENSIONS> = {},
  bench: Partial<BenchInput> = {},
): BenchworkInput {
  return {
    dimensions: { ...DIMENSIONS, ...dimensions },
    materials: {
      frame: { stock: PLY_18, thickness: knownThickness(PLY_18, readings) },
      deck: { stock: PLY_9, thickness: knownThickness(PLY_9, [9.2]) },
    },
    machining: { step: 0.1, bit: 6.35 },
    benches: [{ ...TABLE, ...bench }],
  };
}

export function model(input: BenchworkInput): BenchworkModel {
  const result = frame(input);
  if (!result.ok) throw new Error(result.faults.map(({ at, what }) => `${at}: ${what}`).join('\n'));
  return result.value;
}

/** The part an instance belongs to, and its place. */
export function instance(built: BenchworkModel, id: string): { readonly part: Part; readonly place: Placement } {
  for (const part of built.parts) {
    const place = part.places.find((one) => one.id === id);
    if (place !== undefined) return { part, place };
  }
  throw new Error(`no instance ${id}`);
}
