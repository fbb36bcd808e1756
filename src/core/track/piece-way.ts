import type { CurvePiece, Piece, StraightPiece, TurnoutPiece } from './piece.ts';
import type { Way } from './stretch.ts';

/** Arcs shorter than this are left out: the easements meet. mm */
const NO_ARC = 1e-9;

/** The way of a straight or curve whose values are known; a value still to be found counts as 0. */
export function plainWay(piece: StraightPiece | CurvePiece): Way {
  return piece.kind === 'straight' ? straightWay(piece) : curveWay(piece);
}

/** The way of any piece; turnouts are looked up. */
export function pieceWay(piece: Piece, turnoutWay: (piece: TurnoutPiece) => Way): Way {
  return piece.kind === 'turnout' ? turnoutWay(piece) : plainWay(piece);
}

function known(value: number | 'to close'): number {
  return value === 'to close' ? 0 : value;
}

function straightWay({ length, times }: StraightPiece): Way {
  return [{ length: known(length) * (times ?? 1), k0: 0, k1: 0 }];
}

/**
 * Easement, arc, easement. Each easement turns L / 2R, so the arc is R times the turn less L; a search may make it
 * less than nothing on its way.
 */
function curveWay({ hand, radius, through, easement, times }: CurvePiece): Way {
  const size = known(radius);
  const k = size === 0 ? 0 : (hand === 'left' ? 1 : -1) / size;
  const arc = size * known(through) * (times ?? 1) - easement;
  const middle = Math.abs(arc) > NO_ARC ? [{ length: arc, k0: k, k1: k }] : [];
  if (easement === 0) return middle;
  return [{ length: easement, k0: 0, k1: k }, ...middle, { length: easement, k0: k, k1: 0 }];
}
