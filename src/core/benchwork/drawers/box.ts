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

/** Lengths slides are sold in, mm: 250 to 700 by 50; common practice, no source. */
export const SLIDE_LENGTHS: readonly number[] = [250, 300, 350, 400, 450, 500, 550, 600, 650, 700];

/** The longest slide that fits a bay this deep, mm; null when none does. */
export function longestSlide(deep: number): number | null {
  return SLIDE_LENGTHS.findLast((length) => length <= deep) ?? null;
}

/** Height from one drawer to the next when n share a clear height, mm or any one unit. */
export function drawerPitch(clear: number, count: number): number {
  return tidy(clear / count);
}
