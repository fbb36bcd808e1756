import type { Convex } from './convex.ts';
import type { Box, Vector } from './shapes.ts';
import { cross, dot, unit } from './vector.ts';

const AXES: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Two bodies that share less than this depth only touch, mm. */
export const TOUCH = 1e-6;

/**
 * The directions along which two convex bodies can be held apart: their face normals and the products of their edges
 * (separating axis theorem). Unit length.
 */
export function separatingAxes(a: Convex, b: Convex): readonly Vector[] {
  if (a.square && b.square) return AXES;
  const products = a.edges.flatMap((e) => b.edges.map((f) => unit(cross(e, f))));
  return [...a.normals, ...b.normals, ...products.filter((axis) => axis !== null)];
}

/** How far a body reaches along an axis, mm. */
export function reach(body: Convex, axis: Vector): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const corner of body.corners) {
    const d = dot(corner, axis);
    if (d < low) low = d;
    if (d > high) high = d;
  }
  return [low, high];
}

/**
 * How deep two convex bodies stand in each other: the shortest push that parts them, mm. Zero or less when they are
 * apart, and then minus the widest gap along any separating axis.
 */
export function depth(a: Convex, b: Convex): number {
  const apart = boxDepth(a.box, b.box);
  if (apart < -TOUCH || (a.square && b.square)) return apart;
  return separatingAxes(a, b).reduce((least, axis) => Math.min(least, depthAlong(a, b, axis)), apart);
}

/** Overlap of two boxes along the axis where it is least; negative when apart, mm. */
export function boxDepth(a: Box, b: Box): number {
  const along = (i: 0 | 1 | 2) => Math.min(a.max[i] - b.min[i], b.max[i] - a.min[i]);
  return Math.min(along(0), along(1), along(2));
}

function depthAlong(a: Convex, b: Convex, axis: Vector): number {
  const [aLow, aHigh] = reach(a, axis);
  const [bLow, bHigh] = reach(b, axis);
  return Math.min(aHigh - bLow, bHigh - aLow);
}
