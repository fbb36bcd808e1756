import type { Fault } from '../units/problem.ts';

export function fault(rule: string, at: string, words: { readonly what: string; readonly mend: string }): Fault {
  return { rule, at, ...words };
}

/** A length in a fault, at most three decimals. */
export function mm(value: number): string {
  return `${Math.round(value * 1000) / 1000 || 0} mm`;
}

/** An angle in a fault, in degrees, at most three decimals. */
export function deg(value: number): string {
  return `${Math.round((value * 180000) / Math.PI) / 1000 || 0}°`;
}
