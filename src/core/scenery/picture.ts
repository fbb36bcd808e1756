import type { Point } from '../geometry/shapes.ts';
import { contours } from './contour.ts';
import type { Field } from './field.ts';
import type { Grid } from './grid.ts';
import type { LevelLines } from './model.ts';
import { simplifiedLine, simplifiedLoop } from './simplified.ts';

/** Lines this far apart in height, mm, with a dozen at most. */
const INTERVAL = 10;
const MOST_LINES = 12;
const BY_EYE = 0.2;

/** Contours at round heights, the lowest at the foot. */
export function levelLines(grid: Grid, highest: number): readonly LevelLines[] {
  if (highest <= 0) return [];
  const interval = INTERVAL * Math.ceil(highest / INTERVAL / MOST_LINES);
  const levels = Array.from({ length: Math.floor(highest / interval) + 1 }, (_, i) => (i === 0 ? FOOT : i * interval));
  return levels.map((level) => ({
    level: level === FOOT ? 0 : level,
    lines: contours(grid, level).map(({ points, closed }) => ({
      points: closed ? simplifiedLoop(points, BY_EYE) : simplifiedLine(points, BY_EYE),
      closed,
    })),
  }));
}

/** The foot of the land is drawn where it is just above the deck, mm. */
const FOOT = 0.01;

/** Light on the ground at a point from the upper left, 0 in shade to 1 in full light (Lambert); for a relief picture. */
export function lightOn(field: Field, [x, y]: Point): number {
  const step = 1;
  const gx = (field(x + step, y) - field(x - step, y)) / (2 * step);
  const gy = (field(x, y + step) - field(x, y - step)) / (2 * step);
  const light = [-0.5, 0.5, Math.SQRT1_2] as const;
  return Math.max(0, (-gx * light[0] - gy * light[1] + light[2]) / Math.hypot(gx, gy, 1));
}
