import type { Stock, StockSize } from './goods.ts';

export type Price = { readonly value: number; readonly currency: string };

/** Prices an author writes beside a notebook, by stock; they come before those of the stock files. */
export type Prices = Readonly<Record<string, Price>>;

/**
 * Price of one sheet or board of a size; null when nobody gave it. A notebook's own price of a sheet sold in several
 * sizes names none of them. Of a board sold in several lengths a price is that of one metre.
 */
export function priceOfSize(
  goods: Stock,
  size: { readonly length: number; readonly width: number },
  prices: Prices,
): Price | null {
  const own = prices[goods.id] ?? null;
  if (goods.kind === 'board') {
    const price = own ?? goods.price;
    return price === null || goods.lengths.length === 1
      ? price
      : { ...price, value: (price.value * size.length) / 1000 };
  }
  if (goods.kind !== 'sheet') return null;
  if (own !== null && goods.sizes.length === 1) return own;
  const listed = goods.sizes.find((one) => sameSize(one, size))?.price ?? null;
  return listed ?? (goods.sizes.length === 1 ? goods.price : null);
}

function sameSize(a: StockSize, b: { readonly length: number; readonly width: number }): boolean {
  return Math.abs(a.length - b.length) < 1e-6 && Math.abs(a.width - b.width) < 1e-6;
}

/** Price of one buying unit of anything that is no sheet or board; null when nobody gave it. */
export function priceOfUnit(goods: Stock, prices: Prices): Price | null {
  return prices[goods.id] ?? goods.price;
}
