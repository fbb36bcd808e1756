import type { Chain } from './chain.ts';
import type { Closing } from './closing.ts';
import type { LineWay } from './line.ts';
import type { TurnoutEnd } from './piece.ts';
import type { Stance } from './stretch.ts';
import type { Turnout, TurnoutShape } from './turnout.ts';

/** A turnout where it lies: its points' end and the way one looks into it. */
export type LaidTurnout = {
  readonly id: string;
  readonly turnout: Turnout;
  readonly shape: TurnoutShape;
  readonly place: Stance;
  /** the line that sets its place, and the distances at which that line enters and leaves it */
  readonly line: string;
  readonly enter: TurnoutEnd;
  readonly take: TurnoutEnd;
  readonly enters: number;
  readonly leaves: number;
  readonly piece: number;
};

/** A stretch of a line that had to arrive somewhere, and how it did. Pieces counted from 0. */
export type LineClosing = {
  readonly line: string;
  readonly first: number;
  /** what it had to arrive at, as written */
  readonly target: string;
  readonly chain: Chain;
  readonly closing: Closing;
};

/** All lines in plan, before heights. */
export type Layout = {
  readonly lines: readonly LineWay[];
  readonly turnouts: readonly LaidTurnout[];
  readonly closings: readonly LineClosing[];
};
