import type { Stock } from '../stock/goods.ts';
import { type Prices, priceOfSize } from '../stock/price.ts';
import type { SheetWanted, ShoppingLine } from './line.ts';
import { chaptersOf, times } from './sum.ts';

/** Sheets and boards by stock and size, in code unit order. */
export function sheetLines(
  wanted: readonly SheetWanted[],
  goods: readonly Stock[],
  prices: Prices,
): readonly ShoppingLine[] {
  const groups = new Map<string, SheetWanted[]>();
  for (const one of wanted) {
    const key = `${one.stock} ${one.length} ${one.width}`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, alike]) => lineOf(alike, goods, prices) ?? []);
}

function lineOf(alike: readonly SheetWanted[], goods: readonly Stock[], prices: Prices): ShoppingLine | null {
  const [first] = alike;
  const stock = goods.find(({ id }) => id === first?.stock);
  if (first === undefined || stock === undefined) return null;
  const size = { length: first.length, width: first.width };
  const each = priceOfSize(stock, size, prices);
  const area = alike.reduce((sum, { length, width }) => sum + length * width, 0);
  const used = alike.reduce((sum, { parts, kept }) => sum + parts + kept, 0);
  return {
    ...{ stock: stock.id, name: stock.name, unit: stock.kind, size },
    ...{ quantity: alike.length, counted: null, over: null, inHand: 0 },
    waste: area > 0 ? Math.max(0, 1 - used / area) : null,
    ...{ each, price: times(each, alike.length), for: chaptersOf(alike) },
  };
}
