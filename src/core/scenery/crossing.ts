import type { Path, PathPoint } from './land.ts';
import { piecesOf, type Way, type WayPiece } from './way.ts';

/** A path where a way crosses it: distance along the way and along the path, its height, half its width along the way. */
export type Crossed = {
  readonly path: Path;
  readonly s: number;
  readonly at: number;
  readonly z: number;
  readonly half: number;
};

/** Paths that cross at less than this, as a sine, run alongside: their width along the way means nothing. */
const ALONGSIDE = 0.1;

/** Every crossing of a way with paths other than the one it runs along, in order along the way. */
export function crossedBy(way: Way, paths: readonly Path[]): readonly Crossed[] {
  const others = paths.filter(({ id }) => id !== way.line);
  const found = piecesOf(way).flatMap((piece) =>
    others.flatMap((path) =>
      path.points.slice(1).flatMap((q, i) => crossedPiece(piece, path, [path.points[i] ?? q, q]) ?? []),
    ),
  );
  return found.toSorted((a, b) => a.s - b.s);
}

/** Shares along both are told apart by the half-open rule, so that a corner is met once. */
function crossedPiece(piece: WayPiece, path: Path, [p, q]: readonly [PathPoint, PathPoint]): Crossed | null {
  const { a, b, s, length } = piece;
  const [ax, ay] = [b.x - a.x, b.y - a.y];
  const [bx, by] = [q.x - p.x, q.y - p.y];
  const turn = ax * by - ay * bx;
  const sine = Math.abs(turn) / (Math.hypot(ax, ay) * Math.hypot(bx, by));
  if (!(sine > (path.half > 0 ? ALONGSIDE : 1e-9))) return null;
  const [ox, oy] = [p.x - a.x, p.y - a.y];
  const [own, other] = [(ox * by - oy * bx) / turn, (ox * ay - oy * ax) / turn];
  if (own < 0 || own >= 1 || other < 0 || other >= 1) return null;
  const mix = (from: number, to: number) => from + (to - from) * other;
  return { path, s: s + length * own, at: mix(p.at, q.at), z: mix(p.z, q.z), half: path.half / sine };
}
