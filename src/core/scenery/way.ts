import type { Point } from '../geometry/shapes.ts';
import type { Path, PathPoint } from './land.ts';
import { between } from './path-pieces.ts';

/** A way through the land, straight between its points; `line` names the track it runs along, null for a straight cut. mm. */
export type Way = { readonly id: string; readonly line: string | null; readonly points: readonly PathPoint[] };

/** The straight cut from one place to another. */
export function straightWay(id: string, from: Point, to: Point): Way {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const point = (at: number, [x, y]: Point): PathPoint => ({ at, x, y, z: 0 });
  return { id, line: null, points: [point(0, from), point(length, to)] };
}

/** The way along a path between two distances from its start. */
export function wayAlong(id: string, path: Path, range: readonly [number, number]): Way {
  return { id, line: path.id, points: pointsBetween(path.points, range) };
}

/** The points of a path between two distances along it, both ends among them. */
export function pointsBetween(
  points: readonly PathPoint[],
  [from, to]: readonly [number, number],
): readonly PathPoint[] {
  const stops = points.slice(1).flatMap((b, i) => {
    const a = points[i] ?? b;
    const [lo, hi] = [Math.max(a.at, from), Math.min(b.at, to)];
    return hi - lo <= 1e-9 ? [] : [between(a, b, lo), between(a, b, hi)];
  });
  return stops.filter(({ at }, i) => i === 0 || at > (stops[i - 1]?.at ?? at) + 1e-9);
}

/** A straight piece of a way, and how far from the way's start it begins; mm. */
export type WayPiece = { readonly a: PathPoint; readonly b: PathPoint; readonly s: number; readonly length: number };

/** The straight pieces of a way in order; along a line of track lengths are the track's own. */
export function piecesOf({ points }: Pick<Way, 'points'>): readonly WayPiece[] {
  const start = points[0]?.at ?? 0;
  return points.slice(1).map((b, i) => {
    const a = points[i] ?? b;
    return { a, b, s: a.at - start, length: b.at - a.at };
  });
}

/** The place a share along a piece, in plan. */
export function placeOn({ a, b }: WayPiece, share: number): Point {
  return [a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share];
}
