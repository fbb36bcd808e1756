import { bounds } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import { chord } from './distance.ts';
import type { Grid } from './grid.ts';

/** Which cells of a grid count, 1 for yes, row by row; a cell counts by its middle. */
export type Mask = Uint8Array;

/** Every cell of a grid. */
export function wholeGrid({ nx, ny }: Grid): Mask {
  return new Uint8Array((nx - 1) * (ny - 1)).fill(1);
}

/** The cells whose middle lies in one of the loops and in none of `without`. */
export function cellsWithin(
  grid: Grid,
  loops: readonly (readonly Point[])[],
  without: readonly (readonly Point[])[] = [],
): Mask {
  const mask = new Uint8Array((grid.nx - 1) * (grid.ny - 1));
  for (const loop of loops) mark(grid, mask, { loop, as: 1 });
  for (const loop of without) mark(grid, mask, { loop, as: 0 });
  return mask;
}

/** Cells of two masks both. */
export function both(a: Mask, b: Mask): Mask {
  return a.map((value, i) => value & (b[i] ?? 0));
}

type Marking = { readonly loop: readonly Point[]; readonly as: 0 | 1 };

/** Row by row: a cell's middle lies inside between the first and second crossing of its row, the third and fourth, and so on. */
function mark(grid: Grid, mask: Uint8Array, { loop, as }: Marking): void {
  const { x0, y0, dx, dy, nx, ny } = grid;
  const { low, high } = bounds(loop);
  const first = Math.max(0, Math.floor((low[1] - y0) / dy));
  const last = Math.min(ny - 2, Math.floor((high[1] - y0) / dy));
  for (let j = first; j <= last; j += 1) {
    const crossings = chord(loop, y0 + (j + 0.5) * dy);
    for (let pair = 0; pair + 1 < crossings.length; pair += 2) {
      const [from = 0, to = 0] = [crossings[pair], crossings[pair + 1]];
      const start = Math.max(0, Math.ceil((from - x0) / dx - 0.5));
      const end = Math.min(nx - 2, Math.floor((to - x0) / dx - 0.5));
      for (let i = start; i <= end; i += 1) mask[j * (nx - 1) + i] = as;
    }
  }
}
