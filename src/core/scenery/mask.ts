import { bounds } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import { insideLoop } from './distance.ts';
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

function mark({ x0, y0, dx, dy, nx, ny }: Grid, mask: Uint8Array, { loop, as }: Marking): void {
  const { low, high } = bounds(loop);
  const first = (value: number, start: number, step: number) => Math.max(0, Math.floor((value - start) / step));
  const last = (value: number, [start, step, count]: readonly [number, number, number]) =>
    Math.min(count - 2, Math.floor((value - start) / step));
  for (let j = first(low[1], y0, dy); j <= last(high[1], [y0, dy, ny]); j += 1) {
    for (let i = first(low[0], x0, dx); i <= last(high[0], [x0, dx, nx]); i += 1) {
      if (insideLoop(loop, [x0 + (i + 0.5) * dx, y0 + (j + 0.5) * dy])) mask[j * (nx - 1) + i] = as;
    }
  }
}
