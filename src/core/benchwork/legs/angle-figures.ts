import type { Site } from '../fitting.ts';
import { dadoDepth, slotWidth, tidy } from '../machining.ts';
import type { LegFigures } from './figures.ts';
import { standHeight } from './stand.ts';

/** Points of a mitre across a board of this width: full on one side, less by its thickness on the other, the cut between; mm. */
export function mitrePoints(
  width: number,
  thickness: number,
): { readonly long: number; readonly short: number; readonly face: number } {
  return { long: width, short: tidy(width - thickness), face: thickness * Math.SQRT2 };
}

/** How far the top block lies below the halves' tops, so that the fin has wood to be glued to; common practice, no source. mm. */
const SET_DOWN = 100;
/** What a half keeps at its foot, of its width, where nobody says; and the wood above a taper's end, mm. */
const FOOT_SHARE = 0.75;
const ABOVE_TAPER = 20;

/** An angle leg's heights from its foot, and sizes across; mm. */
export type AngleFigures = {
  /** from the floor */
  readonly foot: number;
  readonly length: number;
  readonly footWidth: number;
  readonly dado: number;
  readonly slot: number;
  readonly padSlot: number;
  /** of the bit that squares the corners a block seats in */
  readonly relief: number;
  /** side of the square blocks and pads */
  readonly block: number;
  /** undersides of blocks */
  readonly blocks: readonly number[];
  readonly taperEnd: number;
  readonly fin: { readonly low: number; readonly long: number; readonly wide: number };
};

export function angleFigures({ grid, step }: Site, legs: LegFigures, leg: string): AngleFigures {
  const { t, width, wood, input } = legs;
  const foot = standHeight(input.stand, leg);
  const length = tidy(grid.sideUnderside - foot);
  const footWidth = input.footWidth ?? tidy(FOOT_SHARE * width);
  const dado = dadoDepth(t, step);
  const down = tidy(Math.min(SET_DOWN, length / 4));
  const top = tidy(length - down - t);
  return {
    foot,
    length,
    footWidth,
    dado,
    slot: slotWidth(wood.thickness.thickest, grid.clearance),
    padSlot: slotWidth(2 * wood.thickness.thickest, grid.clearance),
    relief: tidy(grid.bit / 2),
    block: tidy(footWidth - (t - dado)),
    blocks: [tidy((top + 2 * t) / 2), top],
    taperEnd: tidy(top - ABOVE_TAPER),
    fin: { low: tidy(length - down), long: tidy(down + grid.side), wide: tidy(width - t) },
  };
}
