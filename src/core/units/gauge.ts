import { shopText } from './one-length.ts';

/** What a number mark counts: a turnout's frog, a wire, a screw, or it doesn't say. */
export type Gauge = { readonly of: 'frog' | 'wire' | 'screw' | 'unsaid'; readonly number: number };

const MARKED = /^(?:#|no\. ?)(\d{1,2})(?: +(.+))?$/i;
const NAMED = /^(\d{1,2})[ -]?(ga\.?|gauge|awg)(?: .*)?$/i;
const WORDS: readonly (readonly [Gauge['of'], RegExp])[] = [
  ['frog', /turnout|frog|switch|crossover|points/i],
  ['wire', /wire|awg|feeder|bus/i],
  ['screw', /screw|x ?\d/i],
];

/** A number mark: `#6 turnout` is a frog number, `#16 wire`, `14 ga.` and `12AWG` are wire; null for anything else. */
export function readGauge(text: string): Gauge | null {
  const plainText = shopText(text) ?? '';
  const named = NAMED.exec(plainText);
  if (named !== null) return { of: 'wire', number: Number(named[1]) };
  const marked = MARKED.exec(plainText);
  if (marked === null) return null;
  const rest = marked[2] ?? '';
  return { of: WORDS.find(([, pattern]) => pattern.test(rest))?.[0] ?? 'unsaid', number: Number(marked[1]) };
}

/** Diameter of a solid wire by its American gauge, mm: 0.127 x 92^((36 - n) / 39) (ASTM B258). */
export function wireDiameter(gauge: number): number {
  return 0.127 * 92 ** ((36 - gauge) / 39);
}
