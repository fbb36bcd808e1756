import { loopArea } from '../geometry/polygon.ts';
import type { Point, Polygon } from '../geometry/shapes.ts';
import { contours } from './contour.ts';
import { insideLoop } from './distance.ts';
import { type Grid, valueAt } from './grid.ts';
import type { Region } from './land.ts';

/** All ground of the grid at `level` or higher, closed along the grid's border; mm. */
export function regionAbove(grid: Grid, level: number): Region {
  const rim = padded(grid, level - 1);
  const flat = rings(rim, level).map((ring) => ring.map((point) => withinGrid(grid, point)));
  return nested(flat.map(withoutRepeats).filter((ring) => ring.length > 2));
}

/** A band of ground from `from` up to `to`; a sheet of the relief between two contours. */
export type Band = { readonly from: number; readonly to: number; readonly region: Region };

/** The filled bands between rising levels: each region reaches up to the top, higher bands lie on it. */
export function filledBands(grid: Grid, levels: readonly number[]): readonly Band[] {
  return levels.map((from, i) => ({
    from,
    to: levels[i + 1] ?? Number.POSITIVE_INFINITY,
    region: regionAbove(grid, from),
  }));
}

/** The grid with one more node all round, lower than the level, so that every line closes. */
function padded(grid: Grid, low: number): Grid {
  const [nx, ny] = [grid.nx + 2, grid.ny + 2];
  const values = new Float64Array(nx * ny).fill(low);
  for (let j = 0; j < grid.ny; j += 1) {
    for (let i = 0; i < grid.nx; i += 1) values[(j + 1) * nx + i + 1] = valueAt(grid, i, j);
  }
  return { ...grid, x0: grid.x0 - grid.dx, y0: grid.y0 - grid.dy, nx, ny, values };
}

function rings(grid: Grid, level: number): readonly (readonly Point[])[] {
  return contours(grid, level).map(({ points }) => points);
}

/** Points in the added rim move onto the border. */
function withinGrid({ x0, y0, dx, dy, nx, ny }: Grid, [x, y]: Point): Point {
  const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
  return [clamp(x, x0, x0 + (nx - 1) * dx), clamp(y, y0, y0 + (ny - 1) * dy)];
}

function withoutRepeats(ring: readonly Point[]): readonly Point[] {
  return ring.filter(([x, y], i) => {
    const [px, py] = ring[(i + ring.length - 1) % ring.length] ?? [Number.NaN, Number.NaN];
    return x !== px || y !== py;
  });
}

/** Rings to polygons: counter-clockwise ones are outlines, clockwise ones holes of the smallest outline around them. */
function nested(loops: readonly (readonly Point[])[]): Region {
  const sized = loops.map((loop) => ({ loop, area: loopArea(loop) }));
  const outlines = sized.filter(({ area }) => area > 0).sort((a, b) => a.area - b.area);
  const holes = sized.filter(({ area }) => area < 0);
  const owner = holes.map(({ loop, area }) =>
    outlines.findIndex((one) => one.area > -area && insideLoop(one.loop, loop[0] ?? [0, 0])),
  );
  return outlines.map(
    ({ loop }, i): Polygon => ({
      outline: loop,
      holes: holes.filter((_hole, h) => owner[h] === i).map((hole) => hole.loop),
    }),
  );
}
