import { scaleFigures } from './scale.ts';

/** H0's, from which OO takes its share. */
const H0 = { top: 59, wire: 65, width: 48 };

/** What must stay free, heights above rail top, NEM 102 (2017): the gauge's top HL4 and the lowest wire HL5, and its full width BL1; mm. */
const NEM_102: Readonly<Record<string, { readonly top: number; readonly wire: number; readonly width: number }>> = {
  Z: { top: 24, wire: 27, width: 20 },
  N: { top: 33, wire: 37, width: 27 },
  TT: { top: 43, wire: 48, width: 36 },
  HO: H0,
  H0,
  S: { top: 78, wire: 87, width: 66 },
  O: { top: 109, wire: 120, width: 94 },
  '0': { top: 109, wire: 120, width: 94 },
  1: { top: 150, wire: 165, width: 130 },
};

/** A clear height and who asks for it. */
export type ClearHeight = { readonly height: number; readonly source: string };

/** Free height above the lower rail's top, mm; OO has no NEM and takes H0's by the ratio of the scales. */
export function clearHeight(scale: string, wire: 'wire' | 'no wire'): ClearHeight {
  const clause = wire === 'wire' ? 'HL5' : 'HL4';
  const { top, wire: above } = freeSpace(scale);
  const source = NEM_102[scale] === undefined ? `NEM 102, ${clause} for H0, in proportion` : `NEM 102, ${clause}`;
  return { height: wire === 'wire' ? above : top, source };
}

/** Half the full width BL1 that straight track keeps free, from its middle; mm; OO as for heights. NEM 102 (2017). */
export function clearHalfWidth(scale: string): number {
  return freeSpace(scale).width / 2;
}

function freeSpace(scale: string) {
  const own = NEM_102[scale];
  if (own !== undefined) return own;
  const share = 87 / scaleFigures(scale).ratio;
  return { top: H0.top * share, wire: H0.wire * share, width: H0.width * share };
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
