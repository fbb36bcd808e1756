import type { Convex } from '../geometry/convex.ts';
import { TOUCH } from '../geometry/overlap.ts';
import type { Box, Vector } from '../geometry/shapes.ts';
import { clashAlong } from '../geometry/sweep.ts';
import type { Body } from './body.ts';

/**
 * Who stands in whose way along one direction: `blocks[i]` lists the indices of the bodies that body i would cut into on
 * its way out.
 */
export type Blocking = { readonly direction: Vector; readonly blocks: readonly (readonly number[])[] };

export function blocking(bodies: readonly Body[], direction: Vector): Blocking {
  const blocks = bodies.map((moving, i) =>
    bodies.flatMap((still, j) => (i !== j && inTheWay(moving, still, direction) ? [j] : [])),
  );
  return { direction, blocks };
}

function inTheWay(moving: Body, still: Body, direction: Vector): boolean {
  if (!boxesMeet(moving.box, still.box, direction)) return false;
  return moving.pieces.some((piece) => still.pieces.some((other) => piecesMeet(piece, other, direction)));
}

function piecesMeet(piece: Convex, other: Convex, direction: Vector): boolean {
  return boxesMeet(piece.box, other.box, direction) && clashAlong(piece, other, direction) !== null;
}

/** Whether a box on its way out can cut another at all: a quick no for most pairs. */
function boxesMeet(moving: Box, still: Box, direction: Vector): boolean {
  let from = 0;
  let to = Number.POSITIVE_INFINITY;
  for (const axis of [0, 1, 2] as const) {
    const enters = still.min[axis] + TOUCH - moving.max[axis];
    const leaves = still.max[axis] - TOUCH - moving.min[axis];
    const speed = direction[axis];
    if (Math.abs(speed) < 1e-12) {
      if (enters >= 0 || leaves <= 0) return false;
      continue;
    }
    from = Math.max(from, speed > 0 ? enters / speed : leaves / speed);
    to = Math.min(to, speed > 0 ? leaves / speed : enters / speed);
  }
  return from < to;
}
