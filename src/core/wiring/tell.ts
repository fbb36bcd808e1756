import type { Finding } from '../finding.ts';

/** A finding of the wiring chapter with what most of them leave empty. */
export function tell(told: Pick<Finding, 'rule' | 'level' | 'where' | 'what' | 'mend'> & Partial<Finding>): Finding {
  return { chapter: 'wiring', figure: null, limit: null, unit: 'count', source: PRACTICE, accepted: null, ...told };
}

export const PRACTICE = 'common practice, no source';

/** Volts with two decimals. */
export function volts(value: number): string {
  return `${round(value, 2)} V`;
}

/** Amperes with two decimals. */
export function amps(value: number): string {
  return `${round(value, 2)} A`;
}

/** Ohms with three decimals. */
export function ohms(value: number): string {
  return `${round(value, 3)} ohm`;
}

function round(value: number, decimals: number): number {
  const by = 10 ** decimals;
  return Math.round(value * by) / by || 0;
}

/** Names with commas and `and`. */
export function listed(names: readonly string[]): string {
  const last = names[names.length - 1] ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}
