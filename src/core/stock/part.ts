import type { Point, Pose } from '../geometry/shapes.ts';

/**
 * Part coordinates: x along the blank's length 0..length, y along its width 0..width, z through its thickness
 * 0..thickness. z = 0 is the back, z = thickness the face. Left, right, bottom and top are the edges at x = 0,
 * x = length, y = 0 and y = width. All mm and radians.
 */
export type FaceSide = 'face' | 'back';
export type EdgeSide = 'left' | 'right' | 'bottom' | 'top';

/** The piece as it comes from the saw, before any feature; grain names the direction of the long fibres. */
export type Blank = {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly grain: 'length' | 'width' | 'any';
};

/** An axis-aligned rectangle on a part. */
export type Patch = { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };

/** What a feature is there for: the instance that enters it, or the request it answers. */
type Purpose = { readonly id: string; readonly for?: string };

export type Feature = Purpose &
  (
    | { readonly kind: 'trim'; readonly edge: EdgeSide; readonly by: number }
    | { readonly kind: 'notch'; readonly edge: EdgeSide; readonly patch: Patch; readonly corner: number }
    | {
        /** a pocket in one face; a stopped dado ends inside the face and keeps round corners of the bit */
        readonly kind: 'dado' | 'stopped-dado' | 'rabbet' | 'groove';
        readonly side: FaceSide;
        readonly patch: Patch;
        readonly depth: number;
        readonly corner: number;
        /** radius of the bit that runs past each inner corner, so that a square mate seats; absent: none */
        readonly relief?: number;
      }
    | { readonly kind: 'opening'; readonly patch: Patch; readonly corner: number }
    | { readonly kind: 'cut-out'; readonly outline: readonly Point[] }
    | {
        readonly kind: 'hole';
        readonly at: Point;
        readonly diameter: number;
        readonly side: FaceSide;
        readonly depth: number | 'through';
      }
    | {
        readonly kind: 'counterbore';
        readonly at: Point;
        readonly diameter: number;
        readonly side: FaceSide;
        readonly depth: number;
      }
    | {
        /** angle between the face and the cut, pi/2 being square; `long` is the side that keeps full size */
        readonly kind: 'mitre';
        readonly edge: EdgeSide;
        readonly angle: number;
        readonly long: FaceSide;
      }
    | { readonly kind: 'taper'; readonly edge: EdgeSide; readonly from: Point; readonly to: Point }
    | { readonly kind: 'roundover'; readonly edge: EdgeSide; readonly side: FaceSide; readonly radius: number }
    | {
        readonly kind: 'rounded-corner';
        readonly corner: 'left-bottom' | 'right-bottom' | 'right-top' | 'left-top';
        readonly radius: number;
      }
  );

/** A mark the builder writes on the wood: text at a point of a side, so that mates find each other. */
export type MatingMark = {
  readonly text: string;
  readonly side: FaceSide;
  readonly at: Point;
  /** `mate` names the part that comes here, `up` and `end` tell how the part lies */
  readonly kind: 'mate' | 'up' | 'end';
};

/** One instance of a part in its bench. Ids say position and never change: `strut.across-2`. */
export type Placement = {
  readonly id: string;
  /** what is written on the wood: short, unique in the notebook */
  readonly label: string;
  readonly pose: Pose;
  readonly marks: readonly MatingMark[];
};

/** One shape, cut once or several times. `size` says whether its numbers rest on a listed or a measured thickness. */
export type Part = {
  readonly id: string;
  readonly label: string;
  /** side, end, strut, deck, flange-strip, batten, leg ... */
  readonly role: string;
  readonly chapter: 'benchwork' | 'scenery' | 'track';
  readonly bench: string;
  readonly stock: string;
  /** the instance whose opening this piece falls out of; it has no blank of its own in cutting */
  readonly from?: string;
  readonly blank: Blank;
  readonly features: readonly Feature[];
  readonly places: readonly Placement[];
  /** true while a stock it depends on has no dated measurement */
  readonly cutAfterMeasuring: boolean;
  /** later: counted where it meets the rest, not bought */
  readonly phase: 'now' | 'later';
};

/** Two instances that meet. Gaps are along the entering direction, mm. */
export type Joint = {
  readonly id: string;
  readonly kind: 'lap' | 'dado' | 'rabbet' | 'butt' | 'bearing' | 'bolted' | 'groove';
  readonly between: readonly [string, string];
  /** play across the mate beyond the thickest reading, mm */
  readonly clearance: number;
  /** extra depth of each half of a lap, or what a groove leaves round a floating panel, mm; 0 elsewhere */
  readonly relief: number;
  readonly held: 'glue' | 'screws' | 'bolts' | 'loose';
};

/** Space something needs: a drawer pulled out, a turnout motor, a caster's circle. Bench or notebook coordinates, mm. */
export type Envelope = {
  readonly id: string;
  readonly of: string;
  readonly kind: 'drawer' | 'motor' | 'caster' | 'leg' | 'hand' | 'wire' | 'shelf';
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
};

/**
 * What one room asks of an instance of another room's part. Notebook coordinates, mm; `at` is the middle of a hole, a
 * slot or a cut-out, and of a notch the middle of its open side, on the edge of the part. `size` runs along the part,
 * then across it (for a notch: its depth); a hole's is its diameter twice.
 */
export type Request = {
  readonly by: string;
  readonly part: string;
  readonly kind: 'hole' | 'notch' | 'cut-out' | 'slot';
  readonly at: readonly [number, number, number];
  readonly size: readonly [number, number];
  /** the largest size across the grain (notch depth, hole diameter) the part should lose; null where no rule is known */
  readonly limit: number | null;
  /** the true shape of a cut-out; absent: a rectangle of `size` about `at` */
  readonly outline?: readonly Point[];
  /** the chapter that asks */
  readonly chapter?: 'track' | 'wiring' | 'scenery';
};

/** A fix that leaves less than the full section; `keeps` is the share of stiffness left, 0 to 1, hinge 0 in bending. */
export type Weakening = {
  readonly place: string;
  readonly at: number;
  readonly kind: 'full' | 'half' | 'hinge' | 'nothing';
};

/** Mass spread over an outline, kg per m2. */
export type AreaMass = { readonly of: string; readonly outline: readonly Point[]; readonly perSquareMetre: number };
