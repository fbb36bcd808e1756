import type { Finding } from '../finding.ts';
import { say } from '../units/say.ts';
import type { LogRecord, Money } from './record.ts';

export type Spending = {
  /** one sum a currency, by its code */
  readonly spent: readonly Money[];
  readonly chapters: Readonly<Record<string, readonly Money[]>>;
  readonly budget: Money | null;
  /** what is left of the budget in its own currency; negative when overspent */
  readonly left: Money | null;
  /** spent and still to buy, in the budget's currency; null when what is still to buy is not known */
  readonly forecast: Money | null;
};

/** Sums are kept in ten-thousandths, so that their order changes nothing. */
const PARTS = 10_000;

/** One sum for each currency, in the order of their codes. */
export function sums(money: readonly Money[]): Money[] {
  const totals = new Map<string, number>();
  for (const { value, currency } of money) {
    totals.set(currency, (totals.get(currency) ?? 0) + Math.round(value * PARTS));
  }
  return [...totals]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([currency, total]) => ({ value: total / PARTS, currency }));
}

function spentBy(records: readonly LogRecord[]): Money[] {
  return records.flatMap((record) => (record.spent === null ? [] : [record.spent]));
}

function inCurrency(money: readonly Money[], currency: string): number {
  return money.find((one) => one.currency === currency)?.value ?? 0;
}

/** Money of a log against the budget; `toBuy` is what the shopping list still asks for, if known. Currencies are never exchanged. */
export function spendingOf(records: readonly LogRecord[], budget: Money | null, toBuy: Money | null): Spending {
  const spent = sums(spentBy(records));
  const chapters = [...new Set(records.map((record) => record.chapter))].sort();
  const currency = budget?.currency ?? toBuy?.currency ?? '';
  const soFar = inCurrency(spent, currency);
  const known = toBuy !== null && toBuy.currency === currency;
  return {
    spent,
    chapters: Object.fromEntries(
      chapters.map((name) => [name, sums(spentBy(records.filter((one) => one.chapter === name)))]),
    ),
    budget,
    left: budget === null ? null : { value: rounded(budget.value - soFar), currency },
    forecast: known ? { value: rounded(soFar + toBuy.value), currency } : null,
  };
}

function rounded(value: number): number {
  return Math.round(value * PARTS) / PARTS + 0;
}

/** A budget that is passed, or that will be. */
export function spendingFindings(spending: Spending): Finding[] {
  const { budget, left, forecast } = spending;
  if (budget === null || left === null) return [];
  const end = forecast === null ? budget.value - left.value : forecast.value;
  if (end <= budget.value) return [];
  const over = (end - budget.value).toFixed(2);
  return [
    {
      rule: 'over-budget',
      level: 'care',
      where: 'budget',
      chapter: 'benchwork',
      what: say`${end.toFixed(2)} ${budget.currency} against a budget of ${budget.value.toFixed(2)} ${budget.currency}.`,
      figure: end,
      limit: budget.value,
      unit: 'money',
      mend: say`Raise the budget by ${over} ${budget.currency}, or put a chapter's purchases off.`,
      source: 'this notebook',
      accepted: null,
    },
  ];
}
