import type { Part } from '../stock/part.ts';
import type { PartEvent } from './history.ts';

export type PartState = 'to make' | 'made' | 'measured' | 'mended' | 'replaced' | 'in place' | 'apart';

/** One instance as the log leaves it. `pieces` counts the pieces made for it, scrapped ones too. */
export type InstanceState = {
  readonly id: string;
  readonly instance: string;
  readonly label: string;
  readonly state: PartState;
  /** whether a sound piece exists */
  readonly made: boolean;
  readonly placed: boolean;
  readonly pieces: number;
  readonly scrapped: number;
  readonly history: readonly PartEvent[];
};

/** Asked, made and left of one part; made + left = asked, whatever the log holds. */
export type PartCount = {
  readonly id: string;
  readonly asked: number;
  readonly made: number;
  readonly left: number;
  /** sound pieces beyond what was asked */
  readonly spare: number;
};

type Piece = Pick<InstanceState, 'state' | 'made' | 'placed' | 'pieces' | 'scrapped'>;

const NONE: Piece = { state: 'to make', made: false, placed: false, pieces: 0, scrapped: 0 };

function another(piece: Piece): Piece {
  const state = piece.made ? piece.state : piece.scrapped > 0 ? 'replaced' : 'made';
  return { ...piece, made: true, pieces: piece.pieces + 1, state };
}

/** A piece is lost; a spare one, if there is any, takes over. */
function lost(piece: Piece): Piece {
  if (!piece.made) return piece;
  const scrapped = piece.scrapped + 1;
  const made = piece.pieces > scrapped;
  return { ...piece, made, placed: false, scrapped, state: made ? 'replaced' : 'to make' };
}

function after(piece: Piece, event: PartEvent): Piece {
  switch (event.kind) {
    case 'made':
      return another(piece);
    case 'scrapped':
      return lost(piece);
    case 'mended':
      return piece.made ? { ...piece, state: 'mended' } : piece;
    case 'measured':
      return piece.state === 'made' ? { ...piece, state: 'measured' } : piece;
    case 'placed':
      return piece.made ? { ...piece, placed: true, state: 'in place' } : piece;
    case 'apart':
      return piece.placed ? { ...piece, placed: false, state: 'apart' } : piece;
  }
}

/** The state of every instance of every part; one the log does not name is to make. */
export function instanceStates(
  parts: readonly Part[],
  history: ReadonlyMap<string, readonly PartEvent[]>,
): InstanceState[] {
  return parts.flatMap((part) =>
    part.places.map((place) => {
      const events = history.get(place.id) ?? [];
      return { id: part.id, instance: place.id, label: place.label, ...events.reduce(after, NONE), history: events };
    }),
  );
}

/** Asked, made and left of every part. */
export function partCounts(parts: readonly Part[], states: readonly InstanceState[]): PartCount[] {
  const byPart = new Map<string, InstanceState[]>();
  for (const state of states) byPart.set(state.id, [...(byPart.get(state.id) ?? []), state]);
  return parts.map((part) => {
    const mine = byPart.get(part.id) ?? [];
    const made = mine.filter((one) => one.made).length;
    const sound = mine.reduce((sum, one) => sum + one.pieces - one.scrapped, 0);
    return { id: part.id, asked: part.places.length, made, left: part.places.length - made, spare: sound - made };
  });
}
