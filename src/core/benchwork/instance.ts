import type { Pose } from '../geometry/shapes.ts';
import type { Blank, Feature, MatingMark } from '../stock/part.ts';

/** One piece of a bench before equal pieces are gathered into parts; marks name mates by id until labels are known. */
export type Instance = {
  readonly id: string;
  /** side, end, strut, flange-strip, deck, drawer-side, leg-layer ... */
  readonly role: string;
  /** role of the material it is cut from */
  readonly material: string;
  /** the instance whose opening it falls out of */
  readonly from?: string;
  /** letter and number a builder writes on it, bench aside */
  readonly label: string;
  readonly blank: Blank;
  readonly features: readonly Feature[];
  readonly pose: Pose;
  readonly marks: readonly MatingMark[];
};
