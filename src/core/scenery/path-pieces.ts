import type { Path, PathPoint } from './land.ts';

/**
 * A straight stretch of one piece of a path, ready to be measured from: its start, its run and 1 / run^2, heights at
 * both ends. A square end is a portal or an abutment, where the ground stands upright.
 */
export type Stretch = {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly perSquare: number;
  readonly z: number;
  readonly dz: number;
  readonly half: number;
  readonly slope: number;
  readonly piece: number;
  readonly squareStart: boolean;
  readonly squareEnd: boolean;
};

type Range = readonly [from: number, to: number];

/** The stretches of paths, piece by piece, free ones left out; pieces are counted from 1. */
export function stretchesOf(paths: readonly Path[]): readonly Stretch[] {
  let piece = 0;
  return paths.flatMap((path) =>
    keptOf(path).flatMap((range) => {
      piece += 1;
      return pieceStretches(path, range, piece);
    }),
  );
}

/** What of a path is left once the free stretches are taken out. */
function keptOf({ points, free }: Path): readonly Range[] {
  let kept: readonly Range[] = [ends(points)];
  for (const [from, to] of free) {
    kept = kept.flatMap(([k0, k1]) =>
      [[k0, Math.min(k1, from)] as const, [Math.max(k0, to), k1] as const].filter(([lo, hi]) => hi - lo > 1e-9),
    );
  }
  return kept;
}

function ends(points: readonly PathPoint[]): Range {
  return [points[0]?.at ?? 0, points[points.length - 1]?.at ?? 0];
}

function pieceStretches({ points, half, slope }: Path, [from, to]: Range, piece: number): readonly Stretch[] {
  const [first, last] = ends(points);
  return points.slice(1).flatMap((b, i) => {
    const a = points[i] ?? b;
    const [lo, hi] = [Math.max(a.at, from), Math.min(b.at, to)];
    if (hi - lo <= 1e-9) return [];
    const [start, end] = [between(a, b, lo), between(a, b, hi)];
    const [dx, dy] = [end.x - start.x, end.y - start.y];
    const square = dx * dx + dy * dy;
    return [
      {
        ...{ x: start.x, y: start.y, dx, dy, perSquare: square === 0 ? 0 : 1 / square },
        ...{ z: start.z, dz: end.z - start.z, half, slope, piece },
        squareStart: lo === from && from > first,
        squareEnd: hi === to && to < last,
      },
    ];
  });
}

/** The point of a straight run at a distance along its path. */
export function between(a: PathPoint, b: PathPoint, at: number): PathPoint {
  const share = b.at === a.at ? 0 : (at - a.at) / (b.at - a.at);
  const mix = (p: number, q: number) => p + (q - p) * share;
  return { at, x: mix(a.x, b.x), y: mix(a.y, b.y), z: mix(a.z, b.z) };
}
