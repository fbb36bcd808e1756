import type { Point, Polygon } from '../geometry/shapes.ts';
import type { Field } from './field.ts';
import type { Grid } from './grid.ts';
import type { Region } from './land.ts';

export type Ground = { readonly field: Field; readonly grid: Grid; readonly level: number };

/** A corner whose ground is this near its level stays where it is, mm. */
const NEAR = 0.001;

/** Halvings of a cell of 10 mm to less than 0.01 mm. */
const HALVINGS = 11;

/**
 * The corners of a region found on a grid, each moved along its grid line to where the ground itself passes the level:
 * where the ground drops like a wall the grid alone finds a saw of teeth.
 */
export function refinedRegion(region: Region, ground: Ground): Region {
  const move = (loop: readonly Point[]) => loop.map((corner) => refined(corner, ground));
  return region.map(({ outline, holes }): Polygon => ({ outline: move(outline), holes: holes.map(move) }));
}

function refined(corner: Point, ground: Ground): Point {
  const { field, level } = ground;
  if (Math.abs(field(...corner) - level) <= NEAR) return corner;
  const ends = edgeOf(corner, ground.grid);
  if (ends === null) return corner;
  const [a, b] = ends;
  const [high, low] = field(...a) >= field(...b) ? [a, b] : [b, a];
  return field(...high) < level || field(...low) >= level ? corner : crossing([high, low], ground);
}

function crossing([first, second]: readonly [Point, Point], { field, level }: Ground): Point {
  let [high, low] = [first, second];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle: Point = [(high[0] + low[0]) / 2, (high[1] + low[1]) / 2];
    if (field(...middle) >= level) high = middle;
    else low = middle;
  }
  return [(high[0] + low[0]) / 2, (high[1] + low[1]) / 2];
}

/** The two nodes of the grid's line that a corner lies between; null for a corner on a node. */
function edgeOf([x, y]: Point, { x0, y0, dx, dy }: Grid): readonly [Point, Point] | null {
  const [i, j] = [(x - x0) / dx, (y - y0) / dy];
  const [offX, offY] = [Math.abs(i - Math.round(i)), Math.abs(j - Math.round(j))];
  if (Math.max(offX, offY) < 1e-9) return null;
  const at = (column: number, row: number): Point => [x0 + column * dx, y0 + row * dy];
  return offX < offY
    ? [at(Math.round(i), Math.floor(j)), at(Math.round(i), Math.ceil(j))]
    : [at(Math.floor(i), Math.round(j)), at(Math.ceil(i), Math.round(j))];
}
