import fc from 'fast-check';
import { chainEnd } from '../../src/core/track/chain.ts';
import type { LineInput, TrackInput } from '../../src/core/track/input.ts';
import type { Piece, Slot } from '../../src/core/track/piece.ts';
import type { Stance } from '../../src/core/track/stretch.ts';
import { curve, line, straight, track } from '../core/track/example.ts';

/** Pieces anyone might lay: straights of 20 to 600 mm, curves of 200 to 700 mm through 15 to 200 degrees, some eased. */
const anyPiece: fc.Arbitrary<Piece> = fc.oneof(
  fc.integer({ min: 200, max: 6000 }).map((tenths) => straight(tenths / 10)),
  fc
    .record({
      hand: fc.constantFrom('left' as const, 'right' as const),
      radius: fc.integer({ min: 200, max: 700 }),
      through: fc.integer({ min: 15, max: 200 }),
      share: fc.constantFrom(0, 0, 0.2, 0.4),
    })
    .map(({ hand, radius, through, share }) =>
      // an easement takes at most a share of the whole curve
      curve(hand, radius, through, { easement: Math.round(((share * radius * through * Math.PI) / 180) * 10) / 10 }),
    ),
);

/** A chain of pieces and the values of it that are to be hidden. */
export type Hidden = { readonly pieces: readonly Piece[]; readonly start: Stance; readonly hidden: readonly Slot[] };

/** Chains of 4 to 9 pieces with 1 to 3 values hidden, of different pieces. */
export const randomChain: fc.Arbitrary<Hidden> = fc
  .record({
    pieces: fc.array(anyPiece, { minLength: 4, maxLength: 9 }),
    start: fc.record({
      x: fc.integer({ min: 0, max: 1500 }),
      y: fc.integer({ min: 0, max: 1000 }),
      heading: fc.integer({ min: 0, max: 359 }).map((degrees) => (degrees * Math.PI) / 180),
    }),
    picks: fc.uniqueArray(fc.record({ piece: fc.nat({ max: 8 }), turn: fc.boolean() }), {
      minLength: 1,
      maxLength: 3,
      selector: ({ piece }) => piece,
    }),
  })
  .map(({ pieces, start, picks }) => ({
    pieces,
    start,
    hidden: picks
      .filter(({ piece }) => piece < pieces.length)
      .map(
        ({ piece, turn }): Slot => ({
          piece,
          what: pieces[piece]?.kind === 'straight' ? 'length' : turn ? 'through' : 'radius',
        }),
      ),
  }));

/** Where a chain of known pieces ends, by the product's own geometry. */
export function endOf({ pieces, start }: Pick<Hidden, 'pieces' | 'start'>): Stance {
  return chainEnd({ start, pieces, target: start, turnoutWay: () => [] });
}

/** The same chain as a line with its values hidden, to arrive at the start of a line that begins at `target`. */
export function asTrack({ pieces, start, hidden }: Hidden, target: Stance): TrackInput {
  const open = pieces.map((piece, i) =>
    hidden.filter((slot) => slot.piece === i).reduce((one, { what }) => emptied(one, what), piece),
  );
  const place = (stance: Stance): LineInput['from'] => ({ kind: 'place', stance, height: 0 });
  return track([
    line('closing', open, { from: place(start), ends: 'next.start' }),
    line('next', [straight(100)], { from: place(target) }),
  ]);
}

function emptied(piece: Piece, what: Slot['what']): Piece {
  if (piece.kind === 'straight') return { ...piece, length: 'to close' };
  if (piece.kind === 'turnout') return piece;
  return what === 'radius' ? { ...piece, radius: 'to close' } : { ...piece, through: 'to close' };
}
