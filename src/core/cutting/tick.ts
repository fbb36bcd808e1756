/**
 * Sizes inside the search are whole numbers of ticks, so that sums are exact. A tick is a millionth of a millimetre:
 * 1/64 in is a whole number of them. Parts round up and sheets down, so that a rounding never makes a sheet overfull.
 */
export const TICK = 1e-6;

/** Binary noise below this share of a tick is not a size. */
const NOISE = 0.01;

/** Longest size the search takes, mm; sheets are used up to it. */
export const LONGEST = 1e8;

export function ticksUp(mm: number): number {
  return Math.ceil(mm / TICK - NOISE);
}

export function ticksDown(mm: number): number {
  return Math.floor(mm / TICK + NOISE);
}

/** Ticks to mm, without binary noise. */
export function fromTicks(ticks: number): number {
  return Math.round(ticks) / 1e6 + 0;
}

/** mm rounded to a tick; never -0. */
export function exact(mm: number): number {
  return Math.round(mm * 1e6) / 1e6 + 0;
}

export function isSize(mm: number): boolean {
  return Number.isFinite(mm) && mm > 0;
}

/** Wood thinner than this is no piece, mm. */
export const SLIVER = 1e-5;

/** Smallest side of a part, mm. */
export const SMALLEST = 1e-3;
