import type { Finding } from '../finding.ts';
import { boxDepth, depth, TOUCH } from '../geometry/overlap.ts';
import type { Box, Vector } from '../geometry/shapes.ts';
import { atLeast, length, say } from '../units/say.ts';
import type { Body } from './body.ts';

/** Two bodies that stand in each other: how deep, and the middle of the space they share; mm. */
export type Overlap = {
  readonly between: readonly [string, string];
  readonly depth: number;
  readonly at: Vector;
};

/** Every pair of bodies whose solids share more than a touch of 1e-6 mm. */
export function overlapsOf(bodies: readonly Body[]): readonly Overlap[] {
  return bodies.flatMap((a, i) => bodies.slice(i + 1).flatMap((b) => overlapOf(a, b) ?? []));
}

function overlapOf(a: Body, b: Body): Overlap | null {
  if (boxDepth(a.box, b.box) <= TOUCH) return null;
  let found: Overlap | null = null;
  for (const piece of a.pieces) {
    for (const other of b.pieces) {
      if (boxDepth(piece.box, other.box) <= TOUCH) continue;
      const deep = depth(piece, other);
      if (deep <= TOUCH || (found !== null && deep <= found.depth)) continue;
      found = { between: [a.id, b.id], depth: deep, at: middleShared(piece.box, other.box) };
    }
  }
  return found;
}

function middleShared(a: Box, b: Box): Vector {
  const middle = (i: 0 | 1 | 2) => (Math.max(a.min[i], b.min[i]) + Math.min(a.max[i], b.max[i])) / 2;
  return [middle(0), middle(1), middle(2)];
}

/** A halt for every pair of parts that stand in each other, with the place and the depth. */
export function overlaps(bodies: readonly Body[]): readonly Finding[] {
  return overlapsOf(bodies).map(({ between: [a, b], depth: deep, at: [x, y, z] }): Finding => {
    const where = say`${length(x)} from the left, ${length(y)} from the front, ${length(z)} above the floor`;
    return {
      rule: 'parts-overlap',
      level: 'halt',
      where: a,
      chapter: 'benchwork',
      what: [...say`${a} and ${b} stand ${length(deep)} in each other, `, ...where],
      figure: deep,
      limit: 0,
      unit: 'mm',
      mend: say`take ${atLeast(deep)} off one of them there, or widen the slot, dado or notch that lets it in by as much`,
      source: 'two solids cannot fill the same space; no source needed',
      accepted: null,
    };
  });
}
