import type { Chain } from './chain.ts';
import { type Closing, isClosed } from './closing.ts';
import { closeFrom, directionsAt, reachOf, tried } from './newton.ts';
import { filled, type Slot, valueAt } from './piece.ts';
import { leastSquares } from './singular.ts';

/** One value to write instead of another so that a line closes; lengths mm, turns radians. */
export type Change = {
  readonly piece: number;
  readonly what: Slot['what'];
  readonly from: number;
  readonly to: number;
};

/** Candidates beyond these are not tried in threes: the search would grow with their cube. */
const MOST_IN_THREES = 14;
const MOST_IN_PAIRS = 80;
/** Guesses of the straight-line forecast that are tried in full. */
const TRIES = 12;

/**
 * The fewest written values, and among those the least change in mm, with which the chain closes; values to be found
 * are found again beside them. Null when no three values do it.
 */
export function smallestChange(chain: Chain, closing: Closing): readonly Change[] | null {
  const full: Chain = { ...chain, pieces: filled(chain.pieces, closing.slots, closing.values) };
  const free = closing.slots.filter((slot) => !closing.short.some((short) => short.slot === slot));
  const written = full.pieces.flatMap((piece, index): readonly Slot[] => {
    const slots: readonly Slot[] =
      piece.kind === 'straight'
        ? [{ piece: index, what: 'length' }]
        : piece.kind === 'curve'
          ? [
              { piece: index, what: 'radius' },
              { piece: index, what: 'through' },
            ]
          : [];
    return slots.filter((slot) => !closing.slots.some((one) => one.piece === slot.piece && one.what === slot.what));
  });
  for (const count of [1, 2, 3]) {
    const found = bestOf(full, free, combinations(written, count));
    if (found !== null) return found;
  }
  return null;
}

function combinations(slots: readonly Slot[], count: number): readonly (readonly Slot[])[] {
  const pool = count === 3 ? slots.slice(0, MOST_IN_THREES) : count === 2 ? slots.slice(0, MOST_IN_PAIRS) : slots;
  if (count === 1) return pool.map((slot) => [slot]);
  return pool.flatMap((slot, i) => combinations(pool.slice(i + 1), count - 1).map((rest) => [slot, ...rest]));
}

function bestOf(chain: Chain, free: readonly Slot[], choices: readonly (readonly Slot[])[]): readonly Change[] | null {
  const guesses = choices
    .flatMap((choice) => forecast(chain, free, choice))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, TRIES);
  for (const { choice } of guesses) {
    const change = closedWith(chain, free, choice);
    if (change !== null) return change;
  }
  return null;
}

/** What the values would have to change by if everything were straight, mm; nothing when they cannot reach. */
function forecast(chain: Chain, free: readonly Slot[], choice: readonly Slot[]) {
  const slots = [...free, ...choice];
  const values = slots.map(({ piece, what }) => valueAt(chain.pieces[piece], what) ?? 0);
  const directions = directionsAt(chain, slots, { values, aim: 'place and heading' });
  const { miss } = tried(chain, slots, values);
  const row = [miss.along, miss.across, miss.turn * reachOf(chain)];
  const change = leastSquares(directions, row, slots.length);
  const reached = directions.reduce<readonly number[]>((left, { of, image }) => {
    const share = of.reduce((sum, value, i) => sum + value * (change[i] ?? 0), 0);
    return left.map((value, i) => value - share * (image[i] ?? 0));
  }, row);
  const size = Math.hypot(...row);
  if (Math.hypot(...reached) > 0.2 * size) return [];
  return [{ choice, cost: change.slice(free.length).reduce((sum, value) => sum + Math.abs(value), 0) }];
}

function closedWith(chain: Chain, free: readonly Slot[], choice: readonly Slot[]): readonly Change[] | null {
  const slots = [...free, ...choice];
  const values = slots.map(({ piece, what }) => valueAt(chain.pieces[piece], what) ?? 0);
  const trial = closeFrom(chain, slots, { values, aim: 'place and heading' });
  if (!isClosed(trial.miss)) return null;
  const can = filled(chain.pieces, slots, trial.values).every((piece) => {
    if (piece.kind === 'turnout') return true;
    if (piece.kind === 'straight') return piece.length === 'to close' || piece.length >= 0;
    if (piece.radius === 'to close' || piece.through === 'to close') return false;
    return piece.through > 0 && piece.radius * piece.through >= piece.easement;
  });
  if (!can) return null;
  return choice.map((slot, i) => ({
    piece: slot.piece,
    what: slot.what,
    from: values[free.length + i] ?? 0,
    to: trial.values[free.length + i] ?? 0,
  }));
}
