import type { Goods } from '../goods.ts';
import { inMeasure } from '../hardware/measure.ts';
import { tidy } from '../machining.ts';

/** Outside width of a box in a clear opening, with a slide or a gap each side; mm. */
export function boxWidth(clear: number, clearance: number): number {
  return tidy(clear - 2 * clearance);
}

/** What to take off each side of a box whose clearance, both sides together, is less than wanted; mm, 0 when it is enough. */
export function takeOff(has: number, wanted: number): number {
  return Math.max(0, tidy((wanted - has) / 2));
}

/** The most a box this deep may be out of square and still go in with this slack, both sides together; radians. */
export function mostSkew(slack: number, depth: number): number {
  return Math.atan(slack / depth);
}

/** How much the diagonals of a box differ when it is skewed by an angle; mm or any one unit. */
export function diagonalDifference(
  { width, depth }: { readonly width: number; readonly depth: number },
  skew: number,
): number {
  const part = 2 * width * depth * Math.sin(skew);
  const square = width ** 2 + depth ** 2;
  return Math.sqrt(square + part) - Math.sqrt(square - part);
}

/** Lengths slides are sold in: by the millimetre 250 to 700 by 50, by the inch 10 to 24 by 2; common practice, no source. mm. */
export const SLIDE_LENGTHS: readonly number[] = [250, 300, 350, 400, 450, 500, 550, 600, 650, 700];
export const INCH_SLIDE_LENGTHS: readonly number[] = [10, 12, 14, 16, 18, 20, 22, 24].map((inch) => tidy(inch * 25.4));

/** Lengths of the slides in the stock files, those of the measure that pages show; what shops have where stock lists none. mm. */
export function slideLengths(goods: Goods | null): readonly number[] {
  const slides = goods === null ? [] : goods.hardware.filter(({ form, length }) => form === 'slide' && length !== null);
  if (goods === null || slides.length === 0) return goods?.show === 'in' ? INCH_SLIDE_LENGTHS : SLIDE_LENGTHS;
  return inMeasure(slides, goods)
    .flatMap(({ length }) => length ?? [])
    .toSorted((a, b) => a - b);
}

/** The longest of these slides that fits a bay this deep, mm; null when none does. */
export function longestSlide(deep: number, lengths: readonly number[] = SLIDE_LENGTHS): number | null {
  return lengths.findLast((length) => length <= deep) ?? null;
}

/** Height from one drawer to the next when n share a clear height, mm or any one unit. */
export function drawerPitch(clear: number, count: number): number {
  return tidy(clear / count);
}
