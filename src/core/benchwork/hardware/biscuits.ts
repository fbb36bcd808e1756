/** A flat oval of pressed wood in a slot of both mates; sizes as makers list them, mm. */
export type Biscuit = {
  readonly size: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
};

export const BISCUITS: readonly Biscuit[] = [
  { size: '0', length: 47, width: 15, thickness: 4 },
  { size: '10', length: 53, width: 19, thickness: 4 },
  { size: '20', length: 56, width: 23, thickness: 4 },
];

/** A slot is deeper than half its biscuit, and wood is left beyond it; common practice, no source. mm. */
const DEEPER = 1;
const LEFT = 4;
/** A slot across a mitre lies nearer to its inner edge, where there is more wood behind it. */
const ALONG_MITRE = 0.6;

/** Depth of the slot that takes half a biscuit, mm. */
export function biscuitSlot({ width }: Biscuit): number {
  return width / 2 + DEEPER;
}

/**
 * The widest biscuit for a mitre at 45 degrees whose cut face is this wide, mm; null when none leaves wood beyond its slot.
 * Square to the face, the wood is as deep as the way from the long point (plane geometry).
 */
export function mitreBiscuit(face: number): Biscuit | null {
  return BISCUITS.findLast((one) => biscuitSlot(one) + LEFT <= ALONG_MITRE * face) ?? null;
}
