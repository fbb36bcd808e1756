import type { Chain, Miss } from './chain.ts';
import { closeFrom, determined, directionsAt, reachOf, type Trial, tried } from './newton.ts';
import { filled, type Piece, type Slot, slotsOf } from './piece.ts';
import type { Singular } from './singular.ts';
import { wrapped } from './stretch.ts';

/** A chain closes when it misses by no more: mm and radians. */
export const CLOSED = { gap: 1e-6, turn: 1e-9 } as const;

/** What closing a chain came to. */
export type Closing = {
  readonly slots: readonly Slot[];
  readonly values: readonly number[];
  readonly miss: Miss;
  /** slots that nothing determines, by index; empty when every one is */
  readonly loose: readonly number[];
  /** slots that would have to be less than nothing, with what they would have to be */
  readonly short: readonly { readonly slot: Slot; readonly value: number }[];
};

/** Whether a miss is none. */
export function isClosed({ along, across, turn }: Miss): boolean {
  return Math.hypot(along, across) <= CLOSED.gap && Math.abs(turn) <= CLOSED.turn;
}

/** All slots of a chain's pieces, in order. */
export function chainSlots(pieces: readonly Piece[]): readonly Slot[] {
  return pieces.flatMap(slotsOf);
}

/**
 * The values that close a chain: turns first where one alone is to be found, since only turns change the heading; the
 * rest by Newton's method from several starts, the shortest track kept. What cannot be is left at nothing and told.
 */
export function closeChain(chain: Chain): Closing {
  const slots = chainSlots(chain.pieces);
  const turns = slots.filter(({ what }) => what === 'through');
  if (turns.length !== 1) return closeRest(chain, slots);
  const through = oneTurn(chain, slots);
  if (through === null) return closeRest(chain, slots);
  const [slot] = turns;
  const rest = slots.filter((one) => one !== slot);
  const known = { ...chain, pieces: filled(chain.pieces, turns, [through]) };
  const closing = closeRest(known, rest);
  const values = slots.map((one) => (one === slot ? through : (closing.values[rest.indexOf(one)] ?? 0)));
  const loose = closing.loose.map((i) => slots.indexOf(rest[i] ?? slots[0] ?? { piece: 0, what: 'length' }));
  return { ...closing, slots, values, loose };
}

/** The one turn to be found: what is missing of the heading, more than 0 and at most a full circle. */
function oneTurn(chain: Chain, slots: readonly Slot[]): number | null {
  const zero = tried(
    chain,
    slots,
    slots.map(({ what }) => (what === 'radius' ? 1 : 0)),
  );
  const piece = chain.pieces[slots.find(({ what }) => what === 'through')?.piece ?? -1];
  if (piece?.kind !== 'curve') return null;
  // the easements turn with the curve, so the heading is the turn's alone only once both are in the arc's length
  const missing = wrapped(-zero.miss.turn) * (piece.hand === 'left' ? 1 : -1);
  const turn = missing <= 1e-12 ? missing + 2 * Math.PI : missing;
  return turn / (piece.times ?? 1);
}

function closeRest(chain: Chain, slots: readonly Slot[]): Closing {
  const turning = slots.some(({ what }) => what === 'through');
  const aim = turning ? ('place and heading' as const) : ('place' as const);
  const trials = startsOf(chain, slots).map((values) => closeFrom(chain, slots, { values, aim }));
  const best = bestOf(chain, slots, trials);
  const directions = directionsAt(chain, slots, { values: best.values, aim });
  const loose = looseSlots(directions, slots.length);
  if (loose.length > 0) return { slots, values: best.values, miss: best.miss, loose, short: [] };
  const short = slots.flatMap((slot, i) => shortfall(chain, slots, { slot, i, values: best.values }));
  if (short.length === 0) return { slots, values: best.values, miss: best.miss, loose, short };
  const held = short.map(({ slot }) => slot);
  const pieces = filled(
    chain.pieces,
    held,
    held.map((slot) => leastOf(chain.pieces[slot.piece], slot)),
  );
  const again = closeRest(
    { ...chain, pieces },
    slots.filter((slot) => !held.includes(slot)),
  );
  const values = slots.map((slot) => {
    const i = again.slots.indexOf(slot);
    return i >= 0 ? (again.values[i] ?? 0) : leastOf(chain.pieces[slot.piece], slot);
  });
  return { slots, values, miss: again.miss, loose: [], short: [...short, ...again.short] };
}

/** The least a slot's value can be. */
function leastOf(piece: Piece | undefined, { what }: Slot): number {
  if (what === 'length' || piece?.kind !== 'curve') return 0;
  if (what === 'through') return piece.radius === 'to close' ? 1e-3 : Math.max(1e-3, piece.easement / piece.radius);
  return piece.through === 'to close' || piece.easement === 0 ? 1 : piece.easement / piece.through;
}

type Found = { readonly slot: Slot; readonly i: number; readonly values: readonly number[] };

function shortfall(chain: Chain, slots: readonly Slot[], { slot, i, values }: Found): Closing['short'] {
  const value = values[i] ?? 0;
  const full = filled(chain.pieces, slots, values)[slot.piece];
  return value < leastOf(full, slot) - 1e-9 ? [{ slot, value }] : [];
}

/** Slots that take part in a direction that moves nothing. */
function looseSlots(directions: readonly Singular[], count: number): readonly number[] {
  const free = directions.slice(determined(directions));
  return Array.from({ length: count }, (_, i) => i).filter((i) => free.some(({ of }) => Math.abs(of[i] ?? 0) > 1e-6));
}

const RADII = [1 / 3, 1 / 10, 1] as const;
const TURNS = [1 / 3, 1 / 6, 1 / 2, 2 / 3, 1, 4 / 3].map((share) => share * Math.PI);

/** Starts of the search: one where only lengths are to be found, else every mixture of a few radii and turns. */
function startsOf(chain: Chain, slots: readonly Slot[]): readonly (readonly number[])[] {
  const reach = reachOf(chain);
  // four and more unknowns are never determined: one start is enough to say so
  const choices = slots.map(({ what }): readonly number[] => {
    if (what === 'length') return [reach / 4];
    const all = what === 'radius' ? RADII.map((share) => share * reach) : TURNS;
    return slots.length > 3 ? all.slice(0, 1) : all;
  });
  return choices.reduce<readonly (readonly number[])[]>(
    (starts, choice) => starts.flatMap((start) => choice.map((value) => [...start, value])),
    [[]],
  );
}

/** The shortest track that closes and can be laid; else one that closes; else the one that misses least. */
function bestOf(chain: Chain, slots: readonly Slot[], trials: readonly Trial[]): Trial {
  const scored = trials.map((trial) => {
    const { along, across, turn } = trial.miss;
    const off = Math.hypot(along, across) + Math.abs(turn) * reachOf(chain);
    const pieces = filled(chain.pieces, slots, trial.values);
    const can = slots.every((slot, i) => {
      const value = trial.values[i] ?? 0;
      return (
        value >= leastOf(pieces[slot.piece], slot) - 1e-9 && !(slot.what === 'through' && value > 2 * Math.PI + 1e-9)
      );
    });
    return { trial, off: off < 1e-6 ? 0 : off, can: can ? 0 : 1, long: lengthOf(pieces) };
  });
  const order = scored.toSorted((a, b) =>
    a.off === 0 && b.off === 0 ? a.can - b.can || a.long - b.long : a.off - b.off,
  );
  return order[0]?.trial ?? { values: [], miss: { along: 0, across: 0, turn: 0 } };
}

function lengthOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, piece) => {
    if (piece.kind === 'turnout') return sum;
    if (piece.kind === 'straight') return sum + (piece.length === 'to close' ? 0 : piece.length);
    return sum + (piece.radius === 'to close' || piece.through === 'to close' ? 0 : piece.radius * piece.through);
  }, 0);
}
