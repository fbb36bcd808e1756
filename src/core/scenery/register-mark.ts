import type { Point } from '../geometry/shapes.ts';

/** A mark that two pieces share, so that they are stacked as drawn; notebook coordinates, mm. */
export type RegisterMark = {
  readonly id: string;
  readonly at: Point;
  /** numbers of the layers it joins; 0 is the deck */
  readonly between: readonly [number, number];
  /** the parts it goes through, the deck left out */
  readonly parts: readonly string[];
};
