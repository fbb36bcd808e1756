import { matchAt, numeralAt, startsNumeral } from './numeral.ts';
import type { Dimension } from './quantity.ts';
import { product, quotient, type Ratio } from './ratio.ts';
import { type Unit, unitAt } from './unit.ts';

/** What people write as a larger and a smaller unit side by side. Feet and inches have their own reader. */
const COMPOUND: readonly Dimension[] = ['duration', 'months', 'mass', 'angle'];

/** Whether a smaller unit may follow this one: minutes after hours, ounces after pounds. */
export function smallerUnits(unit: Unit): boolean {
  return COMPOUND.includes(unit.dimension) && unit.word !== '%';
}

/** The next, smaller part of a compound value, or null when the value ends before. */
export function compoundAt(
  text: string,
  at: number,
  larger: Unit,
): { readonly ratio: Ratio; readonly unit: Unit; readonly to: number } | null {
  const start = at + (matchAt(/ */y, text, at)?.[0].length ?? 0);
  if (!startsNumeral(text, start)) return null;
  const numeral = numeralAt(text, start);
  if (numeral === null) return null;
  const from = numeral.to + (matchAt(/ */y, text, numeral.to)?.[0].length ?? 0);
  const unit = unitAt(text, from, larger.dimension);
  if (unit === null || unit.dimension !== larger.dimension || quotient(unit.size) >= quotient(larger.size)) return null;
  return { ratio: product(numeral.ratio, unit.size), unit, to: from + unit.word.length };
}
