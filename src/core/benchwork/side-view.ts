import { within } from '../geometry/pose.ts';
import type { Point, Pose, Vector } from '../geometry/shapes.ts';
import type { Feature, MatingMark } from '../stock/part.ts';
import type { Grid } from './grid.ts';
import { tidy } from './machining.ts';
import type { Outside } from './outside.ts';

const UP: Vector = [0, 0, 1];

/** As one stands before a side: x from its left, y inward from its outer face, z up from the floor; in bench coordinates. */
export function sideView(grid: Grid, side: Outside): Pose {
  switch (side) {
    case 'front':
      return { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: UP };
    case 'back':
      return { origin: [grid.length, grid.width, 0], x: [-1, 0, 0], y: [0, -1, 0], z: UP };
    case 'left':
      return { origin: [0, grid.width, 0], x: [0, -1, 0], y: [1, 0, 0], z: UP };
    case 'right':
      return { origin: [grid.length, 0, 0], x: [0, 1, 0], y: [-1, 0, 0], z: UP };
  }
}

/** Length of the bench as seen from a side, mm. */
export function viewLength(grid: Grid, side: Outside): number {
  return side === 'front' || side === 'back' ? grid.length : grid.width;
}

/** The frame's board on a side. */
export function boardOf(side: Outside): string {
  return side === 'front' || side === 'back' ? `side.${side}` : `end.${side}`;
}

/** A place before a side, from the left and from the floor, as a point of its board, whose left end is at the view's right. */
export function onBoard(grid: Grid, side: Outside, [u, w]: Point): Point {
  const inset = side === 'front' || side === 'back' ? 0 : tidy(grid.t - grid.dado);
  return [tidy(viewLength(grid, side) - inset - u), tidy(w - grid.sideUnderside)];
}

/** A box before a side, as a box of the bench: smallest and largest corners, mm. */
export function inBench(view: Pose, min: Vector, max: Vector): { readonly min: Vector; readonly max: Vector } {
  const [a, b] = [tidyPose(within(view, at(min))).origin, tidyPose(within(view, at(max))).origin];
  const low = (i: 0 | 1 | 2) => Math.min(a[i], b[i]);
  const high = (i: 0 | 1 | 2) => Math.max(a[i], b[i]);
  return { min: [low(0), low(1), low(2)], max: [high(0), high(1), high(2)] };
}

function at(origin: Vector): Pose {
  return { origin, x: [1, 0, 0], y: [0, 1, 0], z: UP };
}

/** A pose given before a side, in bench coordinates. */
export function placedBefore(view: Pose, pose: Pose): Pose {
  return tidyPose(within(view, pose));
}

function tidyPose({ origin, x, y, z }: Pose): Pose {
  const clean = ([a, b, c]: Vector): Vector => [tidy(a), tidy(b), tidy(c)];
  return { origin: clean(origin), x: clean(x), y: clean(y), z: clean(z) };
}

/** What a fitting cuts into a board of the frame, and what is written beside it. */
export type BoardCut = { readonly board: string; readonly feature: Feature; readonly marks: readonly MatingMark[] };
