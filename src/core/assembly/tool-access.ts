import { convex } from '../geometry/convex.ts';
import { boxDepth, depth, TOUCH } from '../geometry/overlap.ts';
import type { Vector } from '../geometry/shapes.ts';
import { cross, plus, times, unit } from '../geometry/vector.ts';
import { type Body, body } from './body.ts';

/** Where a tool comes to a fastener: `direction` (unit length) is the way it is driven; room of a radius behind its head, mm. */
export type Access = {
  readonly head: Vector;
  readonly direction: Vector;
  readonly radius: number;
  readonly length: number;
};

/** Sides of the prism drawn round the free cylinder: never smaller than it. */
const SIDES = 12;

/** Ids of the bodies that stand in the free cylinder a screwdriver, drill or spanner needs on a fastener's axis. */
export function inTheToolsWay(access: Access, bodies: readonly Body[]): readonly string[] {
  const room = cylinder(access);
  return bodies.filter((one) => meets(room, one)).map(({ id }) => id);
}

function meets(a: Body, b: Body): boolean {
  if (boxDepth(a.box, b.box) <= TOUCH) return false;
  return a.pieces.some((piece) =>
    b.pieces.some((other) => boxDepth(piece.box, other.box) > TOUCH && depth(piece, other) > TOUCH),
  );
}

function cylinder({ head, direction, radius, length }: Access): Body {
  const back = times(direction, -1);
  const aside: Vector = Math.abs(direction[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const u = unit(cross(aside, direction)) ?? [1, 0, 0];
  const v = cross(direction, u);
  const outside = radius / Math.cos(Math.PI / SIDES);
  const ring = (at: Vector) =>
    Array.from({ length: SIDES }, (_, i): Vector => {
      const turn = (2 * Math.PI * i) / SIDES;
      return plus(at, plus(times(u, outside * Math.cos(turn)), times(v, outside * Math.sin(turn))));
    });
  const [near, far] = [ring(head), ring(plus(head, times(back, length)))];
  const sides = near.map((corner, i): readonly Vector[] => {
    const next = (i + 1) % SIDES;
    return [corner, near[next] ?? corner, far[next] ?? corner, far[i] ?? corner];
  });
  return body('tool', [convex([near, [...far].reverse(), ...sides])], []);
}
