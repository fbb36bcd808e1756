import { type Body, body, type Link } from '../../../src/core/assembly/body.ts';
import { type Manner, type Move, type Order, orderOf } from '../../../src/core/assembly/order.ts';
import { scene } from '../../../src/core/assembly/scene.ts';
import { type Convex, convexPieces } from '../../../src/core/geometry/convex.ts';
import type { Pose, Vector } from '../../../src/core/geometry/shapes.ts';

const HOME: Pose = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
const AXES: readonly Vector[] = [HOME.x, HOME.y, HOME.z];

export type Block = readonly [Vector, Vector];

/** A box between two corners as a convex piece. */
export function block([low, high]: Block): Convex {
  const outline = [
    [low[0], low[1]],
    [high[0], low[1]],
    [high[0], high[1]],
    [low[0], high[1]],
  ] as const;
  const solid = { prisms: [{ polygon: { outline, holes: [] }, from: low[2], to: high[2] }], cuts: [] };
  const [piece] = convexPieces(solid, HOME);
  if (piece === undefined) throw new Error('an empty block');
  return piece;
}

/** A piece of a puzzle, made of blocks that share no inside. */
export function pieceOf(id: string, blocks: readonly Block[]): Body {
  return body(id, blocks.map(block), AXES);
}

/** Unit cubes at whole coordinates as one piece. */
export function cubes(id: string, cells: readonly Vector[]): Body {
  return pieceOf(
    id,
    cells.map(
      ([x, y, z]): Block => [
        [x, y, z],
        [x + 1, y + 1, z + 1],
      ],
    ),
  );
}

export const UPRIGHT: Manner = { up: [0, 0, 1], tilts: new Set() };

export function linked(...pairs: readonly (readonly [string, string])[]): readonly Link[] {
  return pairs.map((between) => ({ id: between.join('-'), between }));
}

/** Every two bodies of a puzzle joined. */
export function allLinked(bodies: readonly Body[]): readonly Link[] {
  return linked(...bodies.flatMap((a, i) => bodies.slice(i + 1).map((b) => [a.id, b.id] as const)));
}

export function solved(bodies: readonly Body[], manner = UPRIGHT, links = allLinked(bodies)): Order {
  return orderOf(scene(bodies, links), manner);
}

export function namesOf(moves: readonly Move[]): readonly string[] {
  return moves.map(({ bodies }) => bodies.join('+'));
}
