import { describe, expect, it } from 'vitest';
import { type AllCut, cutLots, type Workshop, yardAsks } from '../../../src/core/cutting/lots.ts';
import { replay } from '../../../src/core/cutting/replay.ts';
import { savingsOf } from '../../../src/core/cutting/savings.ts';
import type { SheetStock } from '../../../src/core/stock/goods.ts';
import type { PieceInHand } from '../../../src/core/stock/in-hand.ts';
import type { Part } from '../../../src/core/stock/part.ts';

const ply: SheetStock = {
  ...{ id: 'ply', name: 'Ply', source: 'invented', kind: 'sheet', material: 'plywood', price: null },
  thickness: { nominal: 18, listed: 17.7, low: 17.1, high: 18.1 },
  sizes: [{ length: 1000, width: 500, grain: 'length', price: null }],
  ...{ density: 685, stiffness: null, bending: null },
};

const pose = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } as const;

type Size = readonly [length: number, width: number, count: number, thickness?: number];

function part(id: string, chapter: Part['chapter'], [length, width, count, thickness = 17.7]: Size): Part {
  const places = Array.from({ length: count }, (_, i) => ({
    id: `${id}-${i + 1}`,
    label: `${id}${i + 1}`,
    pose,
    marks: [],
  }));
  return {
    ...{ id, label: id, role: id, chapter, bench: 'b', stock: 'ply', features: [], places },
    blank: { length, width, thickness, grain: 'length' },
    ...{ cutAfterMeasuring: false, phase: 'now' },
  };
}

const shop: Workshop = {
  saw: { kerf: 3, rip: null, trim: 0, keep: 80, rounds: 3, nest: null, car: null },
  ...{ prices: {}, pieces: [] },
};
const piece: PieceInHand = {
  ...{ id: 'left-over', stock: 'ply', length: 700, width: 200, count: 1 },
  ...{ edges: 'sawn' as const, thickness: null, spoilt: [] },
};

const soundly = (all: AllCut) => {
  expect(all.sheets.flatMap((sheet) => replay(sheet).faults)).toEqual([]);
  expect(all.unplaced).toEqual([]);
  return all;
};

describe('chapters at the saw', () => {
  const parts = [part('A', 'benchwork', [1000, 250, 1]), part('G', 'scenery', [600, 200, 1])];

  it('a later chapter is cut from what the earlier one left, under its label', () => {
    const all = soundly(cutLots(parts, [ply], shop));
    expect(all.sheets.map(({ chapter, piece: from }) => [chapter, from])).toEqual([
      ['benchwork', undefined],
      ['scenery', 'K1'],
    ]);
    expect(all.offcuts[0]).toMatchObject({ label: 'K1', from: 1, used: 2, length: 1000, width: 247 });
    expect(all.bounds).toEqual([{ stock: 'ply', found: 1, bound: 1, proved: true }]);
  });

  it('labels pass by those that are taken', () => {
    const all = cutLots([part('K', 'benchwork', [1000, 250, 1])], [ply], shop);
    expect(all.offcuts.map(({ label }) => label)).toEqual(['K2']);
  });

  it('parts of one stock at two thicknesses never share a sheet', () => {
    const thick = [part('A', 'benchwork', [400, 100, 1]), part('B', 'benchwork', [400, 100, 1, 17.5])];
    const all = soundly(cutLots(thick, [ply], shop));
    expect(all.sheets.map(({ thickness, parts: own }) => [thickness, own.map((one) => one.part)])).toEqual([
      [17.7, ['A']],
      [17.5, ['B']],
    ]);
  });

  it('every piece on the sheets is one instance, each dealt once', () => {
    const all = soundly(cutLots([part('A', 'benchwork', [300, 100, 17])], [ply], shop));
    const dealt = all.sheets.flatMap((sheet) => sheet.parts.map(({ instance }) => instance ?? ''));
    expect(dealt.toSorted()).toEqual(Array.from({ length: 17 }, (_, i) => `A-${i + 1}`).toSorted());
  });
});

describe('pieces in hand', () => {
  it('are cut first, and a new sheet is bought for the rest alone', () => {
    const all = soundly(cutLots([part('A', 'benchwork', [600, 200, 1])], [ply], { ...shop, pieces: [piece] }));
    expect(all.sheets.map((sheet) => sheet.piece)).toEqual(['left-over']);
    expect(all.bounds).toEqual([{ stock: 'ply', found: 0, bound: 0, proved: true }]);
  });

  it('serve only parts of their own thickness, if they have one', () => {
    const thin = { ...piece, thickness: 17.2 };
    const all = soundly(cutLots([part('A', 'benchwork', [600, 200, 1])], [ply], { ...shop, pieces: [thin] }));
    expect(all.sheets.map((sheet) => sheet.piece)).toEqual([undefined]);
  });

  it('never give a part from a spoilt spot', () => {
    const spoilt = { ...piece, spoilt: [{ x: 300, y: 0, length: 20, width: 200 }] };
    const all = soundly(cutLots([part('A', 'benchwork', [300, 190, 3])], [ply], { ...shop, pieces: [spoilt] }));
    const there = all.sheets.filter((sheet) => sheet.piece !== undefined).flatMap((sheet) => sheet.parts);
    expect(there.length).toBe(2);
    for (const { x, length } of there) expect(x + length <= 300 || x >= 320).toBe(true);
  });

  it('lower the bound by no more than they can hold', () => {
    const many = [part('A', 'benchwork', [1000, 240, 4])];
    const all = soundly(cutLots(many, [ply], { ...shop, pieces: [piece] }));
    expect(all.bounds).toEqual([{ stock: 'ply', found: 2, bound: 2, proved: true }]);
  });
});

describe('the way home', () => {
  const parts = [part('A', 'benchwork', [450, 100, 6])];
  const car = { length: 620, width: 520, within: 5 };

  it('one cut at the yard makes both pieces fit the car, and no part lies across it', () => {
    const all = soundly(cutLots(parts, [ply], { ...shop, saw: { ...shop.saw, car } }));
    const [ask] = yardAsks(all);
    expect(ask?.sheets).toEqual([1]);
    expect(ask?.cut.kind).toBe('crosscut');
    for (const { length } of ask?.cut.pieces ?? []) expect(length + car.within).toBeLessThanOrEqual(car.length);
    const at = ask?.cut.at ?? 0;
    for (const { x, length } of all.sheets[0]?.parts ?? [])
      expect(x + length <= at - car.within + 1e-6 || x >= at + shop.saw.kerf + car.within - 1e-6).toBe(true);
  });

  it('a sheet that fits whole is not cut there', () => {
    const wide = { ...car, length: 1000 };
    expect(yardAsks(cutLots(parts, [ply], { ...shop, saw: { ...shop.saw, car: wide } }))).toEqual([]);
  });

  it('a part longer than the car is told, and laid out on whole sheets', () => {
    const long = [part('A', 'benchwork', [900, 100, 1])];
    const all = soundly(cutLots(long, [ply], { ...shop, saw: { ...shop.saw, car } }));
    expect(all.lots.map(({ tooLong }) => tooLong)).toEqual([true]);
    expect(yardAsks(all)).toEqual([]);
  });
});

describe('what would save a sheet', () => {
  it('is told with its stock where the size told saves it and a step more does not', () => {
    const parts = [part('A', 'benchwork', [1000, 253, 1]), part('B', 'benchwork', [1000, 252, 1])];
    const all = soundly(cutLots(parts, [ply], shop));
    // 253 + 252 and a kerf of 3 are 508, 8 more than the sheet is wide
    expect(savingsOf(all.lots, { tick: 1, most: 20 })).toEqual([
      { part: 'A', side: 'width', from: 253, to: 245, sheets: 2, fewer: 1, stock: 'ply' },
    ]);
    expect(savingsOf(all.lots, { tick: 1, most: 7 })).toEqual([]);
  });

  it('is not told of lots that are cut from what is in hand', () => {
    const parts = [part('A', 'benchwork', [1000, 253, 1]), part('B', 'benchwork', [1000, 252, 1])];
    const all = cutLots(parts, [ply], { ...shop, pieces: [piece] });
    expect(savingsOf(all.lots, { tick: 1, most: 20 })).toEqual([]);
  });
});

it('cuts set further than the fence goes say so', () => {
  const parts = [part('A', 'benchwork', [1000, 260, 1]), part('B', 'benchwork', [1000, 90, 1])];
  const all = soundly(cutLots(parts, [ply], { ...shop, saw: { ...shop.saw, rip: 200 } }));
  const told = all.sheets.flatMap(({ cuts }) =>
    cuts
      .filter(({ kind }) => kind === 'rip')
      .map(({ cautions, setting }) => [setting, cautions.includes('beyond-fence')]),
  );
  expect(told).toContainEqual([260, true]);
  expect(told).toContainEqual([90, false]);
});
