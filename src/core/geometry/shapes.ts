/** A point in a plane, mm. */
export type Point = readonly [number, number];

/** A point or direction in space, mm or unit length. */
export type Vector = readonly [number, number, number];

/** Outline counter-clockwise, holes clockwise, none closed by repeating its first point; mm. */
export type Polygon = {
  readonly outline: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
};

/** Keeps the points p with normal . p <= offset; normal of unit length, mm. */
export type HalfSpace = { readonly normal: Vector; readonly offset: number };

/** A polygon in x and y swept along z from `from` to `to`, mm. */
export type Prism = { readonly polygon: Polygon; readonly from: number; readonly to: number };

/** The union of its prisms, cut by every half-space; in the part's own coordinates, mm. */
export type Solid = { readonly prisms: readonly Prism[]; readonly cuts: readonly HalfSpace[] };

/** A rigid place: where the part's origin lies and where its x, y and z point (right-handed, unit length). */
export type Pose = { readonly origin: Vector; readonly x: Vector; readonly y: Vector; readonly z: Vector };

/** Smallest and largest coordinates, mm. */
export type Box = { readonly min: Vector; readonly max: Vector };
