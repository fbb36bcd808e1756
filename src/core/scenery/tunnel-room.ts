import type { Point } from '../geometry/shapes.ts';
import type { Path, PathPoint, Stretch } from './land.ts';
import { type Headroom, LEAST_ROOF } from './line-findings.ts';
import { pointsBetween } from './way.ts';

/**
 * What a tunnel takes out of one layer over one loop of its plan: all of it, its top down to the roadbed, or its
 * underside up to what trains keep free; `deep` is how much, mm.
 */
export type LayerRoom = {
  readonly tunnel: string;
  readonly takes: 'all' | 'top' | 'underside';
  readonly loop: readonly Point[];
  readonly deep: number;
};

export type Tunnels = {
  readonly tunnels: readonly Stretch[];
  readonly paths: readonly Path[];
  readonly headroom: Headroom;
};

type Slice = { readonly from: number; readonly to: number };

/** Foam thinner than this under a roadbed is cut away and packed; common practice, no source. mm. */
const LEAST_BED = 5;

/** What the tunnels take out of the layer between two heights; loops are as wide as the formation. */
export function tunnelRoom({ tunnels, paths, headroom }: Tunnels, slice: Slice): readonly LayerRoom[] {
  return tunnels.flatMap(({ id, line, from, to }) => {
    const path = paths.find((one) => one.id === line);
    if (path === undefined || headroom.train <= 0) return [];
    const points = pointsBetween(path.points, [Math.min(from, to), Math.max(from, to)]);
    return runsOf(points, (a, b) => taken(slice, headroom.train, [a, b])).map(({ run, takes }) => ({
      ...{ tunnel: id, takes, loop: pathStrip(lengthened(run), path.half) },
      deep: Math.max(...run.map(({ z }) => deepAt(slice, takes, [z, z + headroom.train]))),
    }));
  });
}

type Takes = LayerRoom['takes'];

/** What a short stretch of tunnel takes of a layer; null for nothing. */
function taken({ from, to }: Slice, train: number, [a, b]: readonly [PathPoint, PathPoint]): Takes | null {
  const [bed, top] = [Math.min(a.z, b.z), Math.max(a.z, b.z) + train];
  if (to <= bed || from >= top) return null;
  if (bed - from >= LEAST_BED) return 'top';
  return to - top >= LEAST_ROOF ? 'underside' : 'all';
}

function deepAt({ from, to }: Slice, takes: Takes, [bed, top]: Point): number {
  if (takes === 'top') return Math.min(to, top) - bed;
  return takes === 'underside' ? top - from : to - from;
}

type Run = { readonly takes: Takes; readonly run: readonly PathPoint[] };

/** Neighbouring stretches that take the same, as one. */
function runsOf(points: readonly PathPoint[], takes: (a: PathPoint, b: PathPoint) => Takes | null): readonly Run[] {
  const runs: { takes: Takes | null; run: PathPoint[] }[] = [];
  points.slice(1).forEach((b, i) => {
    const a = points[i] ?? b;
    const here = takes(a, b);
    const last = runs[runs.length - 1];
    if (last !== undefined && last.takes === here) last.run.push(b);
    else runs.push({ takes: here, run: [a, b] });
  });
  return runs.flatMap(({ takes: here, run }) => (here === null ? [] : [{ takes: here, run }]));
}

/** A strip runs this much past its ends, so that no sliver of foam closes a portal, mm. */
const PAST = 10;

/** A run with its first and last stretch made longer. */
function lengthened(run: readonly PathPoint[]): readonly PathPoint[] {
  const [first, second, last, before] = [run[0], run[1], run[run.length - 1], run[run.length - 2]];
  if (first === undefined || second === undefined || last === undefined || before === undefined) return run;
  const past = (end: PathPoint, inner: PathPoint): PathPoint => {
    const size = Math.hypot(end.x - inner.x, end.y - inner.y) || 1;
    return { ...end, x: end.x + ((end.x - inner.x) / size) * PAST, y: end.y + ((end.y - inner.y) / size) * PAST };
  };
  return [past(first, second), ...run.slice(1, -1), past(last, before)];
}

/** The loop `half` to both sides of a run. */
export function pathStrip(run: readonly PathPoint[], half: number): readonly Point[] {
  const sides = run.map((point, i) => {
    const [before, after] = [run[i - 1] ?? point, run[i + 1] ?? point];
    const [dx, dy] = [after.x - before.x, after.y - before.y];
    const size = Math.hypot(dx, dy) || 1;
    const [nx, ny] = [(-dy / size) * half, (dx / size) * half];
    return { left: [point.x + nx, point.y + ny] as const, right: [point.x - nx, point.y - ny] as const };
  });
  return [...sides.map(({ right }) => right), ...sides.toReversed().map(({ left }) => left)];
}
