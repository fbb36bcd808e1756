import type { Point, Polygon } from '../geometry/shapes.ts';
import { nearestOnStretch } from './distance.ts';
import type { Region } from './land.ts';

/** A region with fewer corners, no line moved by more than `tolerance`; mm. */
export function simplifiedRegion(region: Region, tolerance: number): Region {
  return region.map(
    ({ outline, holes }): Polygon => ({
      outline: simplifiedLoop(outline, tolerance),
      holes: holes.map((hole) => simplifiedLoop(hole, tolerance)),
    }),
  );
}

/** A loop with fewer corners: its two ends farthest apart stay, and between them what the tolerance needs. */
export function simplifiedLoop(loop: readonly Point[], tolerance: number): readonly Point[] {
  const [first] = loop;
  if (first === undefined || loop.length < 5) return loop;
  const far = loop.reduce((best, point, i) => (gap(point, first) > gap(loop[best] ?? first, first) ? i : best), 0);
  const there = simplifiedLine(loop.slice(0, far + 1), tolerance);
  const back = simplifiedLine([...loop.slice(far), first], tolerance);
  const kept = [...there.slice(0, -1), ...back.slice(0, -1)];
  return kept.length < 3 ? loop : kept;
}

function gap(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/** A line with fewer points (Douglas and Peucker, 1973); its ends stay. */
export function simplifiedLine(line: readonly Point[], tolerance: number): readonly Point[] {
  const keep = new Uint8Array(line.length).fill(0);
  const spans: [number, number][] = [[0, line.length - 1]];
  keep[0] = 1;
  keep[line.length - 1] = 1;
  for (let span = spans.pop(); span !== undefined; span = spans.pop()) {
    const [from, to] = span;
    const { at, off } = farthest(line, from, to);
    if (off <= tolerance) continue;
    keep[at] = 1;
    spans.push([from, at], [at, to]);
  }
  return line.filter((_point, i) => keep[i] === 1);
}

function farthest(line: readonly Point[], from: number, to: number): { readonly at: number; readonly off: number } {
  let [at, off] = [from, 0];
  const [a = [0, 0], b = [0, 0]] = [line[from], line[to]];
  for (let i = from + 1; i < to; i += 1) {
    const { distance } = nearestOnStretch(a, b, line[i] ?? a);
    if (distance > off) [at, off] = [i, distance];
  }
  return { at, off };
}
