import { bounds, holds } from '../core/geometry/polygon.ts';
import type { Point, Polygon } from '../core/geometry/shapes.ts';

export type Segment = readonly [Point, Point];

/** A line of a drawing, told apart by whether something nearer covers it. */
export type Told = { readonly segment: Segment; readonly covered: boolean };

function at([[ax, ay], [bx, by]]: Segment, share: number): Point {
  return [ax + (bx - ax) * share, ay + (by - ay) * share];
}

/** Shares of a segment at which it crosses or meets another; where they lie along each other, the other's ends. */
function meetings([[ax, ay], [bx, by]]: Segment, [[cx, cy], [dx, dy]]: Segment): readonly number[] {
  const [ux, uy, vx, vy] = [bx - ax, by - ay, dx - cx, dy - cy];
  const cross = ux * vy - uy * vx;
  const square = ux * ux + uy * uy;
  if (Math.abs(cross) < 1e-9 * square) {
    const aside = (cx - ax) * uy - (cy - ay) * ux;
    if (aside * aside > 1e-12 * square) return [];
    return [
      [cx, cy],
      [dx, dy],
    ].map(([x = 0, y = 0]) => ((x - ax) * ux + (y - ay) * uy) / square);
  }
  const share = ((cx - ax) * vy - (cy - ay) * vx) / cross;
  const other = ((cx - ax) * uy - (cy - ay) * ux) / cross;
  return other >= -1e-9 && other <= 1 + 1e-9 ? [share] : [];
}

/** An area that lines may lie under, with its edges and its box worked out once. */
export type Cover = {
  readonly polygon: Polygon;
  readonly edges: readonly Segment[];
  readonly low: Point;
  readonly high: Point;
};

export function coverOf(polygon: Polygon): Cover {
  const loops = [polygon.outline, ...polygon.holes];
  const edges = loops.flatMap((loop) => loop.map((a, i): Segment => [a, loop[(i + 1) % loop.length] ?? a]));
  return { polygon, edges, ...bounds(polygon.outline) };
}

/** How near to an edge a line still counts as lying on it, mm. */
const ON = 1e-3;

function onEdge([x, y]: Point, edges: readonly Segment[]): boolean {
  return edges.some(([[ax, ay], [bx, by]]) => {
    const [ux, uy] = [bx - ax, by - ay];
    const size = Math.hypot(ux, uy) || 1;
    const along = ((x - ax) * ux + (y - ay) * uy) / size;
    const aside = Math.abs((x - ax) * uy - (y - ay) * ux) / size;
    return aside < ON && along > -ON && along < size + ON;
  });
}

function reaches({ low, high }: Cover, [[ax, ay], [bx, by]]: Segment): boolean {
  return (
    Math.max(ax, bx) >= low[0] - ON &&
    Math.min(ax, bx) <= high[0] + ON &&
    Math.max(ay, by) >= low[1] - ON &&
    Math.min(ay, by) <= high[1] + ON
  );
}

function isOver({ polygon, edges, low, high }: Cover, at: Point): boolean {
  const [x, y] = at;
  if (x < low[0] || x > high[0] || y < low[1] || y > high[1]) return false;
  return holds(polygon, at) && !onEdge(at, edges);
}

/** Shares of a segment at which it meets an area's edges; edges whose boxes are clear of its own cannot. */
function meetingsWith({ edges }: Cover, segment: Segment): readonly number[] {
  const [[ax, ay], [bx, by]] = segment;
  const [left, right] = [Math.min(ax, bx) - ON, Math.max(ax, bx) + ON];
  const [bottom, top] = [Math.min(ay, by) - ON, Math.max(ay, by) + ON];
  const shares: number[] = [];
  for (const edge of edges) {
    const [cx, cy, dx, dy] = [edge[0][0], edge[0][1], edge[1][0], edge[1][1]];
    if ((cx < left && dx < left) || (cx > right && dx > right)) continue;
    if ((cy < bottom && dy < bottom) || (cy > top && dy > top)) continue;
    shares.push(...meetings(segment, edge));
  }
  return shares;
}

/** The stretches of a line that lie under any of the areas, and those that don't; a line along an area's edge shows. */
export function told(segment: Segment, over: readonly Cover[]): readonly Told[] {
  const near = over.filter((cover) => reaches(cover, segment));
  if (near.length === 0) return [{ segment, covered: false }];
  const middle = at(segment, 1 / 2);
  const shares: number[] = [];
  for (const cover of near) {
    const own = meetingsWith(cover, segment);
    if (own.length === 0 && isOver(cover, middle)) return [{ segment, covered: true }];
    shares.push(...own);
  }
  const stops = [0, ...shares.filter((share) => share > 1e-9 && share < 1 - 1e-9).toSorted((a, b) => a - b), 1];
  const stretches = stops.slice(1).map((to, i) => ({ from: stops[i] ?? 0, to }));
  const pieces = stretches
    .filter(({ from, to }) => to - from > 1e-9)
    .map(({ from, to }): Told => {
      const between = at(segment, (from + to) / 2);
      const covered = near.some((cover) => isOver(cover, between));
      return { segment: [at(segment, from), at(segment, to)], covered };
    });
  return merged(pieces);
}

function merged(pieces: readonly Told[]): readonly Told[] {
  const runs: Told[] = [];
  for (const piece of pieces) {
    const last = runs.at(-1);
    if (last === undefined || last.covered !== piece.covered) runs.push(piece);
    else runs[runs.length - 1] = { segment: [last.segment[0], piece.segment[1]], covered: piece.covered };
  }
  return runs;
}
