/**
 * How much a joist may lose to a notch or a hole cut into it later: IRC R502.8.1. Railway struts are small and stiffer
 * than they need be, so these are a proxy and never more than a care. mm.
 */
export type CutLimits = {
  readonly notchDepth: number;
  readonly notchLength: number;
  readonly endNotchDepth: number;
  readonly hole: number;
};

export const CUT_LIMITS_SOURCE = 'IRC R502.8.1, floor joists, as a proxy';

/** The limits of a piece `depth` high on edge: notch d/6 deep and d/3 long, at its ends d/4 deep, hole d/3 wide. */
export function cutLimits(depth: number): CutLimits {
  return { notchDepth: depth / 6, notchLength: depth / 3, endNotchDepth: depth / 4, hole: depth / 3 };
}

/** Where along a piece of `length` no notch may be: its middle third; mm from one end. */
export function middleThird(length: number): readonly [number, number] {
  return [length / 3, (2 * length) / 3];
}

/** Wood that joists keep between a hole and their edges: IRC R502.8.1, 2 in; mm. */
export const HOLE_FROM_EDGE = 51;

/** Wood left between a hole and a joint, a notch or another hole; common practice, no source. mm */
export const HOLE_FROM_CUT = 15;
