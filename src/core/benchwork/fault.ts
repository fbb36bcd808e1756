import type { Fault } from '../units/problem.ts';
import { bothUnits } from '../units/reading.ts';

export function fault(rule: string, at: string, words: { readonly what: string; readonly mend: string }): Fault {
  return { rule, at, ...words };
}

/** A length in a fault, in both units: a fault is told before it is known which one its reader has. */
export function mm(value: number): string {
  return bothUnits(value);
}
