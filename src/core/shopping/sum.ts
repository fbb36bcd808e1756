import type { Price, Prices } from '../stock/price.ts';

/** What the author says of buying. */
export type Buying = {
  readonly prices: Prices;
  /** pieces of hardware, metres of wire, or buying units of other goods, by stock */
  readonly inHand: Readonly<Record<string, number>>;
  /** share of small hardware bought over the count */
  readonly spares: number;
};

/** Sums are kept in ten-thousandths, so that their order changes nothing. */
const PARTS = 10_000;

/** Chapters in the order of the work. */
const CHAPTERS: readonly string[] = ['benchwork', 'track', 'wiring', 'scenery'];

/** The chapters some wants are for, each once, in the order of the work. */
export function chaptersOf(wanted: readonly { readonly for: string }[]): readonly string[] {
  const rank = (chapter: string) => (CHAPTERS.includes(chapter) ? CHAPTERS.indexOf(chapter) : CHAPTERS.length);
  return [...new Set(wanted.map((one) => one.for))].sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));
}

/** So many at a price; null without a price. */
export function times(each: Price | null, count: number): Price | null {
  return each === null ? null : { ...each, value: Math.round(each.value * count * PARTS) / PARTS };
}

/** One sum a currency, in the order of their codes. Currencies are never exchanged. */
export function sumsOf(prices: readonly Price[]): readonly Price[] {
  const totals = new Map<string, number>();
  for (const { value, currency } of prices) {
    totals.set(currency, (totals.get(currency) ?? 0) + Math.round(value * PARTS));
  }
  return [...totals]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([currency, total]) => ({ value: total / PARTS, currency }));
}

/** One sum less another of its currency. */
export function less(from: Price, sums: readonly Price[]): Price {
  const spent = sums.find(({ currency }) => currency === from.currency)?.value ?? 0;
  return { ...from, value: Math.round((from.value - spent) * PARTS) / PARTS + 0 };
}
