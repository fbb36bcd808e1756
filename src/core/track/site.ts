import type { LaidTurnout } from './laid.ts';
import type { TurnoutPiece } from './piece.ts';
import type { Stance, Way } from './stretch.ts';
import type { Turnout, TurnoutShape } from './turnout.ts';
import { routeBetween } from './turnout-shape.ts';

/** What a line finds when it is laid: turnouts already placed by others, their shapes, and the stances it joins. */
export type Site = {
  readonly turnouts: ReadonlyMap<string, Turnout>;
  readonly shapes: ReadonlyMap<string, TurnoutShape>;
  readonly placed: ReadonlyMap<string, LaidTurnout>;
  readonly start: Stance;
  /** where it has to arrive and how it has to look; null when it ends open or at a turnout of its own */
  readonly target: Stance | null;
};

const NO_SHAPE: TurnoutShape = { ends: {}, routes: [], throwBar: 0, frogPoint: null, assumed: [] };

/** The shape of a turnout; an empty one for a name the chapter does not have, which the reader has told. */
export function shapeOf({ shapes }: Pick<Site, 'shapes'>, turnout: string): TurnoutShape {
  return shapes.get(turnout) ?? NO_SHAPE;
}

/** The way a piece takes through its turnout; nothing where there is none. */
export function wayThrough({ shapes }: Pick<Site, 'shapes'>): (piece: TurnoutPiece) => Way {
  return (piece) => routeBetween(shapeOf({ shapes }, piece.turnout), piece.enter, piece.take) ?? [];
}
