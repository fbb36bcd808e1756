import type { KnownThickness } from '../core/stock/thickness.ts';
import { lengthPair, type Pair } from './lengths.ts';

/** What is known of a sheet's thickness: its name, its maker's range, and what was measured. */
export function thicknessWords(known: KnownThickness): Pair {
  const words = (unit: 'mm' | 'in') => {
    const listed = `called ${lengthPair(known.nominal)[unit]}, listed ${lengthPair(known.low)[unit]} to ${lengthPair(known.high)[unit]}`;
    const measured = `measured ${lengthPair(known.mean)[unit]} in the mean, ${lengthPair(known.thickest)[unit]} at its thickest`;
    return known.measured ? `${listed}; ${measured}` : `${listed}; not measured yet`;
  };
  return { mm: words('mm'), in: words('in') };
}
