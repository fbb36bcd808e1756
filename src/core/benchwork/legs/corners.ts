import type { Site } from '../fitting.ts';
import { tidy } from '../machining.ts';
import type { Outside } from '../outside.ts';
import { viewLength } from '../side-view.ts';

/** A corner of the frame, named as one stands before the bench. */
export type CornerName = 'front-left' | 'front-right' | 'back-left' | 'back-right';

export const CORNERS: readonly CornerName[] = ['front-left', 'front-right', 'back-left', 'back-right'];

/** Letters of a leg's pieces, in the order they are named: none that is taken for a figure. */
export const LETTERS = 'ABCDEFGHKLMNPQRSTUVWXYZ';

/** A range along one direction, mm. */
export type Span = readonly [number, number];

/** A corner as seen from before one of its two sides: whether it lies at that side's left or right hand. */
export type CornerView = { readonly side: Outside; readonly hand: 'left' | 'right' };

/** The corner before its long side, where legs are bolted; from behind, the bench's left is on the right hand. */
export function alongSide(corner: CornerName): CornerView {
  const side = corner.startsWith('front') ? 'front' : 'back';
  const left = corner.endsWith('left') === (side === 'front');
  return { side, hand: left ? 'left' : 'right' };
}

/** The same corner before its end: the front is at the right hand of the left end, at the left hand of the right one. */
export function alongEnd(corner: CornerName): CornerView {
  const side = corner.endsWith('left') ? 'left' : 'right';
  const left = corner.startsWith('front') === (side === 'right');
  return { side, hand: left ? 'left' : 'right' };
}

/** A span measured from the corner, as it lies from the left of whoever stands there. */
export function fromCorner({ grid }: Site, { side, hand }: CornerView, [near, far]: Span): Span {
  if (hand === 'left') return [near, far];
  const long = viewLength(grid, side);
  return [tidy(long - far), tidy(long - near)];
}

/** The clear room in the frame's corner, from the inner faces of side and end to struts and flange strips; mm. */
export type Room = { readonly along: number; readonly inward: number };

export function cornerRoom({ grid, flangeStrips }: Site, corner: CornerName): Room {
  const half = Math.max(grid.t, flangeStrips ?? 0) / 2;
  const clear = (centres: readonly number[], outside: number, low: boolean) => {
    const centre = low ? centres[0] : centres[centres.length - 1];
    if (centre === undefined) return tidy(outside - 2 * grid.t);
    return tidy((low ? centre : outside - centre) - half - grid.t);
  };
  return {
    along: clear(grid.across, grid.length, corner.endsWith('left')),
    inward: clear(grid.along, grid.width, corner.startsWith('front')),
  };
}
