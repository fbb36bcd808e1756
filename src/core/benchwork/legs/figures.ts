import type { Site } from '../fitting.ts';
import type { Goods } from '../goods.ts';
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

/** Bolts of legs: their thread, and the room a nut and a spanner need beyond the wood; common practice, no source. mm. */
export const LEG_BOLT = 8;
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

/** Heights of a leg's bolts above the floor, mm. */
export function boltHeights({ grid }: Site): readonly number[] {
  return BOLT_SHARES.map((share) => tidy(grid.sideUnderside + share * grid.side));
}
