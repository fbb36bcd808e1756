/** A cut through the rails of a segment. */
export type Gap = {
  readonly id: string;
  readonly line: string;
  readonly at: number;
  readonly segment: string;
  readonly why: 'district' | 'reversing' | 'bridge' | 'approach' | 'frog' | 'written';
  /** what it parts: a district, a reversing section, a bridge, a turnout; the line of a cut that only its author wants */
  readonly of: string;
  /** both, or the one that comes from a live frog */
  readonly rails: 'both' | 'frog';
};

/** What is written at a cut: `G1` of `gap-1`. */
export function gapTag(id: string): string {
  return id.replace('gap-', 'G');
}
