import { union } from '../core/geometry/booleans.ts';
import { convexPieces } from '../core/geometry/convex.ts';
import { convexHull } from '../core/geometry/hull.ts';
import { bounds, rectangle } from '../core/geometry/polygon.ts';
import type { Point, Polygon, Pose, Vector } from '../core/geometry/shapes.ts';
import { dot, placed } from '../core/geometry/vector.ts';
import { partOutline } from '../core/stock/outline.ts';
import type { Part, Placement } from '../core/stock/part.ts';
import { partSolid } from '../core/stock/solid.ts';
import { onceFor } from './once.ts';
import { sectionOf } from './section.ts';

/** How a bench is looked at: which way is right and up on paper, and which way points at the reader. */
export type Gaze = { readonly right: Vector; readonly up: Vector; readonly toward: Vector };

export const fromAbove: Gaze = { right: [1, 0, 0], up: [0, 1, 0], toward: [0, 0, 1] };
export const fromFront: Gaze = { right: [1, 0, 0], up: [0, 0, 1], toward: [0, -1, 0] };
export const fromLeft: Gaze = { right: [0, -1, 0], up: [0, 0, 1], toward: [-1, 0, 0] };
/** Towards the left end, the front at the left of the paper. */
export const fromRight: Gaze = { right: [0, 1, 0], up: [0, 0, 1], toward: [1, 0, 0] };

/** One piece as it is seen: its areas in the plane of the drawing, and how near to the reader it reaches; mm. */
export type Seen = {
  readonly id: string;
  readonly label: string;
  readonly role: string;
  readonly areas: readonly Polygon[];
  readonly near: number;
  readonly far: number;
};

/** One piece where it stands. */
export type Placed = { readonly part: Part; readonly place: Placement };

/** The body of a part, the same for all views. */
export const solidOf = onceFor(partSolid);

/** The true shape of a part in its plane, the same for all views. */
export const outlineOf = onceFor(partOutline);

export function placedParts(parts: readonly Part[]): readonly Placed[] {
  return parts.flatMap((part) => part.places.map((place) => ({ part, place })));
}

const straight = 1 - 1e-9;

function flattened(pose: Pose, gaze: Gaze, point: Vector): Point {
  const at = placed(pose, point);
  return [dot(at, gaze.right), dot(at, gaze.up)];
}

function mapped(polygon: Polygon, map: (point: Point) => Point): Polygon {
  return { outline: polygon.outline.map(map), holes: polygon.holes.map((hole) => hole.map(map)) };
}

function corners({ part }: Placed): readonly Vector[] {
  const { length, width, thickness } = part.blank;
  return [0, length].flatMap((x) => [0, width].flatMap((y) => [0, thickness].map((z): Vector => [x, y, z])));
}

/** Seen edge on: every layer's stretch along the edge that shows, joined; a part that stands at a slant gives its box. */
function edgeOn(one: Placed, gaze: Gaze): readonly Polygon[] {
  const { pose } = one.place;
  const hidden =
    Math.abs(dot(pose.x, gaze.toward)) > straight ? 'x' : Math.abs(dot(pose.y, gaze.toward)) > straight ? 'y' : null;
  if (hidden === null) {
    const { low, high } = bounds(corners(one).map((corner) => flattened(pose, gaze, corner)));
    return [{ outline: rectangle(low, high), holes: [] }];
  }
  const solid = solidOf(one.part);
  if (solid.cuts.length > 0) {
    const project = (at: Vector): Point => [dot(at, gaze.right), dot(at, gaze.up)];
    return union(
      convexPieces(solid, pose).map((piece) => convexHull(piece.corners.map(project))),
      [],
    );
  }
  const loops = solid.prisms.map(({ polygon, from, to }) => {
    const { low, high } = bounds(polygon.outline);
    const [a, b]: readonly [Vector, Vector] =
      hidden === 'x'
        ? [
            [0, low[1], from],
            [0, high[1], to],
          ]
        : [
            [low[0], 0, from],
            [high[0], 0, to],
          ];
    const flat = bounds([flattened(pose, gaze, a), flattened(pose, gaze, b)]);
    return rectangle(flat.low, flat.high);
  });
  return union(loops, []);
}

/** What is seen of a part at each of its places, by how it is looked at: views and maps of a bench share it. */
const seenAt = onceFor((part: Part) =>
  onceFor((gaze: Gaze) => new Map(part.places.map((place) => [place, lookedAt({ part, place }, gaze)]))),
);

/** A piece seen from outside. */
export function seen(one: Placed, gaze: Gaze): Seen {
  return seenAt(one.part)(gaze).get(one.place) ?? lookedAt(one, gaze);
}

function lookedAt(one: Placed, gaze: Gaze): Seen {
  const { part, place } = one;
  const depths = corners(one).map((corner) => dot(placed(place.pose, corner), gaze.toward));
  const flat = Math.abs(dot(place.pose.z, gaze.toward)) > straight;
  const areas = flat
    ? [mapped(outlineOf(part), ([x, y]) => flattened(place.pose, gaze, [x, y, 0]))]
    : edgeOn(one, gaze);
  return {
    id: place.id,
    label: place.label,
    role: part.role,
    areas,
    near: Math.max(...depths),
    far: Math.min(...depths),
  };
}

/** The face left by a plane `at` (its distance towards the reader, mm); null where the plane misses the piece. */
export function cutBy(one: Placed, gaze: Gaze, at: number): Seen | null {
  const { part, place } = one;
  const { pose } = place;
  const whole = seen(one, gaze);
  if (at <= whole.far || at >= whole.near) return null;
  const away = at - dot(pose.origin, gaze.toward);
  const local = (axis: Vector) => away * Math.sign(dot(axis, gaze.toward));
  const along = (axis: Vector) => Math.abs(dot(axis, gaze.toward)) > straight;
  const flat = (point: Vector) => flattened(pose, gaze, point);
  const solid = solidOf(part);
  if (along(pose.z)) {
    const z = local(pose.z);
    const layers = solid.prisms.filter(({ from, to }) => from <= z && z < to);
    return { ...whole, areas: layers.map(({ polygon }) => mapped(polygon, ([x, y]) => flat([x, y, z]))) };
  }
  if (along(pose.x)) {
    const x = local(pose.x);
    return {
      ...whole,
      areas: sectionOf(solid, { axis: 'x', at: x }).map((area) => mapped(area, ([u, v]) => flat([x, u, v]))),
    };
  }
  if (!along(pose.y)) return null;
  const y = local(pose.y);
  return {
    ...whole,
    areas: sectionOf(solid, { axis: 'y', at: y }).map((area) => mapped(area, ([u, v]) => flat([u, y, v]))),
  };
}

/** Smallest and largest coordinates of what is seen of a piece. */
export function extentOfSeen({ areas }: Seen): { readonly low: Point; readonly high: Point } {
  return bounds(areas.flatMap(({ outline }) => outline));
}
