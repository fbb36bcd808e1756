import type { Convex } from '../geometry/convex.ts';
import { boxOf, shifted } from '../geometry/convex.ts';
import type { Box, Vector } from '../geometry/shapes.ts';
import { plus } from '../geometry/vector.ts';

/** One instance of a part as it stands in the finished bench. Bench coordinates, mm. */
export type Body = {
  readonly id: string;
  readonly pieces: readonly Convex[];
  readonly box: Box;
  /** the boxes of the parts it is made of, its own alone unless several go as one */
  readonly boxes: readonly Box[];
  /** the body's own three axes, then the normals of its slanted cuts: the directions it can be slid along */
  readonly axes: readonly Vector[];
};

/** Two bodies held together; `id` is the joint's. */
export type Link = { readonly id: string; readonly between: readonly [string, string] };

export function body(id: string, pieces: readonly Convex[], axes: readonly Vector[]): Body {
  const box = boxOf(pieces.flatMap((piece) => piece.corners));
  return { id, pieces, box, boxes: [box], axes };
}

/** Several bodies that go as one. */
export function joinedBody(id: string, members: readonly Body[]): Body {
  const pieces = members.flatMap((member) => member.pieces);
  return { ...body(id, pieces, distinctAxes(members)), boxes: members.flatMap((member) => member.boxes) };
}

/** A body moved by a vector, mm. */
export function movedBody(one: Body, by: Vector): Body {
  const pieces = one.pieces.map((piece) => shifted(piece, by));
  const boxes = one.boxes.map(({ min, max }): Box => ({ min: plus(min, by), max: plus(max, by) }));
  return { ...body(one.id, pieces, one.axes), boxes };
}

/** The first member's own three axes, then every other. */
function distinctAxes(members: readonly Body[]): readonly Vector[] {
  const seen = new Map(members.flatMap((member) => member.axes).map((axis) => [axis.join(' '), axis]));
  return [...seen.values()];
}
