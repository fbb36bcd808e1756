import type { CoverStock } from '../stock/goods.ts';
import { BALLAST_RUN, gaugeOf, trackBed } from './formation-width.ts';
import { type LandQuantity, volumeQuantity } from './quantity.ts';

/**
 * Depth of loose ballast, mm, from the gauge, mm: fitted to the usual 40, 90 and 270 cm3 a metre of N, HO and O; common
 * practice, no source. Sleepers fill a tenth of it.
 */
const DEPTH_PER_ROOT_GAUGE = 0.77;
const SLEEPERS_FILL = 0.1;

/** Cross-section of the loose ballast of one track, mm2: a trapezium with shoulders of 1:1.25 (NEM 122) less the sleepers. */
export function ballastSection(scale: string): number | null {
  const [bed, gauge] = [trackBed(scale), gaugeOf(scale)];
  if (bed === null || gauge === null) return null;
  const depth = DEPTH_PER_ROOT_GAUGE * Math.sqrt(gauge);
  return (bed.ballast + BALLAST_RUN * depth) * depth * (1 - SLEEPERS_FILL);
}

/** Ballast for lines of a scale; none for a scale without a profile. */
export function ballastQuantity(
  stock: CoverStock,
  scale: string,
  line: { readonly id: string; readonly length: number },
): readonly LandQuantity[] {
  const section = ballastSection(scale);
  return section === null ? [] : [volumeQuantity(stock, section * line.length, line.id)];
}
