import type { Point } from '../../geometry/shapes.ts';
import { nearestOnStraight } from '../../geometry/straight.ts';
import type { BusSpot, Limb } from './limbs.ts';
import { corners } from './to-limbs.ts';

/** A branch begins on the bus when it begins this near to it, mm. */
const ON_BUS = 1;

/** A branch as written that does not begin on the bus: its place in the list, and the bus's nearest point; mm. */
export type Loose = { readonly branch: number; readonly at: Point; readonly near: Point; readonly off: number };

/** A bus as written, with its branches that begin on it as limbs; mm. */
export type Written = { readonly limbs: readonly Limb[]; readonly loose: readonly Loose[] };

/** The limbs of a written bus: the route from the supply, and every branch from where it begins on what is there. */
export function writtenLimbs(route: readonly Point[], branches: readonly (readonly Point[])[]): Written {
  const limbs: Limb[] = [{ path: corners(route), of: null, from: 0 }];
  const loose: Loose[] = [];
  for (const [branch, [start, ...rest]] of branches.entries()) {
    const near = start === undefined ? null : nearestOnLimbs(limbs, start);
    if (start === undefined || near === null) continue;
    if (near.off > ON_BUS) loose.push({ branch, at: start, near: near.at, off: near.off });
    else limbs.push({ path: corners([near.at, ...rest]), of: near.limb, from: near.along });
  }
  return { limbs, loose };
}

/** The place of a bus that lies nearest to a point. */
type Near = BusSpot & { readonly at: Point; readonly off: number };

/** The place of some limbs nearest to a point, the first of equals; null without limbs. */
export function nearestOnLimbs(limbs: readonly Limb[], point: Point): Near | null {
  let best: Near | null = null;
  for (const [limb, { from: begin, path }] of limbs.entries()) {
    let along = begin;
    for (const [i, to] of path.entries()) {
      const from = path[i - 1] ?? to;
      const at = nearestOnStraight(from, to, point);
      const off = Math.hypot(at[0] - point[0], at[1] - point[1]);
      if (best === null || off < best.off - 1e-9)
        best = { limb, at, off, along: along + Math.hypot(at[0] - from[0], at[1] - from[1]) };
      along += Math.hypot(to[0] - from[0], to[1] - from[1]);
    }
  }
  return best;
}
