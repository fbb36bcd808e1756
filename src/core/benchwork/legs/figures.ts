import type { Site } from '../fitting.ts';
import type { Goods } from '../goods.ts';
import { sameThread } from '../hardware/measure.ts';
import type { LegsInput, Material } from '../input.ts';
import { tidy } from '../machining.ts';

/** What every leg of a bench shares; mm. */
export type LegFigures = {
  readonly input: LegsInput;
  readonly wood: Material;
  /** of one sheet, as it is */
  readonly t: number;
  /** across a post, a half of an angle, an upright */
  readonly width: number;
  /** what inserts are looked up in; null: nothing is counted */
  readonly goods: Goods | null;
};

/** Threads that hold legs, by the measure pages show; common practice, no source. mm. */
const LEG_BOLTS = { mm: 8, in: (5 * 25.4) / 16 } as const;
/** The room a nut and a spanner need beyond the wood; common practice, no source. mm. */
export const NUT_ROOM = 40;
/** A pad reaches this far inward beyond a post's foot, so that a bracket stands on face grain. */
export const LEDGE = 40;
/** Bolts stand at these shares of the side's height. */
export const BOLT_SHARES: readonly number[] = [0.25, 0.75];

export function legFigures({ materials, goods }: Site, input: LegsInput): LegFigures | null {
  const wood = materials[input.material];
  if (wood === undefined) return null;
  const t = wood.thickness.mean;
  return { input, wood, t, width: input.width ?? tidy(input.layers * t), goods };
}

/** Thread of the bolts that hold legs: of the measure pages show, or of the other where stock has bolts only in that; mm. */
export function legThread(goods: Goods | null): number {
  const show = goods?.show ?? 'mm';
  const [own, other] = show === 'mm' ? [LEG_BOLTS.mm, LEG_BOLTS.in] : [LEG_BOLTS.in, LEG_BOLTS.mm];
  const has = (thread: number) =>
    goods?.hardware.some(({ form, diameter }) => form === 'bolt' && sameThread(diameter, thread)) === true;
  return has(own) || !has(other) ? own : other;
}

/** Heights of a leg's bolts above the floor, mm. */
export function boltHeights({ grid }: Site): readonly number[] {
  return BOLT_SHARES.map((share) => tidy(grid.sideUnderside + share * grid.side));
}
