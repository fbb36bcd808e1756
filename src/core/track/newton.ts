import { type Chain, type Drift, driftsOf, type Miss, missOf, movesOf } from './chain.ts';
import { filled, type Slot } from './piece.ts';
import { leastSquares, rankOf, type Singular, singularDirections } from './singular.ts';
import { followed, moved } from './stretch.ts';

/** What of a closing counts: place alone where no turn is to be found, place and heading where one is. */
export type Aim = 'place' | 'place and heading';

/** Values put into a chain, and what is still missing. */
export type Trial = { readonly values: readonly number[]; readonly miss: Miss };

const MOST_STEPS = 80;
const CLOSE_ENOUGH = 1e-11;

/** Size that turns radians of heading into mm, so that place and heading weigh alike: the reach of the chain. */
export function reachOf({ start, pieces, target }: Chain): number {
  const sizes = pieces.map((piece) => {
    if (piece.kind === 'turnout') return 0;
    const size = piece.kind === 'straight' ? piece.length : piece.radius;
    return size === 'to close' ? 0 : Math.abs(size);
  });
  return Math.max(100, Math.hypot(target.x - start.x, target.y - start.y), ...sizes);
}

/** The chain with its slots filled, where it ends and what that misses. */
export function tried(chain: Chain, slots: readonly Slot[], values: readonly number[]) {
  const full: Chain = { ...chain, pieces: filled(chain.pieces, slots, values) };
  const moves = movesOf(full);
  const end = moved(chain.start, moves.reduce(followed, { x: 0, y: 0, turn: 0 }));
  return { chain: full, moves, miss: missOf(end, chain.target) };
}

type Scaled = { readonly reach: number; readonly aim: Aim };

function missRow({ along, across, turn }: Miss, { reach, aim }: Scaled): readonly number[] {
  return aim === 'place' ? [along, across] : [along, across, turn * reach];
}

/** Drifts in the frame of the target; a through's unit is the reach, so that every column is in mm for mm. */
function columnOf(drift: Drift, slot: Slot, { chain, scaled }: { readonly chain: Chain; readonly scaled: Scaled }) {
  const [x, y, turn] = drift;
  const [c, s] = [Math.cos(chain.target.heading), Math.sin(chain.target.heading)];
  const unit = slot.what === 'through' ? 1 / scaled.reach : 1;
  const row = [(c * x + s * y) * unit, (c * y - s * x) * unit];
  return scaled.aim === 'place' ? row : [...row, turn * unit * scaled.reach];
}

/** The directions in which a chain's end can be moved by its slots, each slot counted in mm. */
export function directionsAt(
  chain: Chain,
  slots: readonly Slot[],
  { values, aim }: { readonly values: readonly number[]; readonly aim: Aim },
): readonly Singular[] {
  const now = tried(chain, slots, values);
  const scaled = { reach: reachOf(chain), aim };
  const drifts = driftsOf(now.chain, slots, now.moves);
  return singularDirections(
    drifts.map((drift, i) => columnOf(drift, slots[i] ?? { piece: 0, what: 'length' }, { chain, scaled })),
  );
}

/** How many of the slots the closing conditions determine. */
export function determined(directions: readonly Singular[]): number {
  return rankOf(directions, 1e-3);
}

/**
 * Values that bring a chain to its target, or as near as they can, from a start: Newton's method on place and heading,
 * shortest step, halved while it leads away.
 */
export function closeFrom(
  chain: Chain,
  slots: readonly Slot[],
  { values: first, aim }: { readonly values: readonly number[]; readonly aim: Aim },
): Trial {
  const scaled = { reach: reachOf(chain), aim };
  let values = first;
  let miss = tried(chain, slots, values).miss;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const row = missRow(miss, scaled);
    const size = Math.hypot(...row);
    if (size < CLOSE_ENOUGH) break;
    const directions = directionsAt(chain, slots, { values, aim });
    const change = leastSquares(directions, row, slots.length);
    const next = halved({ chain, slots, values, change, size, scaled });
    if (next === null) break;
    values = next.values;
    miss = next.miss;
  }
  return { values, miss };
}

type Stride = {
  readonly chain: Chain;
  readonly slots: readonly Slot[];
  readonly values: readonly number[];
  readonly change: readonly number[];
  readonly size: number;
  readonly scaled: Scaled;
};

/** The step, or a half, quarter ... of it that comes nearer; null when none does. */
function halved({ chain, slots, values, change, size, scaled }: Stride): Trial | null {
  for (let share = 1; share > 1e-6; share /= 2) {
    const next = values.map((value, i) => {
      const unit = slots[i]?.what === 'through' ? 1 / scaled.reach : 1;
      return value - share * (change[i] ?? 0) * unit;
    });
    // a radius of nothing has no curve
    if (next.some((value, i) => slots[i]?.what === 'radius' && value < 1e-3)) continue;
    const { miss } = tried(chain, slots, next);
    if (Math.hypot(...missRow(miss, scaled)) < size) return { values: next, miss };
  }
  return null;
}
