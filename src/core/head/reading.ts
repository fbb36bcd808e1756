import type { Fault } from '../units/problem.ts';
import type { Quantity } from '../units/quantity.ts';

/** How a value of the cover becomes a number; what is wrong with it goes to `faults`. */
export type HeadReading = { readonly number: (quantity: Quantity) => number; readonly faults: Fault[] };

/** A size of the cover that must be more than `over` (or that much, when `least` is told); told at its place otherwise. */
export function sizeIn(quantity: Quantity, reading: HeadReading, least: 'none' | 'some'): number {
  const before = reading.faults.length;
  const value = reading.number(quantity);
  const sound = least === 'none' ? value >= 0 : value > 0;
  if (!sound && reading.faults.length === before) {
    const what = `${quantity.text} is ${value < 0 ? 'less than nothing' : 'no size'}`;
    const mend = least === 'none' ? 'write 0 or more' : 'write more than 0';
    reading.faults.push({ rule: 'size-not-positive', at: quantity.at, what, mend });
  }
  return value;
}

/** A whole number of things, 1 or more. */
export function countIn(quantity: Quantity, reading: HeadReading): number {
  const before = reading.faults.length;
  const value = reading.number(quantity);
  const sound = Number.isInteger(value) && value > 0;
  if (!sound && reading.faults.length === before) {
    const what = `${quantity.text} is no count`;
    reading.faults.push({ rule: 'no-count', at: quantity.at, what, mend: 'write a whole number, 1 or more' });
  }
  return value;
}
