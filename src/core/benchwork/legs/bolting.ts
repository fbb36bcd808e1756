import type { Vector } from '../../geometry/shapes.ts';
import type { Feature } from '../../stock/part.ts';
import { type Fitting, NOTHING, type Site } from '../fitting.ts';
import { boltHole } from '../hardware/bolts.ts';
import { bolted } from '../hardware/driven.ts';
import { tidy } from '../machining.ts';
import type { Outside } from '../outside.ts';
import { type BoardCut, boardOf, onBoard, sideView } from '../side-view.ts';
import { boltHeights, legThread } from './figures.ts';

/** Bolts from outside through a board of the frame and whatever of a leg lies behind it, at one distance from the left. */
export type Bolting = {
  readonly side: Outside;
  readonly u: number;
  readonly behind: readonly string[];
  readonly thick: number;
};

/** Holes in the frame's board, bolts, nuts and washers. */
export function boltedOn(site: Site, { side, u, behind, thick }: Bolting): Fitting {
  const heights = boltHeights(site);
  const thread = legThread(site.goods);
  const board = boardOf(side);
  const driven = bolted(
    site.goods,
    {
      view: sideView(site.grid, side),
      holds: `bolted.${board}.${behind[0]}`,
      heads: heights.map((w): Vector => [u, 0, w]),
      direction: [0, 1, 0],
      through: [board, ...behind],
    },
    { thread, grip: tidy(site.grid.t + thick) },
  );
  const cuts = heights.map(
    (w): BoardCut => ({ board, feature: hole(onBoard(site.grid, side, [u, w]), thread), marks: [] }),
  );
  return { ...NOTHING, ...driven, cuts };
}

/** A hole for a leg's bolt through one board. */
export function hole(at: readonly [number, number], thread: number): Feature {
  return { id: '', kind: 'hole', at, diameter: boltHole(thread), side: 'face', depth: 'through' };
}
