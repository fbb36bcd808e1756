import type { Point } from '../../geometry/shapes.ts';
import { distance, nearestOnStraight } from '../../geometry/straight.ts';
import { type Block, isIn, runsThrough } from './blocks.ts';

/** A straight of the bus that a thin wire may be joined to. */
export type Straight = { readonly from: Point; readonly to: Point };

/** What lies round a thin wire's way: the bay it keeps to, what it goes round, and where it must not leave the bus. */
export type Around = {
  readonly blocks: readonly Block[];
  /** what stands between the bus and the deck's underside */
  readonly over: readonly Block[];
  readonly inside: (point: Point) => boolean;
};

/** A way found: which straight it leaves, and its corners from there to its end. */
export type TailWay = { readonly straight: number; readonly path: readonly Point[]; readonly length: number };

/** The shortest way from any straight of the bus to a point, round whatever stands between; null where there is none. */
export function tailWay(to: Point, straights: readonly Straight[], around: Around): TailWay | null {
  const direct = nearestJoin(to, straights, around);
  if (direct?.free === true) return { straight: direct.straight, path: [direct.at, to], length: direct.off };
  return roundAbout(to, straights, around);
}

type Join = { readonly straight: number; readonly at: Point; readonly off: number; readonly free: boolean };

function isOpen({ blocks }: Around, from: Point, to: Point): boolean {
  return !blocks.some((block) => runsThrough(block, from, to));
}

/** The nearest place of the bus, whether or not the straight way there is open. */
function nearestJoin(point: Point, straights: readonly Straight[], around: Around): Join | null {
  return straights
    .map(({ from, to }, straight): Join => {
      const at = nearestOnStraight(from, to, point);
      const free = !around.over.some((block) => isIn(block, at)) && isOpen(around, at, point);
      return { straight, at, off: distance(at, point), free };
    })
    .reduce<Join | null>((best, one) => (best === null || one.off < best.off - 1e-6 ? one : best), null);
}

/** The nearest place of each straight that the straight way from a point leads to. */
function openJoins(point: Point, straights: readonly Straight[], around: Around): readonly Join[] {
  return straights.flatMap(({ from, to }, straight): readonly Join[] => {
    const ends = [nearestOnStraight(from, to, point), from, to];
    return ends
      .filter((at) => !around.over.some((block) => isIn(block, at)) && isOpen(around, at, point))
      .map((at) => ({ straight, at, off: distance(at, point), free: true }));
  });
}

/** Through the corners of what stands in the way (Dijkstra, 1959, on the graph of what sees what). */
function roundAbout(to: Point, straights: readonly Straight[], around: Around): TailWay | null {
  if (around.blocks.some((block) => isIn(block, to))) return null;
  const corners = around.blocks
    .flatMap(({ x, y }): readonly Point[] => x.flatMap((cx) => y.map((cy): Point => [cx, cy])))
    .filter((corner) => around.inside(corner) && !around.blocks.some((block) => isIn(block, corner)));
  const points = [to, ...corners];
  const cost = points.map((_, i) => (i === 0 ? 0 : Number.POSITIVE_INFINITY));
  const before = points.map(() => -1);
  const left = new Set(points.keys());
  let best: (TailWay & { readonly corner: number }) | null = null;
  while (left.size > 0) {
    const here = [...left].reduce((a, b) => ((cost[b] ?? 0) < (cost[a] ?? 0) ? b : a));
    const [point, so] = [points[here], cost[here] ?? 0];
    left.delete(here);
    if (point === undefined || !Number.isFinite(so) || so >= (best?.length ?? Number.POSITIVE_INFINITY)) break;
    for (const { straight, at, off } of openJoins(point, straights, around))
      if (best === null || so + off < best.length - 1e-6)
        best = { straight, length: so + off, corner: here, path: [at] };
    for (const next of left) {
      const other = points[next];
      if (other === undefined || !isOpen(around, point, other)) continue;
      const total = so + distance(point, other);
      if (total < (cost[next] ?? 0)) [cost[next], before[next]] = [total, here];
    }
  }
  if (best === null) return null;
  const path = [...best.path];
  for (let at = best.corner; at >= 0; at = before[at] ?? -1) path.push(points[at] ?? to);
  return { straight: best.straight, path, length: best.length };
}
