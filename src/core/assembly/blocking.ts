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

/**
 * The blocking graphs of directions that come in pairs, each followed by its opposite: what blocks i one way is blocked
 * by i the other way, so half of them are the others turned round (Wilson and Latombe 1994).
 */
export function blockings(bodies: readonly Body[], directions: readonly Vector[]): readonly Blocking[] {
  const pairs = directions.flatMap((direction, k) => (k % 2 === 0 ? [[direction, directions[k + 1]] as const] : []));
  return pairs.flatMap(([direction, back]) => {
    const there = blocking(bodies, direction);
    return back === undefined ? [there] : [there, { direction: back, blocks: turnedRound(there.blocks) }];
  });
}

export function blocking(bodies: readonly Body[], direction: Vector): Blocking {
  const blocks = bodies.map((moving, i) =>
    bodies.flatMap((still, j) => (i !== j && inTheWay(moving, still, direction) ? [j] : [])),
  );
  return { direction, blocks };
}

function turnedRound(blocks: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const back = blocks.map((): number[] => []);
  blocks.forEach((others, i) => {
    for (const j of others) back[j]?.push(i);
  });
  return back;
}

/** Whether a body would cut into another on its way out along a direction. */
export function inTheWay(moving: Body, still: Body, direction: Vector): boolean {
  if (!boxesMeet(moving.box, still.box, direction)) return false;
  const near = still.pieces.filter((other) => boxesMeet(moving.box, other.box, direction));
  if (near.length === 0) return false;
  const own = moving.pieces.filter((piece) => boxesMeet(piece.box, still.box, direction));
  return own.some((piece) => near.some((other) => piecesMeet(piece, other, direction)));
}

function piecesMeet(piece: Convex, other: Convex, direction: Vector): boolean {
  if (!boxesMeet(piece.box, other.box, direction)) return false;
  return (piece.square && other.square) || clashAlong(piece, other, direction) !== null;
}

const AXES = [0, 1, 2] as const;

/** Whether a box on its way out can cut another at all: a quick no for most pairs, and exact for boxes. */
export function boxesMeet(moving: Box, still: Box, direction: Vector): boolean {
  let from = 0;
  let to = Number.POSITIVE_INFINITY;
  for (const i of AXES) {
    const enters = still.min[i] + TOUCH - moving.max[i];
    const leaves = still.max[i] - TOUCH - moving.min[i];
    const speed = direction[i];
    if (Math.abs(speed) < 1e-12) {
      if (enters >= 0 || leaves <= 0) return false;
      continue;
    }
    from = Math.max(from, speed > 0 ? enters / speed : leaves / speed);
    to = Math.min(to, speed > 0 ? leaves / speed : enters / speed);
  }
  return from < to;
}
