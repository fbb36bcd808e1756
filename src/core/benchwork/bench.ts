import type { Point } from '../geometry/shapes.ts';

/** One rigid unit of benchwork, where it stands and how high things are; bench coordinates start at the frame's corner on the floor, mm. */
export type Bench = {
  readonly id: string;
  readonly construction: string;
  readonly place: { readonly x: number; readonly y: number; readonly turn: number };
  readonly phase: 'now' | 'later';
  /** outside of the frame */
  readonly length: number;
  readonly width: number;
  readonly deckTop: number;
  readonly sideTop: number;
  readonly sideUnderside: number;
  readonly strutUnderside: number;
};

/** A seam between two pieces of deck: the line it follows and what bears it; bench coordinates, mm. */
export type Seam = {
  readonly id: string;
  readonly bench: string;
  readonly from: Point;
  readonly to: Point;
  readonly on: string;
  readonly bearing: readonly [number, number];
};
