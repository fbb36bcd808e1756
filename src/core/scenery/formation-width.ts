import type { Path } from './land.ts';

/** Width of ballast over the sleepers and of the formation under it, mm: NEM 122 (2007), single track. */
export type TrackBed = { readonly ballast: number; readonly formation: number };

const NEM_122: Readonly<Record<string, TrackBed>> = {
  N: { ballast: 16, formation: 38 },
  TT: { ballast: 22, formation: 50 },
  HO: { ballast: 30, formation: 70 },
  O: { ballast: 58, formation: 134 },
};

/** Gauges of scales the standard's table leaves out, mm: NEM 010; OO runs on HO's. */
const GAUGES: Readonly<Record<string, number>> = { Z: 6.5, N: 9, TT: 12, HO: 16.5, OO: 16.5, S: 22.5, O: 32 };

/** The formation is about 4.2 gauges wide in every row of the table, the ballast 1.8; used for the other scales. */
const FORMATION_GAUGES = 4.2;
const BALLAST_GAUGES = 1.8;

/** Slopes: of earth 1:1.5, of ballast 1:1.25 (NEM 122); rise for each mm out. */
export const EARTH_SLOPE = 1 / 1.5;
export const BALLAST_RUN = 1.25;

/** The scale's name as the tables have it: H0 and 0 are HO and O. */
function named(scale: string): string {
  return scale.trim().toUpperCase().replaceAll('0', 'O');
}

/** The bed of single track in a scale; null for a scale nobody has a table or gauge for. */
export function trackBed(scale: string): TrackBed | null {
  const name = named(scale);
  const gauge = GAUGES[name];
  const listed = NEM_122[name];
  if (listed !== undefined) return listed;
  return gauge === undefined ? null : { ballast: BALLAST_GAUGES * gauge, formation: FORMATION_GAUGES * gauge };
}

/** Half the level width along lines: the formation, or the roadbed where that is wider; mm. */
export function halfFormation(scale: string, roadbed: number | null): Path['half'] {
  return Math.max(trackBed(scale)?.formation ?? 0, roadbed ?? 0) / 2;
}

/** Gauge of a scale, mm; null when unknown. */
export function gaugeOf(scale: string): number | null {
  return GAUGES[named(scale)] ?? null;
}
