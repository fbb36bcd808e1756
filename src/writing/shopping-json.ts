import type { YardAsk } from '../core/cutting/lots.ts';
import type { LotSaving } from '../core/cutting/savings.ts';
import type { ShoppingLine } from '../core/shopping/line.ts';
import { type Json, plain, thousandth } from './rounded.ts';

/** A line of the shopping list; prices to a thousandth of their unit. */
export function shoppingJson(line: ShoppingLine): Json {
  const { stock, name, unit, size, quantity, counted, over, inHand, waste, each, price } = line;
  return {
    ...{ stock, name, unit, size: plain(size, ['length', 'width']), quantity, counted, over, inHand },
    waste: waste === null ? null : thousandth(waste),
    each: plain(each, ['value', 'currency']),
    price: plain(price, ['value', 'currency']),
    for: [...line.for],
  };
}

/** A cut to ask for at the yard. */
export function yardJson({ stock, cut, sheets }: YardAsk): Json {
  const { kind, at, pieces } = cut;
  return {
    ...{ stock, kind, at: thousandth(at) },
    pieces: plain(pieces, ['x', 'y', 'length', 'width']),
    sheets: [...sheets],
  };
}

/** The change of a part that saves a sheet. */
export function savingJson({ stock, part, side, from, to, sheets, fewer }: LotSaving): Json {
  return { stock, part, side, from: thousandth(from), to: thousandth(to), sheets, fewer };
}
