import type { Point } from '../geometry/shapes.ts';
import type { Metal } from './metal.ts';

/**
 * One end of a segment: its distance from the line's start, mm, the node it conducts to, and the end of metal it meets. At
 * a turnout these are one; a plain joint is one node with two sides.
 */
export type SegmentEnd = { readonly at: number; readonly node: string; readonly end: string };

/** A length of a line's rails between two ends of metal. */
export type RailSegment = {
  readonly id: string;
  readonly line: string;
  readonly from: SegmentEnd;
  readonly to: SegmentEnd;
};

/** A way through a turnout between two ends of metal, mm. */
export type RailWay = { readonly turnout: string; readonly from: string; readonly to: string; readonly length: number };

/** A turnout as its rails are fed: the line that lays it, where it is, and whether its frog is fed. */
export type RailTurnout = {
  readonly id: string;
  readonly line: string;
  readonly at: Point;
  readonly frog: 'live' | 'dead' | null;
};

/** A line as long as it is and where it runs; `place` gives points in notebook coordinates by distance, mm. */
export type RailLine = { readonly id: string; readonly length: number; readonly place: (at: number) => Point };

/** All rails as metal that conducts. */
export type RailPlan = {
  readonly lines: readonly RailLine[];
  readonly segments: readonly RailSegment[];
  readonly ways: readonly RailWay[];
  readonly metal: readonly Metal[];
  readonly turnouts: readonly RailTurnout[];
};
