import type { Point } from '../geometry/shapes.ts';
import type { Field } from './field.ts';

/** Heights at the nodes of a rectangle, row by row from its lower left; node (i, j) stands at x0 + i dx, y0 + j dy. mm. */
export type Grid = {
  readonly x0: number;
  readonly y0: number;
  readonly dx: number;
  readonly dy: number;
  readonly nx: number;
  readonly ny: number;
  readonly values: Float64Array;
};

export type Domain = { readonly low: Point; readonly high: Point };

/** A field sampled over a domain, nodes on its edges, at most `step` apart; mm. */
export function sampled(field: Field, { low, high }: Domain, step: number): Grid {
  const [wide, deep] = [high[0] - low[0], high[1] - low[1]];
  const nx = Math.max(2, Math.ceil(wide / step - 1e-9) + 1);
  const ny = Math.max(2, Math.ceil(deep / step - 1e-9) + 1);
  const [dx, dy] = [wide / (nx - 1), deep / (ny - 1)];
  const values = new Float64Array(nx * ny);
  for (let j = 0; j < ny; j += 1) {
    for (let i = 0; i < nx; i += 1) values[j * nx + i] = field(low[0] + i * dx, low[1] + j * dy);
  }
  return { x0: low[0], y0: low[1], dx, dy, nx, ny, values };
}

/** Finest and coarsest spacing of nodes, mm, and how many go along the longer side. */
const FINEST = 1;
const COARSEST = 10;
const NODES = 400;

/** The spacing that gives the longer side of a domain about 400 nodes; mm. */
export function usualStep({ low, high }: Domain): number {
  const longest = Math.max(high[0] - low[0], high[1] - low[1]);
  return Math.min(COARSEST, Math.max(FINEST, longest / NODES));
}

/** The height of a node; a node outside has none. */
export function valueAt(grid: Grid, i: number, j: number): number {
  return grid.values[j * grid.nx + i] ?? Number.NEGATIVE_INFINITY;
}
