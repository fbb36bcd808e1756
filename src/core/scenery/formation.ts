import type { Point } from '../geometry/shapes.ts';
import { nearestOnStretch } from './distance.ts';
import type { Path, PathPoint } from './land.ts';

/** What the paths near a point allow its ground: at least `low`, at most `high`; mm. */
export type Allowed = { readonly low: number; readonly high: number };

/** Side of a bucket of the index, mm. */
const BUCKET = 64;

/** A straight stretch of one piece of a path; a square end is a portal or an abutment, where the ground stands upright. */
type Stretch = {
  readonly a: PathPoint;
  readonly b: PathPoint;
  readonly half: number;
  readonly slope: number;
  readonly piece: number;
  readonly square: { readonly a: boolean; readonly b: boolean };
};

/** Stretches by the bucket they can reach, so that a point looks at its neighbours only. */
export type FormationIndex = ReadonlyMap<string, readonly Stretch[]>;

/**
 * An index of the levelled paths for ground that lies within `relief` of any of them in height: the farthest a slope
 * can run out is relief / slope.
 */
export function formationIndex(paths: readonly Path[], relief: number): FormationIndex {
  const index = new Map<string, Stretch[]>();
  let piece = 0;
  for (const path of paths) {
    for (const kept of piecesOf(path)) {
      piece += 1;
      for (const stretch of stretchesOf(path, kept, piece)) enter(index, stretch, relief);
    }
  }
  return index;
}

type Range = readonly [from: number, to: number];

/** What of a path is left once the free stretches are taken out. */
function piecesOf({ points, free }: Path): readonly Range[] {
  const [first, last] = [points[0]?.at ?? 0, points[points.length - 1]?.at ?? 0];
  let kept: readonly Range[] = [[first, last]];
  for (const [from, to] of free) {
    kept = kept.flatMap(([k0, k1]) =>
      [[k0, Math.min(k1, from)] as const, [Math.max(k0, to), k1] as const].filter(([lo, hi]) => hi - lo > 1e-9),
    );
  }
  return kept;
}

function stretchesOf({ points, half, slope }: Path, [from, to]: Range, piece: number): readonly Stretch[] {
  const [first, last] = [points[0]?.at ?? 0, points[points.length - 1]?.at ?? 0];
  return points.slice(1).flatMap((b, i) => {
    const a = points[i] ?? b;
    const [lo, hi] = [Math.max(a.at, from), Math.min(b.at, to)];
    if (hi - lo <= 1e-9) return [];
    const square = { a: lo === from && from > first, b: hi === to && to < last };
    return [{ a: between(a, b, lo), b: between(a, b, hi), half, slope, piece, square }];
  });
}

/** The point of a stretch at a distance along its path. */
export function between(a: PathPoint, b: PathPoint, at: number): PathPoint {
  const share = b.at === a.at ? 0 : (at - a.at) / (b.at - a.at);
  const mix = (p: number, q: number) => p + (q - p) * share;
  return { at, x: mix(a.x, b.x), y: mix(a.y, b.y), z: mix(a.z, b.z) };
}

function enter(index: Map<string, Stretch[]>, stretch: Stretch, relief: number): void {
  const { a, b, half, slope } = stretch;
  const reach = half + (relief + Math.max(Math.abs(a.z), Math.abs(b.z))) / slope;
  const cell = (value: number) => Math.floor(value / BUCKET);
  for (let i = cell(Math.min(a.x, b.x) - reach); i <= cell(Math.max(a.x, b.x) + reach); i += 1) {
    for (let j = cell(Math.min(a.y, b.y) - reach); j <= cell(Math.max(a.y, b.y) + reach); j += 1) {
      const key = `${i} ${j}`;
      const list = index.get(key);
      if (list === undefined) index.set(key, [stretch]);
      else list.push(stretch);
    }
  }
}

/**
 * Between what heights the paths hold the ground at a point: level over their width, then falling away as a bank or
 * rising as a cutting, from the nearest place of each piece. Where paths disagree the lower one wins, so that none is
 * buried.
 */
export function allowedAt(index: FormationIndex, x: number, y: number): Allowed {
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const { distance, z, half, slope } of nearestPieces(index, [x, y])) {
    const out = slope * Math.max(0, distance - half);
    low = Math.max(low, z - out);
    high = Math.min(high, z + out);
  }
  return { low, high };
}

type Near = { readonly distance: number; readonly z: number; readonly half: number; readonly slope: number };

/** The nearest place of every piece that has one here; none beyond a square end. */
function nearestPieces(index: FormationIndex, [x, y]: Point): readonly Near[] {
  const found: Near[] = [];
  let [piece, best]: [number, Near | null] = [-1, null];
  let least = Number.POSITIVE_INFINITY;
  for (const stretch of index.get(bucketOf(x, y)) ?? []) {
    if (stretch.piece !== piece) {
      if (best !== null) found.push(best);
      [piece, best, least] = [stretch.piece, null, Number.POSITIVE_INFINITY];
    }
    const { a, b, half, slope, square } = stretch;
    const { distance, share, raw } = nearestOnStretch([a.x, a.y], [b.x, b.y], [x, y]);
    if (distance >= least) continue;
    least = distance;
    const beyond = (raw < 0 && square.a) || (raw > 1 && square.b);
    best = beyond ? null : { distance, z: a.z + (b.z - a.z) * share, half, slope };
  }
  return best === null ? found : [...found, best];
}

function bucketOf(x: number, y: number): string {
  return `${Math.floor(x / BUCKET)} ${Math.floor(y / BUCKET)}`;
}
