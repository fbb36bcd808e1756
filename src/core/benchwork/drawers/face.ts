import type { Patch } from '../../stock/part.ts';
import { tidy } from '../machining.ts';

/** The line a bit's middle runs along to cut a face from its own board; radius of its corners, mm. */
export type BitPath = { readonly patch: Patch; readonly radius: number };

/** A rectangle with rounded corners, mm. */
export type Rounded = { readonly patch: Patch; readonly radius: number };

/** Half the bit away from its path, outward or inward. */
function away({ patch, radius }: BitPath, by: number): Rounded {
  const { x0, x1, y0, y1 } = patch;
  return {
    patch: { x0: tidy(x0 - by), x1: tidy(x1 + by), y0: tidy(y0 - by), y1: tidy(y1 + by) },
    radius: tidy(radius + by),
  };
}

/** The opening a bit of this diameter leaves: corners of radius rho + D / 2 (plane geometry). */
export function openingOf(path: BitPath, bit: number): Rounded {
  return away(path, bit / 2);
}

/** The face that falls out: corners of radius rho - D / 2, the gap all round being the bit; null when the bit leaves none. */
export function faceOf(path: BitPath, bit: number): Rounded | null {
  const face = away(path, -bit / 2);
  const { x0, x1, y0, y1 } = face.patch;
  return face.radius >= 0 && x1 > x0 && y1 > y0 ? face : null;
}

/** The path that gives an opening of this size. */
export function pathOf(opening: Rounded, bit: number): BitPath {
  return away(opening, -bit / 2);
}

/** The wood left of a board above, below and beside an opening, mm; negative where the opening leaves the board. */
export type Ligaments = { readonly above: number; readonly below: number };

export function ligaments(opening: Patch, board: number): Ligaments {
  return { above: tidy(board - opening.y1), below: opening.y0 };
}
