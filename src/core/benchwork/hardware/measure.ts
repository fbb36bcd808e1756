import type { Goods } from '../goods.ts';

/** A thread is told from its neighbours by less than this, mm. */
const SAME = 0.02;

/** Whether two diameters are one thread. */
export function sameThread(a: number | null, b: number): boolean {
  return a !== null && Math.abs(a - b) < SAME;
}

/** Whether a length is sold by the inch: a whole number of sixteenths, and no multiple of 5 mm. */
export function soldByInch(mm: number): boolean {
  const whole = (value: number) => Math.abs(value - Math.round(value)) < 1e-6;
  return whole((mm / 25.4) * 16) && !whole(mm / 5);
}

/** What is sold in the measure that pages show; all of it where stock has nothing in that measure. */
export function inMeasure<T extends { readonly length: number | null }>(
  items: readonly T[],
  { show }: Goods,
): readonly T[] {
  const own = items.filter(({ length }) => length !== null && soldByInch(length) === (show === 'in'));
  return own.length > 0 ? own : items;
}
