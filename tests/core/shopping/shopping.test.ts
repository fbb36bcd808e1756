import { describe, expect, it } from 'vitest';
import type { GoodsWanted, SheetWanted } from '../../../src/core/shopping/line.ts';
import { shoppingFindings, shoppingList } from '../../../src/core/shopping/shopping.ts';
import type { BoardStock, HardwareStock, SheetStock, Stock } from '../../../src/core/stock/goods.ts';
import { priceOfSize } from '../../../src/core/stock/price.ts';

const screw: HardwareStock = {
  ...{ id: 'screw', name: 'Screw', source: 'invented', kind: 'hardware', form: 'screw' },
  ...{ diameter: 4, length: 30, pack: 100, price: { value: 6.2, currency: 'EUR' } },
};
const slide: HardwareStock = { ...screw, id: 'slide', name: 'Slide', form: 'slide', pack: 1, price: null };
const ply: SheetStock = {
  ...{ id: 'ply', name: 'Ply', source: 'invented', kind: 'sheet', material: 'plywood', price: null },
  thickness: { nominal: 18, listed: 17.7, low: 17.1, high: 18.1 },
  sizes: [{ length: 1000, width: 500, grain: 'length', price: { value: 40, currency: 'EUR' } }],
  ...{ density: 685, stiffness: null, bending: null },
};
const board: BoardStock = {
  ...{ id: 'board', name: 'Board', source: 'invented', kind: 'board', width: 89, lengths: [2400, 3000] },
  ...{ price: { value: 2.5, currency: 'EUR' }, thickness: ply.thickness },
  ...{ density: 450, stiffness: null, bending: null },
};
const stock: readonly Stock[] = [screw, slide, ply, board];

const none = { prices: {}, inHand: {}, spares: 0 };
const use = (id: string, quantity: number | null, chapter = 'benchwork'): GoodsWanted => ({
  ...{ stock: id, name: id, unit: null, quantity, for: chapter },
});
const sheet: SheetWanted = { stock: 'ply', length: 1000, width: 500, parts: 300_000, kept: 100_000, for: 'benchwork' };

function bought(goods: readonly GoodsWanted[], buying: Partial<typeof none> = {}) {
  const { lines } = shoppingList({ sheets: [], goods, stock, buying: { ...none, ...buying }, budget: null });
  return lines.map(({ counted, inHand, over, quantity, unit }) => [quantity, unit, counted, over, inHand]);
}

describe('hardware', () => {
  it('is bought in whole packs, over all chapters', () => {
    expect(bought([use('screw', 87), use('screw', 13, 'scenery')])).toEqual([[1, 'pack of 100', 100, 0, 0]]);
    expect(bought([use('screw', 87), use('screw', 14, 'scenery')])).toEqual([[2, 'pack of 100', 101, 99, 0]]);
  });

  it('has its spares counted in before packs, and what is in hand taken off', () => {
    // 95 and a tenth are 105 screws; 5 in hand leave one pack, 4 leave two
    expect(bought([use('screw', 95)], { spares: 0.1 })).toEqual([[2, 'pack of 100', 95, 105, 0]]);
    expect(bought([use('screw', 95)], { spares: 0.1, inHand: { screw: 5 } as never })).toEqual([
      [1, 'pack of 100', 95, 10, 5],
    ]);
    expect(bought([use('screw', 95)], { spares: 0.1, inHand: { screw: 4 } as never })[0]?.[0]).toBe(2);
  });

  it('has no spares of slides', () => {
    expect(bought([use('slide', 2)], { spares: 0.5 })).toEqual([[2, 'piece', 2, 0, 0]]);
  });

  it('that is all in hand is not on the list', () => {
    expect(bought([use('screw', 20)], { inHand: { screw: 30 } as never })).toEqual([]);
  });

  it('nobody can count has no quantity, and no price is made up', () => {
    const asked = [use('screw', null)];
    const { lines, unpriced } = shoppingList({ sheets: [], goods: asked, stock, buying: none, budget: null });
    expect(lines[0]).toMatchObject({ quantity: null, price: null });
    expect(unpriced).toBe(1);
  });
});

describe('sheets', () => {
  it('count by size, with the waste that is neither part nor offcut', () => {
    const asked = [sheet, { ...sheet, parts: 450_000, kept: 0, for: 'scenery' }];
    const { lines, total } = shoppingList({ sheets: asked, goods: [], stock, buying: none, budget: null });
    expect(lines).toMatchObject([{ quantity: 2, unit: 'sheet', for: ['benchwork', 'scenery'] }]);
    // 850 000 of 1 000 000 square mm are used
    expect(lines[0]?.waste).toBeCloseTo(0.15, 12);
    expect(total).toEqual([{ value: 80, currency: 'EUR' }]);
  });

  it("take the notebook's price before that of the stock file", () => {
    const prices = { ply: { value: 36.5, currency: 'EUR' } };
    expect(priceOfSize(ply, { length: 1000, width: 500 }, prices)?.value).toBe(36.5);
    const two = { ...ply, sizes: [...ply.sizes, { length: 2000, width: 500, grain: 'length' as const, price: null }] };
    expect(priceOfSize(two, { length: 1000, width: 500 }, prices)?.value).toBe(40);
    expect(priceOfSize(two, { length: 2000, width: 500 }, prices)).toBeNull();
  });

  it('a board sold in several lengths is priced by the metre', () => {
    expect(priceOfSize(board, { length: 2400, width: 89 }, {})?.value).toBeCloseTo(6, 12);
  });
});

describe('the budget', () => {
  const ask = { sheets: [sheet, sheet], goods: [use('screw', 10), use('slide', 1)], stock, buying: none };

  it('is compared with what has a price, cents not lost', () => {
    const { left, total, unpriced } = shoppingList({ ...ask, budget: { value: 86.3, currency: 'EUR' } });
    expect(total).toEqual([{ value: 86.2, currency: 'EUR' }]);
    expect([left?.value, unpriced]).toEqual([0.1, 1]);
  });

  it('that is passed is a care with the sum that is missing', () => {
    const over = shoppingList({ ...ask, budget: { value: 86.19, currency: 'EUR' } });
    const [finding] = shoppingFindings(over, stock, {});
    expect(finding).toMatchObject({ rule: 'shopping-over-budget', level: 'care', figure: 86.2, limit: 86.19 });
    expect(finding?.mend.join('')).toContain('0.01 EUR');
    const within = shoppingList({ ...ask, budget: { value: 86.2, currency: 'EUR' } });
    expect(shoppingFindings(within, stock, {})).toEqual([]);
  });

  it('in another currency is not exchanged', () => {
    const { left } = shoppingList({ ...ask, budget: { value: 10, currency: 'USD' } });
    expect(left).toEqual({ value: 10, currency: 'USD' });
  });
});
