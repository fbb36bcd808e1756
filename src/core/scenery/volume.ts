import { type Grid, valueAt } from './grid.ts';
import { type Mask, wholeGrid } from './mask.ts';

/** A slice of the ground between two heights, mm. */
export type Slice = { readonly from: number; readonly to: number };

/** Volume of the ground between two heights over the cells that count, by the trapezoidal rule; mm3. */
export function volumeBetween(grid: Grid, { from, to }: Slice, mask: Mask = wholeGrid(grid)): number {
  const inside = (height: number) => Math.min(Math.max(height, from), to) - from;
  let sum = 0;
  eachCell(grid, mask, (a, b, c, d) => {
    sum += inside(a) + inside(b) + inside(c) + inside(d);
  });
  return (sum / 4) * grid.dx * grid.dy;
}

/** Volume of all ground above deck top, mm3. */
export function groundVolume(grid: Grid, mask: Mask = wholeGrid(grid)): number {
  return volumeBetween(grid, { from: 0, to: Number.POSITIVE_INFINITY }, mask);
}

type Corners = (a: number, b: number, c: number, d: number) => void;

/** Heights of a cell's corners, counter-clockwise from its lower left. */
function eachCell(grid: Grid, mask: Mask, visit: Corners): void {
  const { nx, ny } = grid;
  for (let j = 0; j + 1 < ny; j += 1) {
    for (let i = 0; i + 1 < nx; i += 1) {
      if (mask[j * (nx - 1) + i] !== 1) continue;
      visit(valueAt(grid, i, j), valueAt(grid, i + 1, j), valueAt(grid, i + 1, j + 1), valueAt(grid, i, j + 1));
    }
  }
}

/** How much larger the ground's own surface is than its plan over the cells that count; 1 when flat or none counts. */
export function slopeRatio(grid: Grid, mask: Mask): number {
  const { dx, dy } = grid;
  const up = (height: number) => Math.max(0, height);
  let [surface, cells] = [0, 0];
  eachCell(grid, mask, (a, b, c, d) => {
    const near = Math.hypot((up(b) - up(a)) * dy, (up(d) - up(a)) * dx, dx * dy);
    const far = Math.hypot((up(d) - up(c)) * dy, (up(b) - up(c)) * dx, dx * dy);
    surface += (near + far) / 2;
    cells += 1;
  });
  return cells === 0 ? 1 : surface / (cells * dx * dy);
}

/** The highest ground of the cells that count; 0 when there is none. mm. */
export function highestGround(grid: Grid, mask: Mask = wholeGrid(grid)): number {
  let most = 0;
  eachCell(grid, mask, (a, b, c, d) => {
    most = Math.max(most, a, b, c, d);
  });
  return most;
}
