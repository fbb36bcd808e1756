import type { HardwareStock } from '../../stock/goods.ts';
import { screwDiameter, screwHoles } from '../../stock/screw-holes.ts';
import type { Goods } from '../goods.ts';
import { tidy } from '../machining.ts';
import { soldByInch } from './measure.ts';

/** What a screw goes through and into, from its head on; mm. */
export type Screwed = { readonly through: number; readonly into: number };

export type Screw = HardwareStock & { readonly diameter: number; readonly length: number };

/** Wood left before a tip, mm, and the least and most thread that is worth its hole, in diameters; common practice, no source. */
const LEFT = 1;
const BITE = { least: 2.5, most: 6 };

/** Thinner wood than this is held by the thinner screw, mm. */
const THIN = 15;

/** The longest a screw may be: it never comes through, and no longer than its thread is of use; mm. */
export function longestScrew({ through, into }: Screwed, diameter: number): number {
  return tidy(through + Math.min(into - LEFT, BITE.most * diameter));
}

/** The shortest whose thread holds, mm. */
export function shortestScrew({ through }: Screwed, diameter: number): number {
  return tidy(through + BITE.least * diameter);
}

/** The diameter a joint asks for, in the measure pages show, mm. */
export function usualDiameter({ through, into }: Screwed, show: 'mm' | 'in'): number {
  const thin = into < THIN || through + into < THIN;
  if (show === 'in') return screwDiameter(thin ? 6 : 8);
  return thin ? 3.5 : 4;
}

/** The screw in stock for a joint: of the nearest diameter, and the longest of these that stays inside; null when none does. */
export function screwFor(goods: Goods, screwed: Screwed): Screw | null {
  const usual = usualDiameter(screwed, goods.show);
  const off = (one: Screw) =>
    Math.abs(one.diameter - usual) + (soldByInch(one.length) === (goods.show === 'in') ? 0 : OTHER_MEASURE);
  const fits = goods.hardware
    .filter(isScrew)
    .filter(
      (one) =>
        one.length <= longestScrew(screwed, one.diameter) &&
        one.length >= shortestScrew(screwed, one.diameter) &&
        off(one) < 1,
    );
  return fits.reduce<Screw | null>((best, one) => {
    if (best === null || off(one) < off(best) - 1e-9) return one;
    return Math.abs(off(one) - off(best)) <= 1e-9 && one.length > best.length ? one : best;
  }, null);
}

/** Clearance hole in the first piece for the screw of a joint; for one of number 8 where stock has none or nobody counts. mm. */
export function clearanceHole(goods: Goods | null, screwed: Screwed): number {
  const screw = goods === null ? null : screwFor(goods, screwed);
  const diameter = screw?.diameter ?? screwDiameter(8);
  return screwHoles(diameter)?.clearance ?? tidy(diameter + 0.5);
}

/** A screw sold in the other measure counts as this much further off, mm. */
const OTHER_MEASURE = 0.3;

function isScrew(one: HardwareStock): one is Screw {
  return one.form === 'screw' && one.diameter !== null && one.length !== null;
}
