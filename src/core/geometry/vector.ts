import type { Pose, Vector } from './shapes.ts';

export function plus(a: Vector, b: Vector): Vector {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function minus(a: Vector, b: Vector): Vector {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function times(a: Vector, k: number): Vector {
  return [a[0] * k, a[1] * k, a[2] * k];
}

export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function norm(a: Vector): number {
  return Math.hypot(a[0], a[1], a[2]);
}

/** The direction of `a` with length 1, or null when `a` is shorter than 1e-12. */
export function unit(a: Vector): Vector | null {
  const size = norm(a);
  return size < 1e-12 ? null : times(a, 1 / size);
}

/** A direction given in the coordinates of `pose`, turned into those around it. */
export function turned(pose: Pose, direction: Vector): Vector {
  return plus(plus(times(pose.x, direction[0]), times(pose.y, direction[1])), times(pose.z, direction[2]));
}

/** A point given in the coordinates of `pose`, in those around it; mm. */
export function placed(pose: Pose, point: Vector): Vector {
  return plus(pose.origin, turned(pose, point));
}
