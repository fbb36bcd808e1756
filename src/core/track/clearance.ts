import { scaleFigures } from './scale.ts';

/** Heights above rail top that must stay free, NEM 102 (2017): the gauge's top HL4 and the lowest wire HL5; mm. */
const NEM_102: Readonly<Record<string, { readonly top: number; readonly wire: number }>> = {
  Z: { top: 24, wire: 27 },
  N: { top: 33, wire: 37 },
  TT: { top: 43, wire: 48 },
  HO: { top: 59, wire: 65 },
  H0: { top: 59, wire: 65 },
  S: { top: 78, wire: 87 },
  O: { top: 109, wire: 120 },
  '0': { top: 109, wire: 120 },
  1: { top: 150, wire: 165 },
};

/** A clear height and who asks for it. */
export type ClearHeight = { readonly height: number; readonly source: string };

/** Free height above the lower rail's top, mm; OO has no NEM and takes H0's by the ratio of the scales. */
export function clearHeight(scale: string, wire: 'wire' | 'no wire'): ClearHeight {
  const own = NEM_102[scale];
  const clause = wire === 'wire' ? 'HL5' : 'HL4';
  if (own !== undefined) return { height: wire === 'wire' ? own.wire : own.top, source: `NEM 102, ${clause}` };
  const h0 = NEM_102.H0 ?? { top: 59, wire: 65 };
  const share = 87 / scaleFigures(scale).ratio;
  return { height: (wire === 'wire' ? h0.wire : h0.top) * share, source: `NEM 102, ${clause} for H0, in proportion` };
}

/** What lies between two levels, from the lower rail's top to the upper one's; mm. */
export type Levels = {
  readonly clear: number;
  readonly deck: number;
  readonly roadbed: number;
  readonly track: number;
};

/** Least distance between the rail tops of two levels; mm. */
export function railSeparation({ clear, deck, roadbed, track }: Levels): number {
  return clear + deck + roadbed + track;
}

/** Height from the roadbed's top to the rail's top when nobody measured it, by gauge; 3.2 for N and 5 for H0, common practice. */
export function assumedTrackHeight(gauge: number): number {
  const perGauge = 3.2 + ((gauge - 9) * (5 - 3.2)) / (16.5 - 9);
  return Math.round(perGauge * 10) / 10;
}

/** Deck under an upper line that nobody described, mm; common practice, no source. */
export const ASSUMED_UPPER_DECK = 6;
