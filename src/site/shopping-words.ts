import type { ShoppingLine } from '../core/shopping/line.ts';
import { moneyWords } from './money.ts';
import type { Book } from './notebooks.ts';
import type { Row } from './work-words.ts';

/** How many, and of what: `2 sheets`, `1 pack of 100`; a number nobody can know yet is not made up. */
export function quantityWords({ quantity, unit }: Pick<ShoppingLine, 'quantity' | 'unit'>): string {
  if (quantity === null) return 'to be judged';
  return `${quantity} ${quantity === 1 ? unit : unit.replace(/^[a-z]+/, (word) => (word === 'box' ? 'boxes' : `${word}s`))}`;
}

/** What else there is to know of a line: counted, left over, in hand, waste. */
export function overWords({ counted, inHand, over, waste }: ShoppingLine): readonly string[] {
  return [
    ...(counted === null ? [] : [`${counted} used`]),
    ...(over === null || over === 0 ? [] : [`${over} spare`]),
    ...(inHand === 0 ? [] : [`${inHand} in hand taken off`]),
    ...(waste === null ? [] : [`${Math.round(waste * 100)} % waste`]),
  ];
}

/** The budget beside what the list costs and what the log says is spent; none without a budget. */
export function budgetRows({ notebook }: Pick<Book, 'notebook'>): readonly Row[] {
  const { budget, left } = notebook.shopping;
  if (budget === null || left === null) return [];
  const { left: unspent, spent } = notebook.state.money;
  const apart = moneyWords({ ...left, value: Math.abs(left.value) });
  return [
    ['Budget', moneyWords(budget)],
    ['The prices of this list against it', `${apart} ${left.value >= 0 ? 'less' : 'more'} than the budget`],
    ...(spent.length === 0 || unspent === null
      ? []
      : [['Spent so far, by the log', spentWords(spent.map(moneyWords).join(' + '), moneyWords(unspent))] as const]),
  ];
}

function spentWords(spent: string, unspent: string): string {
  return `${spent}, which leaves ${unspent}; what was bought for it still counts in the list`;
}
