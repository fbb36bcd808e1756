import { TOUCH } from '../geometry/overlap.ts';
import type { Vector } from '../geometry/shapes.ts';
import { boxClashOnLine, clashOnLine } from '../geometry/sweep.ts';
import { dot, times } from '../geometry/vector.ts';
import type { Body } from './body.ts';

/**
 * How far `moving` goes along a direction until it touches `still`, mm, measured on the solids: negative when it already
 * stands in it on that side, null when nothing stops it.
 */
export function gapAlong(moving: Body, still: Body, direction: Vector): number | null {
  let least: number | null = null;
  for (const piece of moving.pieces) {
    for (const other of still.pieces) {
      const near = boxClashOnLine(piece.box, other.box, direction);
      if (near === null || near.to <= 0 || (least !== null && near.from - TOUCH >= least)) continue;
      const clash = clashOnLine(piece, other, direction);
      if (clash === null || clash.to <= 0 || (clash.from < 0 && -clash.from > clash.to)) continue;
      const gap = clash.from - TOUCH;
      if (least === null || gap < least) least = gap;
    }
  }
  return least;
}

/** Play along one axis: the gap each way, and what both make together when it is held on both sides; mm. */
export type Play = {
  readonly axis: Vector;
  readonly ahead: number | null;
  readonly behind: number | null;
};

/** The play of a body against its mate along every axis of the two, each line once. */
export function playsOf(moving: Body, still: Body): readonly Play[] {
  const axes: Vector[] = [];
  for (const axis of [...still.axes, ...moving.axes]) {
    if (!axes.some((known) => Math.abs(dot(known, axis)) > 1 - 1e-9)) axes.push(axis);
  }
  return axes.map((axis) => ({
    axis,
    ahead: gapAlong(moving, still, axis),
    behind: gapAlong(moving, still, times(axis, -1)),
  }));
}

/** Both gaps together when the body is held on both sides along the axis, else null; mm. */
export function heldPlay({ ahead, behind }: Play): number | null {
  return ahead === null || behind === null ? null : ahead + behind;
}

/** The gap on the only side that stops the body along the axis, or null; mm. */
export function stopGap({ ahead, behind }: Play): number | null {
  if (ahead !== null && behind !== null) return null;
  return ahead ?? behind;
}
