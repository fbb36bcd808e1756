import { plain } from './characters.ts';
import type { Misread } from './misread.ts';
import type { Fault } from './problem.ts';
import { twoReadings } from './reading.ts';

/** Longest length a lone foot mark is believed for, mm: 24 ft, the longest board sold (common practice, no source). */
export const LONGEST_BY_MARK = 24 * 304.8;

/**
 * The fault of a lone foot mark that makes a thing longer than it can be: `26'` for a part no longer than a sheet was
 * meant as `26"`. Null when the mark is believable, or the text carries no lone foot mark. Longest in mm.
 */
export function footMarkFault(text: string, longest: number): Fault | null {
  const found = /^-?(\d+(?:\.\d+)?) *'$/.exec(plain(text).trim());
  const count = Number(found?.[1]);
  if (found === null || count * 304.8 <= longest) return null;
  const stop: Misread = twoReadings(0, text, [
    { text: `${count} ft`, mm: count * 304.8 },
    { text: `${count} in`, mm: count * 25.4 },
  ]);
  return stop.fault;
}
