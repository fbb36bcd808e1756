/** Clamps in hand: how far they open, mm, and how many there are. */
export type ClampsInHand = readonly { readonly opening: number; readonly count: number }[];

/** What the assembly takes from the workshop; every figure is a setting. Minutes and mm. */
export type Workshop = {
  /** how long spread glue can wait before its joint is closed */
  readonly openTime: number;
  /** to spread one joint and bring it together */
  readonly perJoint: number;
  /** in clamps before the next stage */
  readonly clamped: number;
  /** between clamps along a glue line, and from its ends to the first */
  readonly spacing: number;
  readonly inset: number;
  /** one coat on one face */
  readonly film: number;
  readonly coats: number;
  /** null when nobody said */
  readonly clamps: ClampsInHand | null;
};

export const GLUE_SOURCE =
  "a PVA maker's guide: open 5 to 15 min (5 to 10 in a warm shop), in clamps 30 to 60 min, no stress for 24 h; clamps 8 to 12 in apart, 1.5 to 2 in from the ends";

/**
 * The careful end of the usual figures: PVA open 5 min in a warm shop and 60 min in clamps, clamps 12 in apart and 2 in
 * from the ends (a PVA maker's guide); 1 min a joint, and 0.05 mm a coat, two coats: assumed, from memory.
 */
export const USUAL_WORKSHOP: Workshop = {
  openTime: 5,
  perJoint: 1,
  clamped: 60,
  spacing: 304.8,
  inset: 50.8,
  film: 0.05,
  coats: 2,
  clamps: null,
};
