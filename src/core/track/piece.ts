/** A value of a piece, or one that the line's closing has to find. */
export type Value = number | 'to close';

/** Ends a turnout can have; which of them one has follows from its form. */
export type TurnoutEnd = 'points' | 'straight' | 'branch' | 'cross' | 'left' | 'right';

type Told = {
  /** name of the joint at its end */
  readonly joint: string | null;
  /** its path in the plan, for faults */
  readonly at: string;
};

export type StraightPiece = Told & {
  readonly kind: 'straight';
  /** of one piece, mm */
  readonly length: Value;
  /** how many ready-made pieces lie end to end; null for track cut to length */
  readonly times: number | null;
};

export type CurvePiece = Told & {
  readonly kind: 'curve';
  readonly hand: 'left' | 'right';
  /** mm */
  readonly radius: Value;
  /** whole turn of one piece, both easements counted, radians */
  readonly through: Value;
  /** length of the easement at each end, mm */
  readonly easement: number;
  readonly times: number | null;
};

export type TurnoutPiece = Told & {
  readonly kind: 'turnout';
  readonly turnout: string;
  readonly enter: TurnoutEnd;
  readonly take: TurnoutEnd;
};

/** One piece of a line as its author wrote it, evaluated: mm and radians. */
export type Piece = StraightPiece | CurvePiece | TurnoutPiece;

/** A value of a piece that closing has to find. */
export type Slot = { readonly piece: number; readonly what: 'length' | 'radius' | 'through' };

/** The values of a piece that are still to be found. */
export function slotsOf(piece: Piece, index: number): readonly Slot[] {
  if (piece.kind === 'straight') return piece.length === 'to close' ? [{ piece: index, what: 'length' }] : [];
  if (piece.kind === 'turnout') return [];
  const radius: readonly Slot[] = piece.radius === 'to close' ? [{ piece: index, what: 'radius' }] : [];
  const through: readonly Slot[] = piece.through === 'to close' ? [{ piece: index, what: 'through' }] : [];
  return [...radius, ...through];
}

/** The value written or found at a slot; null while it is still to be found. */
export function valueAt(piece: Piece | undefined, what: Slot['what']): number | null {
  if (piece === undefined || piece.kind === 'turnout') return null;
  const value = piece.kind === 'straight' ? piece.length : what === 'radius' ? piece.radius : piece.through;
  return value === 'to close' ? null : value;
}

/** The piece with a value put in. */
export function withValue(piece: Piece, what: Slot['what'], value: number): Piece {
  if (piece.kind === 'straight') return { ...piece, length: value };
  if (piece.kind === 'turnout') return piece;
  return what === 'radius' ? { ...piece, radius: value } : { ...piece, through: value };
}

/** Pieces with a value put in at each slot. */
export function filled(pieces: readonly Piece[], slots: readonly Slot[], values: readonly number[]): readonly Piece[] {
  const changed = [...pieces];
  slots.forEach(({ piece, what }, i) => {
    const [here, value] = [changed[piece], values[i]];
    if (here !== undefined && value !== undefined) changed[piece] = withValue(here, what, value);
  });
  return changed;
}
