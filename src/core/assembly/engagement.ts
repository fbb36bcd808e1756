import type { Box, Vector } from '../geometry/shapes.ts';
import type { Body } from './body.ts';

/**
 * How far a body slides along `direction` (unit length) while its box still shares space with another's, mm: the longest
 * over all `others` it is joined to. A dado 5.9 deep gives 5.9 across and the strut's whole height upwards.
 */
export function engagedTravel(moving: Box, others: readonly Box[], direction: Vector): number {
  return others.reduce((longest, other) => Math.max(longest, untilApart(moving, other, direction)), 0);
}

/** The box round several bodies, mm. */
export function boxRound(bodies: readonly Pick<Body, 'box'>[]): Box {
  const least = (i: 0 | 1 | 2) => bodies.reduce((low, b) => Math.min(low, b.box.min[i]), Number.POSITIVE_INFINITY);
  const most = (i: 0 | 1 | 2) => bodies.reduce((high, b) => Math.max(high, b.box.max[i]), Number.NEGATIVE_INFINITY);
  return { min: [least(0), least(1), least(2)], max: [most(0), most(1), most(2)] };
}

function untilApart(moving: Box, other: Box, direction: Vector): number {
  let first = Number.POSITIVE_INFINITY;
  for (const axis of [0, 1, 2] as const) {
    if (moving.max[axis] <= other.min[axis] || other.max[axis] <= moving.min[axis]) return 0;
    const speed = direction[axis];
    if (Math.abs(speed) < 1e-12) continue;
    const way = speed > 0 ? other.max[axis] - moving.min[axis] : moving.max[axis] - other.min[axis];
    first = Math.min(first, way / Math.abs(speed));
  }
  return Number.isFinite(first) ? first : 0;
}
