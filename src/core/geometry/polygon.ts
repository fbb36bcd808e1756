import type { Point, Polygon } from './shapes.ts';

/** Twice the area a loop runs round; positive counter-clockwise, mm2. */
function doubleArea(loop: readonly Point[]): number {
  let sum = 0;
  for (const [i, [x, y]] of loop.entries()) {
    const [nextX, nextY] = loop[i + 1] ?? loop[0] ?? [x, y];
    sum = sum + x * nextY - nextX * y;
  }
  return sum;
}

/** Area of one loop, positive counter-clockwise, mm2; the shoelace formula. */
export function loopArea(loop: readonly Point[]): number {
  return doubleArea(loop) / 2;
}

/** Area of a polygon less its holes, mm2. */
export function area(polygon: Polygon): number {
  const holes = polygon.holes.reduce((sum, hole) => sum + Math.abs(loopArea(hole)), 0);
  return Math.abs(loopArea(polygon.outline)) - holes;
}

/** First moments of one loop about the axes, mm3, and its area; both signed by its direction. */
function moments(loop: readonly Point[]): readonly [number, number, number] {
  return loop.reduce<readonly [number, number, number]>(
    ([mx, my, a], [x, y], i) => {
      const [nextX, nextY] = loop[(i + 1) % loop.length] ?? [x, y];
      const cross = x * nextY - nextX * y;
      return [mx + ((x + nextX) * cross) / 6, my + ((y + nextY) * cross) / 6, a + cross / 2];
    },
    [0, 0, 0],
  );
}

/** Centre of area of a polygon with holes, mm; null when it has no area. */
export function centroid(polygon: Polygon): Point | null {
  const [mx, my, a] = [directed(polygon.outline, 1), ...polygon.holes.map((hole) => directed(hole, -1))]
    .map(moments)
    .reduce(([sx, sy, sa], [x, y, one]) => [sx + x, sy + y, sa + one], [0, 0, 0]);
  return a > 0 ? [mx / a, my / a] : null;
}

/** The loop running counter-clockwise (1) or clockwise (-1). */
export function directed(loop: readonly Point[], way: 1 | -1): readonly Point[] {
  return doubleArea(loop) * way >= 0 ? loop : [...loop].reverse();
}

/** A rectangle, counter-clockwise from its lower left corner, mm. */
export function rectangle(low: Point, high: Point): readonly Point[] {
  return [low, [high[0], low[1]], high, [low[0], high[1]]];
}

/** Whether a side of a loop runs neither along nor across, mm. */
export function isAskew(loop: readonly Point[]): boolean {
  return loop.some(([x, y], i) => {
    const [nextX, nextY] = loop[(i + 1) % loop.length] ?? [x, y];
    return Math.abs(nextX - x) > 1e-3 && Math.abs(nextY - y) > 1e-3;
  });
}

/** The sides of a rectangle however it stands, from its first corner on; of any other loop the box about it; mm. */
export function loopSize(loop: readonly Point[]): readonly [number, number] {
  const [a, b, c, d] = loop;
  const { low, high } = bounds(loop);
  const box = [high[0] - low[0], high[1] - low[1]] as const;
  if (loop.length !== 4 || a === undefined || b === undefined || c === undefined || d === undefined) return box;
  const sides = [Math.hypot(b[0] - a[0], b[1] - a[1]), Math.hypot(c[0] - b[0], c[1] - b[1])] as const;
  const isSquare = Math.abs((b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1])) < 1e-6 * sides[0] * sides[1];
  const closes = Math.hypot(a[0] + c[0] - b[0] - d[0], a[1] + c[1] - b[1] - d[1]) < 1e-6 * (sides[0] + sides[1]);
  return isSquare && closes && isAskew(loop) ? sides : box;
}

/** A circle as a polygon of `sides` corners on it, counter-clockwise, mm. */
export function circle(centre: Point, radius: number, sides: number): readonly Point[] {
  return Array.from({ length: sides }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / sides;
    return [centre[0] + radius * Math.cos(turn), centre[1] + radius * Math.sin(turn)];
  });
}

/** Smallest and largest x and y of points, mm. */
export function bounds(points: readonly Point[]): { readonly low: Point; readonly high: Point } {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    if (x < x0) x0 = x;
    if (x > x1) x1 = x;
    if (y < y0) y0 = y;
    if (y > y1) y1 = y;
  }
  return { low: [x0, y0], high: [x1, y1] };
}

/** The part of a convex loop where `normal . p <= offset`; normal of unit length, mm (Sutherland and Hodgman, 1974). */
export function clipConvex(
  loop: readonly Point[],
  line: { readonly normal: Point; readonly offset: number },
): readonly Point[] {
  const beyond = ([x, y]: Point) => line.normal[0] * x + line.normal[1] * y - line.offset;
  return loop.flatMap((p, i): readonly Point[] => {
    const next = loop[(i + 1) % loop.length] ?? p;
    const [here, there] = [beyond(p), beyond(next)];
    const inside = here <= 0 ? [p] : [];
    if (here <= 0 === there <= 0) return inside;
    const share = here / (here - there);
    return [...inside, [p[0] + (next[0] - p[0]) * share, p[1] + (next[1] - p[1]) * share]];
  });
}

/** Whether a point lies inside a polygon and outside its holes; points on the edge may go either way. */
export function holds(polygon: Polygon, point: Point): boolean {
  return within(polygon.outline, point) && !polygon.holes.some((hole) => within(hole, point));
}

/** Crossing count of a ray to the right. */
function within(loop: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  let [bx, by] = loop.at(-1) ?? [0, 0];
  for (const [ax, ay] of loop) {
    if (ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay)) inside = !inside;
    [bx, by] = [ax, ay];
  }
  return inside;
}
