import type { Point } from '../../geometry/shapes.ts';
import { type Bay, bayAt } from './bays.ts';
import { passage } from './crossing.ts';
import { BOLTED, COSTS, type Footprint, OFF, type Site } from './site.ts';

/** A step between neighbouring places of a lattice: `bend` tells its direction, `cost` is in mm of wire. */
export type LatticeStep = { readonly to: number; readonly direction: 0 | 1; readonly cost: number };

/** Places a wire may turn at, and the straight steps between neighbours. */
export type Lattice = { readonly places: readonly Point[]; readonly steps: readonly (readonly LatticeStep[])[] };

type Grid = { readonly xs: readonly number[]; readonly ys: readonly number[] };

/** Lines beside walls, through the middles of bays, beside obstructions and through wanted places. */
function linesOf(site: Site, bays: readonly Bay[], wanted: readonly Point[]): Grid {
  const off = OFF + site.radius;
  const axis = (i: 0 | 1) => [
    ...bays.flatMap((bay) => {
      const [low, high] = i === 0 ? bay.x : bay.y;
      return [low + off, (low + high) / 2, high - off];
    }),
    ...site.obstructions.flatMap(({ box }) => [box.min[i] - off, box.max[i] + off]),
    ...wanted.map((point) => point[i]),
  ];
  return { xs: distinct(axis(0)), ys: distinct(axis(1)) };
}

/** In rising order, each once; lines nearer than a millimetre are one. */
function distinct(values: readonly number[]): readonly number[] {
  const rising = values.toSorted((a, b) => a - b);
  return rising.filter((value, i) => i === 0 || value - (rising[i - 1] ?? 0) > 1e-6);
}

/** The lattice of a site at a height; wanted places that are free lie on it. */
export function lattice(
  whole: Site,
  bays: readonly Bay[],
  ask: { readonly wanted: readonly Point[]; readonly z: number },
): Lattice {
  const site = atHeight(whole, ask.z);
  const { xs, ys } = linesOf(site, bays, ask.wanted);
  const index = new Map<number, number>();
  const places: Point[] = [];
  for (let j = 0; j < ys.length; j += 1) {
    for (let i = 0; i < xs.length; i += 1) {
      const place: Point = [xs[i] ?? 0, ys[j] ?? 0];
      if (!isFree(site, bays, { place, z: ask.z })) continue;
      index.set(j * xs.length + i, places.length);
      places.push(place);
    }
  }
  const steps = places.map((): LatticeStep[] => []);
  const join = (a: number | undefined, b: number | undefined, direction: 0 | 1) => {
    if (a === undefined || b === undefined) return;
    const cost = stepCost(site, places[a] ?? [0, 0], { to: places[b] ?? [0, 0], z: ask.z });
    if (cost === null) return;
    steps[a]?.push({ to: b, direction, cost });
    steps[b]?.push({ to: a, direction, cost });
  };
  for (let j = 0; j < ys.length; j += 1)
    joinNext(row(index, j * xs.length, { count: xs.length, by: 1 }), (a, b) => join(a, b, 0));
  for (let i = 0; i < xs.length; i += 1)
    joinNext(row(index, i, { count: ys.length, by: xs.length }), (a, b) => join(a, b, 1));
  return { places, steps };
}

/** What stands at a height, as far as a bundle there meets it. */
function atHeight(site: Site, z: number): Site {
  const near = ({ box }: Site['obstructions'][number]) => z + site.radius > box.min[2] && z - site.radius < box.max[2];
  return { ...site, obstructions: site.obstructions.filter(near) };
}

/** The free places along one line of the grid, in order. */
function row(
  index: ReadonlyMap<number, number>,
  from: number,
  { count, by }: { readonly count: number; readonly by: number },
): readonly number[] {
  return Array.from({ length: count }, (_, i) => index.get(from + i * by)).filter((one) => one !== undefined);
}

function joinNext(places: readonly number[], join: (a: number, b: number | undefined) => void): void {
  places.forEach((place, i) => {
    join(place, places[i + 1]);
  });
}

/** A free place lies in a bay and clear of obstructions. */
export function isFree(
  site: Site,
  bays: readonly Bay[],
  { place, z }: { readonly place: Point; readonly z: number },
): boolean {
  if (bayAt(bays, place) === null) return false;
  const { clashes, holes } = passage(site, { from: place, to: place, z });
  return clashes.length === 0 && holes.length === 0;
}

function stepCost(site: Site, from: Point, { to, z }: { readonly to: Point; readonly z: number }): number | null {
  const { holes, clashes } = passage(site, { from, to, z });
  if (clashes.length > 0 || !isBridged(site.footprints, from, to)) return null;
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const far = Math.max(0, depthIn(site, from) - site.reach, depthIn(site, to) - site.reach);
  return long + (far > 0 ? COSTS.beyondReach * long : 0) + COSTS.hole * holes.length;
}

/** Benches that a step joins are bolted together. */
function isBridged(footprints: readonly Footprint[], from: Point, to: Point): boolean {
  const [a, b] = [footprintAt(footprints, from), footprintAt(footprints, to)];
  if (a === null || b === null || a === b) return a !== null && b !== null;
  const gap = (i: 0 | 1) => Math.max(a.low[i] - b.high[i], b.low[i] - a.high[i]);
  return Math.max(gap(0), gap(1)) <= BOLTED;
}

export function footprintAt(footprints: readonly Footprint[], [x, y]: Point): Footprint | null {
  return footprints.find(({ low, high }) => x >= low[0] && x <= high[0] && y >= low[1] && y <= high[1]) ?? null;
}

/** How far a place lies in from the nearest edge of its bench, mm. */
export function depthIn({ footprints }: Pick<Site, 'footprints'>, point: Point): number {
  const mine = footprintAt(footprints, point);
  if (mine === null) return 0;
  return Math.min(point[0] - mine.low[0], mine.high[0] - point[0], point[1] - mine.low[1], mine.high[1] - point[1]);
}
