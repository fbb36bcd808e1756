import type { Point, Vector } from '../../core/geometry/shapes.ts';
import { dot } from '../../core/geometry/vector.ts';

const [R2, R3, R6] = [Math.SQRT2, Math.sqrt(3), Math.sqrt(6)];

/** Isometric axes (ISO 5456-3), seen from the front right above: right and up on paper, and towards the reader. */
export const RIGHT: Vector = [1 / R2, 1 / R2, 0];
export const UP: Vector = [-1 / R6, 1 / R6, 2 / R6];
export const TOWARD: Vector = [1 / R3, -1 / R3, 1 / R3];

/** Where a point in space falls in the plane of the picture, mm. */
export function flat(point: Vector): Point {
  return [dot(point, RIGHT), dot(point, UP)];
}
