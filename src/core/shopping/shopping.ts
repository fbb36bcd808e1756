import type { Finding } from '../finding.ts';
import type { Stock } from '../stock/goods.ts';
import type { Price, Prices } from '../stock/price.ts';
import { say } from '../units/say.ts';
import { goodsLines } from './goods.ts';
import type { GoodsWanted, SheetWanted, Shopping } from './line.ts';
import { sheetLines } from './sheets.ts';
import { type Buying, less, sumsOf } from './sum.ts';

export type ShoppingAsk = {
  readonly sheets: readonly SheetWanted[];
  readonly goods: readonly GoodsWanted[];
  readonly stock: readonly Stock[];
  readonly buying: Buying;
  readonly budget: Price | null;
};

/**
 * What all chapters ask for as one list: sheets and boards first, then the rest by name. Prices are those of the
 * notebook, else of the stock files; a line without one is counted and never guessed.
 */
export function shoppingList({ sheets, goods, stock, buying, budget }: ShoppingAsk): Shopping {
  const lines = [...sheetLines(sheets, stock, buying.prices), ...goodsLines(goods, stock, buying)];
  const total = sumsOf(lines.flatMap(({ price }) => (price === null ? [] : [price])));
  const unpriced = lines.filter(({ price }) => price === null).length;
  return { lines, total, unpriced, budget, left: budget === null ? null : less(budget, total) };
}

/** A list that costs more than the budget, and prices that name none of several sizes. */
export function shoppingFindings(shopping: Shopping, stock: readonly Stock[], prices: Prices): readonly Finding[] {
  return [...overBudget(shopping), ...sizeless(stock, prices)];
}

function overBudget({ budget, left, unpriced }: Shopping): readonly Finding[] {
  if (budget === null || left === null || left.value >= 0) return [];
  const sum = budget.value - left.value;
  const more = unpriced === 0 ? '' : `, and ${unpriced} without a price come on top`;
  return [
    {
      ...{ rule: 'shopping-over-budget', level: 'care', where: 'budget', chapter: 'benchwork' },
      what: say`the shopping list comes to ${sum.toFixed(2)} ${budget.currency} of a budget of ${budget.value.toFixed(2)} ${budget.currency}${more}`,
      ...{ figure: sum, limit: budget.value, unit: 'money' },
      mend: say`raise the budget by ${(-left.value).toFixed(2)} ${budget.currency}, or write down what is in hand already`,
      ...{ source: 'prices of this notebook and its stock files', accepted: null },
    },
  ];
}

function sizeless(stock: readonly Stock[], prices: Prices): readonly Finding[] {
  return Object.keys(prices).flatMap((id): readonly Finding[] => {
    const goods = stock.find((one) => one.id === id);
    if (goods?.kind !== 'sheet' || goods.sizes.length === 1) return [];
    return [
      {
        ...{ rule: 'price-of-no-size', level: 'care', where: id, chapter: 'benchwork' },
        what: say`${id} is sold in ${String(goods.sizes.length)} sizes, and its price names none of them`,
        ...{ figure: goods.sizes.length, limit: 1, unit: 'count' },
        mend: say`write the price beside each size in a stock file`,
        ...{ source: 'prices in notebook.md', accepted: null },
      },
    ];
  });
}
