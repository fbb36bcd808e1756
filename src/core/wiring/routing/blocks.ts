import type { Point } from '../../geometry/shapes.ts';
import { meets, outlineOf, type Range, type Site } from './site.ts';

/** What a thin wire goes round, from above; mm. */
export type Block = { readonly x: Range; readonly y: Range };

/** Room between a thin wire and what it passes; common practice, no source. mm */
export const PAST = 4;

/** All that stands between two heights, each grown by what a thin wire keeps off it. */
export function blocksBetween({ obstructions, walls }: Site, z: Range): readonly Block[] {
  const boxes = obstructions
    .filter(({ box }) => meets([box.min[2], box.max[2]], z))
    .map(({ box }): Block => ({ x: [box.min[0], box.max[0]], y: [box.min[1], box.max[1]] }));
  return [...boxes, ...walls.filter((wall) => meets(wall.z, z)).map(outlineOf)].map(({ x, y }) => ({
    x: [x[0] - PAST, x[1] + PAST],
    y: [y[0] - PAST, y[1] + PAST],
  }));
}

/** Whether a point lies inside a block. */
export function isIn({ x, y }: Block, [px, py]: Point): boolean {
  return px > x[0] + 1e-6 && px < x[1] - 1e-6 && py > y[0] + 1e-6 && py < y[1] - 1e-6;
}

/** Whether a straight runs through the inside of a block (Liang and Barsky, 1984). */
export function runsThrough({ x, y }: Block, from: Point, to: Point): boolean {
  let [enter, leave] = [0, 1];
  for (const [i, range] of [x, y].entries()) {
    const [a, b] = i === 0 ? [from[0], to[0]] : [from[1], to[1]];
    const [low, high] = [range[0] + 1e-6, range[1] - 1e-6];
    if (Math.abs(b - a) < 1e-9) {
      if (a <= low || a >= high) return false;
      continue;
    }
    const [s, t] = [(low - a) / (b - a), (high - a) / (b - a)];
    enter = Math.max(enter, Math.min(s, t));
    leave = Math.min(leave, Math.max(s, t));
  }
  return leave - enter > 1e-9;
}
