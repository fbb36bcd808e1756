import type { Point } from '../geometry/shapes.ts';
import { type Grid, valueAt } from './grid.ts';

/** A line of one height; closed ones don't repeat their first point. Higher ground lies to its left. mm. */
export type Contour = { readonly points: readonly Point[]; readonly closed: boolean };

type Side = 0 | 1 | 2 | 3;
const [BOTTOM, RIGHT, TOP, LEFT] = [0, 1, 2, 3] as const;
type Crossing = readonly [from: Side, to: Side];

/**
 * How a line runs through a cell, by which corners are as high as the level: lower left 1, lower right 2, upper right 4,
 * upper left 8 (marching squares). Cells 5 and 10 are saddles and are kept apart here.
 */
const RUNS: readonly (readonly Crossing[])[] = [
  [],
  [[BOTTOM, LEFT]],
  [[RIGHT, BOTTOM]],
  [[RIGHT, LEFT]],
  [[TOP, RIGHT]],
  [
    [BOTTOM, LEFT],
    [TOP, RIGHT],
  ],
  [[TOP, BOTTOM]],
  [[TOP, LEFT]],
  [[LEFT, TOP]],
  [[BOTTOM, TOP]],
  [
    [RIGHT, BOTTOM],
    [LEFT, TOP],
  ],
  [[RIGHT, TOP]],
  [[LEFT, RIGHT]],
  [[BOTTOM, RIGHT]],
  [[LEFT, BOTTOM]],
  [],
];

/** Saddles whose middle, the mean of the corners, is as high as the level: the high corners are joined. */
const JOINED: Readonly<Record<number, readonly Crossing[]>> = {
  5: [
    [BOTTOM, RIGHT],
    [TOP, LEFT],
  ],
  10: [
    [LEFT, BOTTOM],
    [RIGHT, TOP],
  ],
};

/** All lines of one height, closed where they come back and open where they leave the grid; straight within a cell. */
export function contours(grid: Grid, level: number): readonly Contour[] {
  const { next, entered } = links(grid, level);
  const found: Contour[] = [];
  const used = new Uint8Array(next.length);
  for (let edge = 0; edge < next.length; edge += 1) {
    if (next[edge] !== NONE && entered[edge] === 0) found.push(traced(grid, level, { next, used, start: edge }));
  }
  for (let edge = 0; edge < next.length; edge += 1) {
    if (next[edge] !== NONE && used[edge] === 0) found.push(traced(grid, level, { next, used, start: edge }));
  }
  return found.filter(({ points, closed }) => points.length > (closed ? 2 : 1));
}

const NONE = -1;

type Links = { readonly next: Int32Array; readonly entered: Uint8Array };

/** For each edge of the grid the one its line goes to; edges along x first, then those along y. */
function links(grid: Grid, level: number): Links {
  const { nx, ny, values } = grid;
  const next = new Int32Array(2 * nx * ny).fill(NONE);
  const entered = new Uint8Array(2 * nx * ny);
  for (let j = 0; j + 1 < ny; j += 1) {
    for (let i = 0; i + 1 < nx; i += 1) {
      const node = j * nx + i;
      const [a = 0, b = 0, c = 0, d = 0] = [values[node], values[node + 1], values[node + nx + 1], values[node + nx]];
      const cell = (a >= level ? 1 : 0) + (b >= level ? 2 : 0) + (c >= level ? 4 : 0) + (d >= level ? 8 : 0);
      if (cell === 0 || cell === 15) continue;
      for (const [from, to] of runsOf(cell, (a + b + c + d) / 4 >= level)) {
        const target = edgeOf(grid, [i, j], to);
        next[edgeOf(grid, [i, j], from)] = target;
        entered[target] = 1;
      }
    }
  }
  return { next, entered };
}

/** How lines run through a cell; `high` says that its middle is as high as the level. */
function runsOf(cell: number, high: boolean): readonly Crossing[] {
  return (high ? JOINED[cell] : undefined) ?? RUNS[cell] ?? [];
}

function edgeOf({ nx, ny }: Grid, [i, j]: Point, side: Side): number {
  if (side === BOTTOM) return j * nx + i;
  if (side === TOP) return (j + 1) * nx + i;
  return nx * ny + j * nx + (side === RIGHT ? i + 1 : i);
}

type Tracing = { readonly next: Int32Array; readonly used: Uint8Array; readonly start: number };

function traced(grid: Grid, level: number, { next, used, start }: Tracing): Contour {
  const points: Point[] = [];
  let edge = start;
  while (edge !== NONE && used[edge] === 0) {
    used[edge] = 1;
    push(points, crossingAt(grid, level, edge));
    edge = next[edge] ?? NONE;
  }
  const closed = edge === start;
  if (closed && points.length > 1 && same(points[0], points[points.length - 1])) points.pop();
  return { points, closed };
}

function push(points: Point[], point: Point): void {
  if (!same(points[points.length - 1], point)) points.push(point);
}

function same(a: Point | undefined, b: Point | undefined): boolean {
  return a !== undefined && b !== undefined && a[0] === b[0] && a[1] === b[1];
}

/** Where a line crosses an edge, by straight interpolation. */
function crossingAt(grid: Grid, level: number, edge: number): Point {
  const { nx, ny, x0, y0, dx, dy } = grid;
  const upright = edge >= nx * ny;
  const node = upright ? edge - nx * ny : edge;
  const [i, j] = [node % nx, Math.floor(node / nx)];
  const here = valueAt(grid, i, j);
  const there = upright ? valueAt(grid, i, j + 1) : valueAt(grid, i + 1, j);
  const share = (level - here) / (there - here);
  return upright ? [x0 + i * dx, y0 + (j + share) * dy] : [x0 + (i + share) * dx, y0 + j * dy];
}

/** Length of a line, mm. */
export function contourLength({ points, closed }: Contour): number {
  const ends = closed ? [...points, ...points.slice(0, 1)] : points;
  return ends.slice(1).reduce((sum, [x, y], i) => {
    const [px, py] = ends[i] ?? [x, y];
    return sum + Math.hypot(x - px, y - py);
  }, 0);
}
