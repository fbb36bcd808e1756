import fc from 'fast-check';
import { type Convex, convexPieces } from '../../../src/core/geometry/convex.ts';
import { rectangle } from '../../../src/core/geometry/polygon.ts';
import type { Pose, Vector } from '../../../src/core/geometry/shapes.ts';

export const HOME: Pose = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

export function box(size: Vector, pose: Pose = HOME): Convex {
  const prism = { polygon: { outline: rectangle([0, 0], [size[0], size[1]]), holes: [] }, from: 0, to: size[2] };
  const [piece] = convexPieces({ prisms: [prism], cuts: [] }, pose);
  if (piece === undefined) throw new Error('an empty box');
  return piece;
}

export function at(origin: Vector, turn = 0): Pose {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return { origin, x: [c, s, 0], y: [-s, c, 0], z: [0, 0, 1] };
}

const whole = (min: number, max: number) => fc.integer({ min, max });

/** Boxes of 1 to 9, anywhere within 20, turned by any whole number of degrees about the upright. */
export const anyBox: fc.Arbitrary<Convex> = fc
  .record({
    size: fc.tuple(whole(1, 9), whole(1, 9), whole(1, 9)),
    origin: fc.tuple(whole(-10, 10), whole(-10, 10), whole(-10, 10)),
    turn: whole(0, 359),
  })
  .map(({ size, origin, turn }) => box(size, at(origin, (turn * Math.PI) / 180)));
