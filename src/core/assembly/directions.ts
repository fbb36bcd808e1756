import type { Vector } from '../geometry/shapes.ts';
import { cross, dot, times, unit } from '../geometry/vector.ts';
import type { Body } from './body.ts';

const SAME = 1 - 1e-9;

/**
 * The directions worth trying: the axes of the bench, every body's own axes and cut normals, and the lines in which two
 * of these planes meet; each both ways, unit length (Wilson and Latombe 1994, directional blocking graphs).
 */
export function directionsOf(bodies: readonly Body[]): readonly Vector[] {
  const found: Vector[] = [
    [0, 0, 1],
    [1, 0, 0],
    [0, 1, 0],
  ];
  const add = (d: Vector | null) => {
    if (d !== null && !found.some((known) => Math.abs(dot(known, d)) > SAME)) found.push(d);
  };
  for (const one of bodies) for (const axis of one.axes) add(unit(axis));
  const normals = [...found];
  if (normals.length <= MOST_NORMALS) for (const a of normals) for (const b of normals) add(unit(cross(a, b)));
  return found.flatMap((d): Vector[] => [d, tidy(times(d, -1))]);
}

/** Beyond this the lines of meeting planes are left out: their number grows with the square. */
const MOST_NORMALS = 24;

function tidy(d: Vector): Vector {
  return [d[0] + 0, d[1] + 0, d[2] + 0];
}
