import type { ShoppingLine } from '../core/shopping/line.ts';

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
