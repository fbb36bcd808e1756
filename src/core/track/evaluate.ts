import type { Stock } from '../stock/goods.ts';
import { evaluate } from '../units/evaluate.ts';
import { done, type Fault, failed, type Result } from '../units/problem.ts';
import type { Dimension, Quantity, Scope } from '../units/quantity.ts';
import { readTurnouts } from './evaluate-turnouts.ts';
import type { BesideInput, Ground, LineInput, StartInput, TrackInput } from './input.ts';
import type { Piece, TurnoutPiece, Value } from './piece.ts';
import type { Track } from './schema.ts';
import type { Train } from './train.schema.ts';

/** What evaluation needs besides the chapter: names known before it, the scale, goods, vehicles, and the benches. */
export type TrackContext = {
  readonly scope: Scope;
  readonly scale: string;
  readonly stock: readonly Stock[];
  readonly trains: readonly Train[];
  readonly ground: Ground;
};

/** Gathers faults while values are read; a value that fails counts as 1 and the whole is refused at the end. */
export type Read = (quantity: Quantity<Dimension>) => number;

type LineSource = Track['lines'][number];
type PieceSource = LineSource['lay'][number];

/** The chapter's quantities as numbers, ready for layTrack; every fault of every value at once. */
export function evaluateTrack(track: Track, context: TrackContext): Result<TrackInput> {
  const faults: Fault[] = [];
  const read: Read = (quantity) => {
    const amount = evaluate(quantity, context.scope);
    if (amount.ok) return amount.value.value;
    faults.push(...amount.faults);
    return 1;
  };
  const maybe = (quantity: Quantity<Dimension> | undefined) => (quantity === undefined ? null : read(quantity));
  const input: TrackInput = {
    scale: context.scale,
    trains: context.trains.filter(({ id }) => track.trains.includes(id)),
    roadbed: roadbedOf(track, context, read),
    flex: { yard: maybe(track.flex?.length), height: maybe(track.flex?.height) },
    rules: {
      curvePerPercent: maybe(track.rules?.['curve-per-percent']),
      grade: maybe(track.rules?.grade),
      radius: track.rules?.radius ?? 'car-lengths',
      upperDeck: maybe(track.rules?.['upper-deck']),
      wire: track.rules?.wire ?? false,
    },
    lines: track.lines.map((line, i) => lineOf(line, `track.lines.${i}`, read)),
    beside: track.beside.map((one, i): BesideInput => ({ ...one, by: read(one.by), at: `track.beside.${i}` })),
    turnouts: readTurnouts(track, read),
    ground: context.ground,
  };
  return faults.length > 0 ? failed(...faults) : done(input);
}

function roadbedOf({ roadbed }: Track, { stock }: TrackContext, read: Read): TrackInput['roadbed'] {
  if (roadbed === undefined) return null;
  const goods = stock.find(({ id }) => id === roadbed.stock);
  const width = read(roadbed.width);
  if (goods?.kind === 'sheet') {
    const [size] = goods.sizes;
    const sheet = size === undefined ? null : { length: size.length, width: size.width };
    return { stock: goods.id, width, thickness: goods.thickness.listed, sheet };
  }
  return { stock: roadbed.stock, width, thickness: goods?.kind === 'board' ? goods.thickness.listed : 0, sheet: null };
}

function lineOf(line: LineSource, at: string, read: Read): LineInput {
  return {
    id: line.id,
    at,
    from: startOf(line.from, read),
    pieces: line.lay.map((piece, i) => pieceOf(piece, `${at}.lay.${i}`, read)),
    heights: (line.heights ?? []).map(({ at: along, height, curve }, i) => ({
      along: read(along),
      height: read(height),
      curve: curve === undefined ? null : read(curve),
      at: `${at}.heights.${i}`,
    })),
    ends: line.ends,
    phase: line.phase,
  };
}

function startOf(from: LineSource['from'], read: Read): StartInput {
  if (typeof from === 'string') return { kind: 'end', name: from };
  const stance = { x: read(from.x), y: read(from.y), heading: read(from.heading) };
  return { kind: 'place', stance, height: from.height === undefined ? null : read(from.height) };
}

function written(value: Quantity<Dimension> | 'to close', read: Read): Value {
  return value === 'to close' ? value : read(value);
}

function pieceOf(piece: PieceSource, at: string, read: Read): Piece {
  const told = { joint: piece['ends-at'] ?? null, at };
  if ('turnout' in piece) return turnoutPiece(piece, told);
  const times = piece.times === undefined ? null : read(piece.times);
  if ('straight' in piece) return { kind: 'straight', length: written(piece.straight, read), times, ...told };
  return {
    kind: 'curve',
    hand: piece.curve,
    radius: written(piece.radius, read),
    through: written(piece.through, read),
    easement: piece.easement === undefined ? 0 : read(piece.easement),
    times,
    ...told,
  };
}

/** Where one goes on to when the author did not say: straight on, and from any other end to the points. */
const ONWARDS: Readonly<Record<TurnoutPiece['enter'], TurnoutPiece['take']>> = {
  points: 'straight',
  straight: 'points',
  branch: 'points',
  left: 'points',
  right: 'points',
  cross: 'branch',
};

function turnoutPiece(
  piece: Extract<PieceSource, { readonly turnout: string }>,
  told: Pick<TurnoutPiece, 'joint' | 'at'>,
): TurnoutPiece {
  const { turnout, enter, take } = piece;
  return { kind: 'turnout', turnout, enter, take: take ?? ONWARDS[enter], ...told };
}
