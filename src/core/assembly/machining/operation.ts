import type { EdgeSide } from '../../stock/part.ts';

/** What a cut is set against: a straight square edge, a face, or the centre of a hole. */
export type Surface = `edge.${EdgeSide}` | 'face' | `centre.${string}`;

export type OperationKind =
  | 'rip'
  | 'crosscut'
  | 'groove'
  | 'dado'
  | 'rabbet'
  | 'slot'
  | 'counterbore'
  | 'hole'
  | 'opening'
  | 'mitre'
  | 'taper'
  | 'rounded-corner'
  | 'roundover'
  | 'trim';

/** The kinds in the order a workshop takes them when nothing else decides; common practice, no source. */
export const USUAL_ORDER: readonly OperationKind[] = [
  'rip',
  'crosscut',
  'groove',
  'dado',
  'rabbet',
  'slot',
  'counterbore',
  'hole',
  'opening',
  'mitre',
  'taper',
  'rounded-corner',
  'roundover',
  'trim',
];

/** How a machine stands for an operation; lengths in mm from the part's left end or bottom edge, null where unused. */
export type SetUp = {
  /** blade to fence */
  readonly fence: number | null;
  /** end of the part to the stop block */
  readonly stop: number | null;
  /** where the guide for the router's base stands, one for each edge of the cut */
  readonly straightedge: readonly number[];
  readonly bit: number | null;
  readonly depth: number | null;
  readonly passes: number;
  /** instances clamped side by side and cut at once */
  readonly together: readonly string[];
  /** true for the first cut of its width and depth: tried in scrap and logged before the batch */
  readonly scrapFirst: boolean;
};

/** One cut of a part: what it is set against, and what is no longer there after it. */
export type Operation = {
  readonly id: string;
  readonly kind: OperationKind;
  readonly tool: string;
  readonly needs: readonly Surface[];
  readonly destroys: readonly Surface[];
  /** ids of the features it makes */
  readonly features: readonly string[];
  readonly setUp: SetUp;
};

/** The operations of one part in their order. */
export type Machining = { readonly part: string; readonly operations: readonly Operation[] };

/** Router and saw as they are in the workshop, mm. */
export type Machines = {
  /** diameters of the straight bits */
  readonly bits: readonly number[];
  /** edge of the router's base to the middle of its bit */
  readonly base: number;
  /** deepest cut in one pass; null for half the bit */
  readonly perPass: number | null;
};

/** A 1/4 in bit in a base of 150 mm, half the bit a pass: common practice, no source; measure your own base. */
export const USUAL_MACHINES: Machines = { bits: [6.35], base: 75, perPass: null };
