import type { Spot } from './mark.ts';

/**
 * What a printed figure fixes. x0, x1, y0, y1, x, y are positions of a feature's edges or centre from the part's left
 * and bottom ends; the sizes and depths are of one feature or of several alike; `span` is one link of a chain.
 */
export type Measure =
  | 'length'
  | 'width'
  | 'thickness'
  | 'x0'
  | 'x1'
  | 'y0'
  | 'y1'
  | 'x'
  | 'y'
  | 'size-x'
  | 'size-y'
  | 'depth'
  | 'diameter'
  | 'radius'
  | 'angle'
  | 'span';

/** A printed figure with what it measures, kept beside the marks so that a check can read the drawing back. */
export type Dimension = {
  readonly measure: Measure;
  /** features, parts or places it applies to; empty for the whole piece */
  readonly of: readonly string[];
  /** the figure exactly as printed */
  readonly text: string;
  /** view it stands in */
  readonly view: string;
  /** for a span or an ordinate: the model's ordinates it runs between */
  readonly between: readonly [number, number] | null;
  /** where its dimension or extension lines end on paper; null for a figure in a note */
  readonly ends: readonly [Spot, Spot] | null;
  /** for an angle or a radius that is drawn: the corner or the middle of the circle, on paper */
  readonly about?: Spot;
  /** links with the same chain name follow each other */
  readonly chain: string | null;
};
