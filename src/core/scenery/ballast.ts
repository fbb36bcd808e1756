import type { CoverStock } from '../stock/goods.ts';
import { BALLAST_RUN, gaugeOf, trackBed } from './formation-width.ts';
import { type LandQuantity, volumeQuantity } from './quantity.ts';

/**
 * Depth of ballast over the roadbed in gauges, and the share of the space between the sleepers' ends that the sleepers
 * themselves fill: assumed, common practice, no source.
 */
const DEPTH_GAUGES = 0.18;
const SLEEPERS_FILL = 0.1;

/** Cross-section of the loose ballast of one track, mm2: a trapezium with shoulders of 1:1.25 (NEM 122) less the sleepers. */
export function ballastSection(scale: string): number | null {
  const [bed, gauge] = [trackBed(scale), gaugeOf(scale)];
  if (bed === null || gauge === null) return null;
  const depth = DEPTH_GAUGES * gauge;
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
