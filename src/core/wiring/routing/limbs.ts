import type { Point } from '../../geometry/shapes.ts';

/**
 * One length of the bus without a joint in it: the trunk from the supply, or a branch from a T-joint on an earlier limb.
 * `from` is how far along the bus from the supply it begins; frame coordinates, mm.
 */
export type Limb = { readonly path: readonly Point[]; readonly of: number | null; readonly from: number };

/** A place on the bus: its limb, and how far along the bus from the supply; mm. */
export type BusSpot = { readonly limb: number; readonly along: number };

/** A length of one limb, distances from the supply; mm. */
export type Stretch = { readonly limb: number; readonly from: number; readonly to: number };

/** The first of some stretches that passes a place, its ends with it; null where none does. */
export function passing<T extends Stretch>(stretches: readonly T[], { limb, along }: BusSpot): T | null {
  return stretches.find((one) => one.limb === limb && along >= one.from - 1e-6 && along <= one.to + 1e-6) ?? null;
}

/** Length of a path, mm. */
export function pathLength(path: readonly Point[]): number {
  return path
    .slice(1)
    .reduce((sum, [x, y], i) => sum + Math.hypot(x - (path[i]?.[0] ?? x), y - (path[i]?.[1] ?? y)), 0);
}

/** A place on the bus as one name: the start of a branch is the place on the limb that it leaves. */
export function spotAt(limbs: readonly Limb[], { limb, along }: BusSpot): BusSpot {
  const own = limbs[limb];
  if (own === undefined || own.of === null || along - own.from > 1e-6) return { limb, along };
  return spotAt(limbs, { limb: own.of, along: own.from });
}

/** The way from the supply to a place, limb by limb, with how far along each it goes. */
function wayTo(limbs: readonly Limb[], spot: BusSpot): readonly BusSpot[] {
  const own = limbs[spot.limb];
  if (own === undefined || own.of === null) return [spot];
  return [...wayTo(limbs, { limb: own.of, along: own.from }), spot];
}

/** The place where the ways from the supply to some places part; null for none. */
export function partingOf(limbs: readonly Limb[], spots: readonly BusSpot[]): BusSpot | null {
  const ways = spots.map((spot) => wayTo(limbs, spotAt(limbs, spot)));
  const [first] = ways;
  if (first === undefined) return null;
  for (const [i, { limb }] of first.entries()) {
    const along = ways.reduce((least, way) => Math.min(least, way[i]?.along ?? least), Number.POSITIVE_INFINITY);
    const next = first[i + 1]?.limb;
    const alike = ways.every((way) => way[i + 1]?.limb === next && Math.abs((way[i]?.along ?? 0) - along) < 1e-6);
    if (next === undefined || !alike) return { limb, along };
  }
  return null;
}

/** The least of the bus that holds all places together, as lengths of its limbs, those nearer the supply first. */
export function spanning(limbs: readonly Limb[], spots: readonly BusSpot[]): readonly Stretch[] {
  const top = partingOf(limbs, spots);
  if (top === null) return [];
  const reach = new Map<number, Stretch>([[top.limb, { limb: top.limb, from: top.along, to: top.along }]]);
  for (const spot of spots) {
    const way = wayTo(limbs, spotAt(limbs, spot));
    for (const { limb, along } of way.slice(way.findIndex((one) => one.limb === top.limb))) {
      const from = limb === top.limb ? top.along : (limbs[limb]?.from ?? 0);
      reach.set(limb, { limb, from, to: Math.max(along, reach.get(limb)?.to ?? along) });
    }
  }
  return [...reach.values()].toSorted((a, b) => a.limb - b.limb);
}

/** The corners of a limb between two distances from the supply, both ends with it. */
export function stretchPath(limbs: readonly Limb[], { limb, from, to }: Stretch): readonly Point[] {
  const own = limbs[limb];
  if (own === undefined) return [];
  const points: Point[] = [pointAlong(own, from)];
  let along = own.from;
  for (const [i, point] of own.path.entries()) {
    const before = own.path[i - 1] ?? point;
    along += Math.hypot(point[0] - before[0], point[1] - before[1]);
    if (along > from + 1e-6 && along < to - 1e-6) points.push(point);
  }
  return to - from > 1e-6 ? [...points, pointAlong(own, to)] : points;
}

/** The point of a limb so far along the bus; its nearer end beyond both. */
export function pointAlong({ path, from }: Limb, at: number): Point {
  let along = from;
  for (const [i, to] of path.entries()) {
    const before = path[i - 1] ?? to;
    const long = Math.hypot(to[0] - before[0], to[1] - before[1]);
    if (long > 0 && along + long >= at - 1e-9) {
      const share = Math.max(0, (at - along) / long);
      return [before[0] + (to[0] - before[0]) * share, before[1] + (to[1] - before[1]) * share];
    }
    along += long;
  }
  return path[path.length - 1] ?? [0, 0];
}
