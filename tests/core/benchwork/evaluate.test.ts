import { describe, expect, it } from 'vitest';
import { evaluateBenchwork } from '../../../src/core/benchwork/evaluate.ts';
import { frame } from '../../../src/core/benchwork/frame.ts';
import { materialThicknesses } from '../../../src/core/benchwork/materials.ts';
import { type Benchwork, benchworkSchema } from '../../../src/core/benchwork/schema.ts';
import { quantityKit } from '../../../src/core/units/schema.ts';
import { PLY_9, PLY_18 } from './example.ts';

const STOCK = [PLY_18, PLY_9];

const CHAPTER = {
  dimensions: {
    length: '1600 mm',
    width: '1.1 m',
    height: '700 mm',
    side: 'strut + 35 mm',
    strut: '135 mm',
    clearance: '0.3 mm',
    'lap-relief': '0.4 mm',
  },
  materials: { frame: { stock: 'birch-ply-18', measured: '17.7 mm' }, deck: 'birch-ply-9' },
  benches: [
    {
      id: 'table',
      place: { x: '0', y: '0', turn: '90°' },
      construction: 'lapped-grid',
      struts: { along: '1', across: '3' },
      'flange-strips': { width: '60 mm' },
      deck: { overhang: '3 mm', flush: 'front-left', seam: { 'parallel-to': 'y', on: 'strut.across-3' } },
    },
  ],
};

function chapter(change: Record<string, unknown> = {}): Benchwork {
  return benchworkSchema(quantityKit(null)).parse({ ...CHAPTER, ...change });
}

function evaluated(
  change: Record<string, unknown> = {},
  readings: Record<string, { value: number; at: string }[]> = {},
) {
  const benchwork = chapter(change);
  const thicknesses = materialThicknesses(benchwork, { stock: STOCK, readings });
  if (!thicknesses.ok) return thicknesses;
  return evaluateBenchwork(benchwork, {
    scope: {},
    thicknesses: thicknesses.value,
    stock: STOCK,
    show: 'mm',
    bits: [12.7, 6.35],
  });
}

const faults = (...args: Parameters<typeof evaluated>) => {
  const result = evaluated(...args);
  return result.ok ? [] : result.faults;
};

describe('the chapter as written', () => {
  it('comes to numbers: expressions, metres, degrees, the smallest bit in hand', () => {
    const result = evaluated();
    if (!result.ok) throw new Error(JSON.stringify(result.faults));
    expect(result.value.dimensions).toMatchObject({ length: 1600, width: 1100, side: 170 });
    expect(result.value.machining).toEqual({ step: 0.1, bit: 6.35 });
    expect(result.value.benches[0]?.place.turn).toBeCloseTo(Math.PI / 2, 12);
    const model = frame(result.value);
    expect(model.ok && model.value.parts.find(({ id }) => id === 'end.left')?.blank.length).toBe(1076.4);
  });

  it('knows the thickness of each role by name, in any order', () => {
    const bay = {
      ...CHAPTER.dimensions,
      bay: '(length - 2 * frame.thickness - 3 * frame.thickness) / 4',
      half: 'bay / 2',
    };
    const result = evaluated({ dimensions: bay });
    expect(result.ok && result.value.dimensions).toMatchObject({ bay: 377.875, half: 188.9375 });
  });

  it('settings step in 64ths where pages show inches, or as the chapter says', () => {
    const benchwork = chapter({ machining: { 'round-to': '0.5 mm', bit: '1/2 in' } });
    const thicknesses = materialThicknesses(chapter(), { stock: STOCK, readings: {} });
    if (!thicknesses.ok) throw new Error('no thickness');
    const context = { scope: {}, thicknesses: thicknesses.value, stock: STOCK, show: 'in' } as const;
    const inches = evaluateBenchwork(chapter(), context);
    expect(inches.ok && inches.value.machining).toEqual({ step: 25.4 / 64, bit: null });
    const own = evaluateBenchwork(benchwork, context);
    expect(own.ok && own.value.machining).toEqual({ step: 0.5, bit: 12.7 });
  });
});

describe('mistakes in the chapter', () => {
  it('dimensions in a ring', () => {
    const ring = { ...CHAPTER.dimensions, side: 'strut + 35 mm', strut: 'side - 35 mm' };
    expect(faults({ dimensions: ring }).map(({ rule, at }) => [rule, at])).toEqual([
      ['dimension-ring', 'benchwork.dimensions.side'],
      ['dimension-ring', 'benchwork.dimensions.strut'],
    ]);
  });

  it('one unknown name is one fault, however much rests on it', () => {
    const unknown = { ...CHAPTER.dimensions, strut: 'sied - 35 mm', side: 'strut + 35 mm', more: 'side * 2' };
    expect(faults({ dimensions: unknown }).map(({ rule }) => rule)).toEqual(['unknown-name']);
  });

  it('a stock nobody lists, with the nearest name', () => {
    expect(faults({ materials: { ...CHAPTER.materials, frame: 'birch-ply-81' } })).toMatchObject([
      { rule: 'stock-unknown', at: 'benchwork.materials.frame', mend: 'did you mean birch-ply-18?' },
    ]);
  });

  it('25 mm for an 18 mm sheet', () => {
    const frameAt25 = { ...CHAPTER.materials, frame: { stock: 'birch-ply-18', measured: '25 mm' } };
    expect(faults({ materials: frameAt25 })).toMatchObject([
      { rule: 'thickness-of-another-sheet', at: 'benchwork.materials.frame.measured' },
    ]);
  });
});

describe('the log and the chapter', () => {
  const readings = { frame: [17.6, 17.7, 17.8].map((value, i) => ({ value, at: `log.0.measured.0.readings.${i}` })) };

  it("the log's readings win, and what they set is no longer cut after measuring", () => {
    const known = materialThicknesses(chapter(), { stock: STOCK, readings });
    expect(known.ok && known.value.frame).toMatchObject({ mean: 17.7, thickest: 17.8, measured: true, dated: true });
    const undated = materialThicknesses(chapter(), { stock: STOCK, readings: {} });
    expect(undated.ok && undated.value.frame).toMatchObject({
      mean: 17.7,
      thickest: 17.7,
      measured: true,
      dated: false,
    });
  });

  it('a part waits for measuring until the log has a reading', () => {
    for (const [log, waits] of [
      [{}, true],
      [readings, false],
    ] as const) {
      const result = evaluated({}, log);
      if (!result.ok) throw new Error(JSON.stringify(result.faults));
      const model = frame(result.value);
      expect(model.ok && model.value.parts.find(({ id }) => id === 'side.front')?.cutAfterMeasuring).toBe(waits);
    }
  });
});
