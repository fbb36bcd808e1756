import type { Box, Point } from '../../geometry/shapes.ts';
import { HOLE_FROM_CUT } from '../../stock/cut-limits.ts';

/** A range along one axis, mm. */
export type Range = readonly [number, number];

/** Wood that is taken along a wall and in height, and how much is left between it and a hole; mm. */
export type Taken = { readonly span: Range; readonly z: Range; readonly keep: number };

/** A board on edge that a wire must get through, square to the axes; mm. */
export type Wall = {
  /** the instance of a part */
  readonly part: string;
  readonly bench: string;
  readonly role: string;
  /** the axis it runs along */
  readonly along: 'x' | 'y';
  /** its ends along that axis, and its two faces across it */
  readonly span: Range;
  readonly faces: Range;
  readonly z: Range;
  /** by joints, other cuts and screws */
  readonly taken: readonly Taken[];
};

/** The inside of a bench's frame, as seen from above; mm. */
export type Footprint = { readonly bench: string; readonly low: Point; readonly high: Point };

/** Space something else needs. */
export type Obstruction = { readonly id: string; readonly box: Box };

/** Where a bus may run: everything square to the axes, mm. `radius` is half of the bundle of wires, `hole` of its holes. */
export type Site = {
  readonly footprints: readonly Footprint[];
  readonly walls: readonly Wall[];
  readonly obstructions: readonly Obstruction[];
  readonly radius: number;
  readonly hole: number;
  /** how far a person reaches in from an edge */
  readonly reach: number;
};

/** What routing weighs, in mm of wire. All common practice, no source, and settings. */
export const COSTS = {
  /** a hole to drill, deburr and thread */
  hole: 200,
  /** a bend */
  bend: 20,
  /** each mm beyond reach counts this much more */
  beyondReach: 1,
} as const;

/** Wires keep this far off what they pass; common practice, no source. mm */
export const OFF = 12;

/** Wood left between a hole and a joint or another cut; common practice, no source. mm */
export const KEEP = HOLE_FROM_CUT;

/** Wood left between a hole and a screw; common practice, no source. mm */
export const OFF_SCREW = 3;

/** Benches farther apart than this are not bolted together, mm. */
export const BOLTED = 40;

/** Whether two ranges share more than a touch. */
export function meets(a: Range, b: Range): boolean {
  return Math.min(a[1], b[1]) - Math.max(a[0], b[0]) > 1e-6;
}

/** A range made wider on both sides, mm. */
export function widened([low, high]: Range, by: number): Range {
  return [low - by, high + by];
}

/** A wall's outline from above: x and y. */
export function outlineOf({ along, span, faces }: Wall): { readonly x: Range; readonly y: Range } {
  return along === 'x' ? { x: span, y: faces } : { x: faces, y: span };
}
