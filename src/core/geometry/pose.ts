import type { Point, Pose, Vector } from './shapes.ts';
import { dot, minus, placed, turned } from './vector.ts';

/** Where a point of a part lies in the coordinates its pose is given in; mm. */
export function toWorld(pose: Pose, point: Vector): Vector {
  return placed(pose, point);
}

/** The pose of something placed by `inner` within something placed by `outer`. */
export function within(outer: Pose, inner: Pose): Pose {
  const spin = (direction: Vector) => turned(outer, direction);
  return { origin: placed(outer, inner.origin), x: spin(inner.x), y: spin(inner.y), z: spin(inner.z) };
}

/** The pose of a bench that stands at a point of the floor, turned counter-clockwise; mm and radians. */
export function standing(at: Point, turn: number): Pose {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return { origin: [at[0], at[1], 0], x: [c, s, 0], y: [-s || 0, c, 0], z: [0, 0, 1] };
}

/** A point around a placed part, in the part's own coordinates; mm. Undoes toWorld. */
export function fromWorld(pose: Pose, point: Vector): Vector {
  const off = minus(point, pose.origin);
  return [dot(off, pose.x), dot(off, pose.y), dot(off, pose.z)];
}
