import type { Head } from '../head.schema.ts';
import type { Prices } from '../stock/price.ts';
import { evaluate } from '../units/evaluate.ts';
import { type HeadReading, sizeIn } from './reading.ts';

/** What the cover says of buying: prices here, goods in hand, and the share of spare hardware. */
export type Buying = {
  readonly prices: Prices;
  /** pieces of hardware, or buying units of other goods, by stock */
  readonly inHand: Readonly<Record<string, number>>;
  /** share over the count, 0 when nobody asked for spares */
  readonly spares: number;
};

/** Prices, goods in hand and spares as numbers. */
export function buyingValues(head: Head, reading: HeadReading): Buying {
  return {
    prices: Object.fromEntries(Object.entries(head.prices ?? {}).flatMap((entry) => priceIn(entry, reading))),
    inHand: Object.fromEntries(
      Object.entries(head['goods-in-hand'] ?? {}).map(([id, count]) => [id, sizeIn(count, reading, 'none')]),
    ),
    spares: head.spares === undefined ? 0 : sizeIn(head.spares, reading, 'none'),
  };
}

function priceIn([id, quantity]: [string, NonNullable<Head['budget']>], { faults }: HeadReading) {
  const result = evaluate(quantity, {});
  if (!result.ok) faults.push(...result.faults);
  if (!result.ok) return [];
  const { value, currency = '' } = result.value;
  if (value >= 0) return [[id, { value, currency }] as const];
  const what = `${quantity.text} is less than nothing`;
  faults.push({ rule: 'size-not-positive', at: quantity.at, what, mend: 'write 0 or more' });
  return [];
}
