import type { FillName, PenName } from './pens.ts';

/** A place on the paper, mm from its upper left corner, y down. */
export type Spot = readonly [number, number];

/** What a mark is there for; the checks and the styles go by it. */
export type Role =
  | 'outline'
  | 'feature'
  | 'hidden'
  | 'centre'
  | 'hatch'
  | 'extension'
  | 'dimension'
  | 'arrow'
  | 'figure'
  | 'leader'
  | 'label'
  | 'note'
  | 'frame'
  | 'scale-bar'
  | 'waste'
  | 'offcut'
  | 'symbol'
  | 'break';

type Drawn = { readonly pen: PenName; readonly role: Role };

export type LineMark = Drawn & { readonly kind: 'line'; readonly from: Spot; readonly to: Spot };
export type PolylineMark = Drawn & { readonly kind: 'polyline'; readonly points: readonly Spot[] };
/** One area with its holes, filled by the even-odd rule. */
export type PolygonMark = Drawn & {
  readonly kind: 'polygon';
  readonly rings: readonly (readonly Spot[])[];
  readonly fill: FillName;
};
export type CircleMark = Drawn & {
  readonly kind: 'circle';
  readonly centre: Spot;
  readonly radius: number;
  readonly fill: FillName;
};
/** Angles in radians, clockwise on paper from the right; `to` after `from`. */
export type ArcMark = Drawn & {
  readonly kind: 'arc';
  readonly centre: Spot;
  readonly radius: number;
  readonly from: number;
  readonly to: number;
};
/**
 * One line of lettering: `at` is on its base line, `size` the height of its capitals in mm (ISO 3098), `turn` is
 * 'right' for text read from the right of the sheet.
 */
export type TextMark = {
  readonly kind: 'text';
  readonly role: Role;
  readonly at: Spot;
  readonly text: string;
  readonly size: number;
  readonly weight: 'regular' | 'bold';
  readonly anchor: 'start' | 'middle' | 'end';
  readonly turn: 'none' | 'right';
};

export type Mark = LineMark | PolylineMark | PolygonMark | CircleMark | ArcMark | TextMark;

/** Smallest and largest paper coordinates, mm. */
export type Extent = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };
