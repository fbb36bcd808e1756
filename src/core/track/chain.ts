import { filled, type Piece, type Slot, type TurnoutPiece } from './piece.ts';
import { pieceWay } from './piece-way.ts';
import { followed, type Move, moved, type Stance, type Way, wayMove, wrapped } from './stretch.ts';

/**
 * Pieces from a stance to where they have to arrive, and how. Slots name the values that may move; every other value
 * is known. `turnoutWay` gives the way through a turnout.
 */
export type Chain = {
  readonly start: Stance;
  readonly pieces: readonly Piece[];
  readonly target: Stance;
  readonly turnoutWay: (piece: TurnoutPiece) => Way;
};

/** How far a chain ends from its target: along and across the way it should look, mm, and turned, radians. */
export type Miss = { readonly along: number; readonly across: number; readonly turn: number };

/** The moves of a chain's pieces, in order. */
export function movesOf({ pieces, turnoutWay }: Chain): readonly Move[] {
  return pieces.map((piece) => wayMove(pieceWay(piece, turnoutWay)));
}

const STILL: Move = { x: 0, y: 0, turn: 0 };

function endOf(start: Stance, moves: readonly Move[]): Stance {
  return moved(start, moves.reduce(followed, STILL));
}

/** Where a chain ends. */
export function chainEnd(chain: Chain): Stance {
  return endOf(chain.start, movesOf(chain));
}

/** What is missing between the end of a chain and its target. */
export function missOf(end: Stance, target: Stance): Miss {
  const [dx, dy] = [end.x - target.x, end.y - target.y];
  const [c, s] = [Math.cos(target.heading), Math.sin(target.heading)];
  return { along: c * dx + s * dy, across: c * dy - s * dx, turn: wrapped(end.heading - target.heading) };
}

/** What one unit of a slot's value moves the end of the chain by: mm or radians a mm or radian. */
export type Drift = readonly [x: number, y: number, turn: number];

/** Step of the differences that give a piece's own change; small enough that its cube is lost in the last digits. */
const STEP = 1e-4;

/** How the end of a chain moves with each slot; central differences of the one piece, carried rigidly to the end. */
export function driftsOf(chain: Chain, slots: readonly Slot[], moves: readonly Move[]): readonly Drift[] {
  const before = stancesOf(chain.start, moves);
  const end = before[before.length - 1] ?? chain.start;
  return slots.map((slot) => driftOf(chain, slot, { from: before[slot.piece] ?? chain.start, end }));
}

/** Stances before each piece, and after the last. */
function stancesOf(start: Stance, moves: readonly Move[]): readonly Stance[] {
  const stances = [start];
  for (const move of moves) stances.push(moved(stances[stances.length - 1] ?? start, move));
  return stances;
}

function driftOf(
  chain: Chain,
  { piece, what }: Slot,
  { from, end }: { readonly from: Stance; readonly end: Stance },
): Drift {
  const here = chain.pieces[piece];
  if (here === undefined || here.kind === 'turnout') return [0, 0, 0];
  const value = here.kind === 'straight' ? here.length : what === 'radius' ? here.radius : here.through;
  const size = value === 'to close' ? 0 : value;
  const step = what === 'through' ? STEP : STEP * Math.max(1, Math.abs(size));
  const at = (shift: number) => {
    const [moving] = filled([here], [{ piece: 0, what }], [size + shift]);
    return wayMove(pieceWay(moving ?? here, chain.turnoutWay));
  };
  const [back, ahead, still] = [at(-step), at(step), at(0)];
  const turn = (ahead.turn - back.turn) / (2 * step);
  const [dx, dy] = [(ahead.x - back.x) / (2 * step), (ahead.y - back.y) / (2 * step)];
  const [c, s] = [Math.cos(from.heading), Math.sin(from.heading)];
  const after = moved(from, still);
  return [c * dx - s * dy - turn * (end.y - after.y), s * dx + c * dy + turn * (end.x - after.x), turn];
}
