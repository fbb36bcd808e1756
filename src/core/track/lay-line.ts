import type { Fault } from '../units/problem.ts';
import type { Chain } from './chain.ts';
import { type Closing, chainSlots, closeChain } from './closing.ts';
import { type Element, kindOf } from './element.ts';
import { deg, fault, mm } from './fault.ts';
import type { LineInput } from './input.ts';
import type { LaidTurnout, LineClosing } from './laid.ts';
import type { FoundValue, LineJoint, LineWay } from './line.ts';
import { filled, type Piece, type TurnoutPiece } from './piece.ts';
import { pieceWay } from './piece-way.ts';
import { facingBack, moveAlong, moved, type Stance, type Way } from './stretch.ts';
import type { Turnout, TurnoutShape } from './turnout.ts';
import { endStance, isEnd, placedTurnout, routeBetween } from './turnout-shape.ts';

/** What a line finds when it is laid: turnouts already placed by others, their shapes, and the stances it joins. */
export type Site = {
  readonly turnouts: ReadonlyMap<string, Turnout>;
  readonly shapes: ReadonlyMap<string, TurnoutShape>;
  readonly placed: ReadonlyMap<string, LaidTurnout>;
  readonly start: Stance;
  /** where it has to arrive and how it has to look; null when it ends open or at a turnout of its own */
  readonly target: Stance | null;
};

export type LineLaid = {
  readonly line: LineWay;
  readonly turnouts: readonly LaidTurnout[];
  readonly closings: readonly LineClosing[];
  readonly faults: readonly Fault[];
};

const ORIGIN: Stance = { x: 0, y: 0, heading: 0 };
const NO_SHAPE: TurnoutShape = { ends: {}, routes: [], throwBar: 0, frogPoint: null, assumed: [] };

/** Lays a line in plan: finds what is to close, then goes along its pieces. */
export function layLine(input: LineInput, site: Site): LineLaid {
  const turnoutWay = (piece: TurnoutPiece): Way =>
    routeBetween(site.shapes.get(piece.turnout) ?? NO_SHAPE, piece.enter, piece.take) ?? [];
  const closed = closeLine(input, site, turnoutWay);
  const faults = closed.closings.flatMap(({ chain, closing, first }) => looseFaults(input, { chain, closing, first }));
  const unsolved = chainSlots(closed.pieces);
  const left = unsolved.map((slot) => {
    const at = `${closed.pieces[slot.piece]?.at ?? input.at}.${slot.what === 'length' ? 'straight' : slot.what}`;
    const words = {
      what: `nothing determines this: after it ${input.id} has nowhere to arrive`,
      mend: 'give it a value, or write under `ends` where the line has to arrive',
    };
    return fault('nothing-to-close', at, words);
  });
  if (left.length > 0)
    return { line: empty(input, site.start), turnouts: [], closings: [], faults: [...faults, ...left] };
  return {
    ...walked({ ...input, pieces: closed.pieces }, site, { turnoutWay, found: closed.found }),
    closings: closed.closings,
    faults,
  };
}

function empty({ id, at, phase, ends }: LineInput, start: Stance): LineWay {
  const none = { elements: [], length: 0, joints: [], unknowns: [], from: null };
  return { id, at, phase, ends, start, end: start, ...none };
}

type Closed = {
  readonly pieces: readonly Piece[];
  readonly closings: readonly LineClosing[];
  readonly found: readonly FoundValue[];
};

/** Goes along a line and closes each stretch that has to arrive somewhere: at a turnout met before, or at its end. */
function closeLine(input: LineInput, site: Site, turnoutWay: Chain['turnoutWay']): Closed {
  let pieces = input.pieces;
  let anchor = { piece: 0, start: site.start };
  const closings: LineClosing[] = [];
  const found: FoundValue[] = [];
  const met = new Map<string, number>();
  const close = (from: { readonly piece: number; readonly start: Stance }, to: number, goal: Goal) => {
    const chain = { start: from.start, pieces: pieces.slice(from.piece, to), target: goal.stance, turnoutWay };
    const closing = closeChain(chain);
    closings.push({ line: input.id, first: from.piece, target: goal.name, chain, closing });
    found.push(...valuesOf(closing, from.piece));
    pieces = [
      ...pieces.slice(0, from.piece),
      ...filled(chain.pieces, closing.slots, closing.values),
      ...pieces.slice(to),
    ];
  };
  input.pieces.forEach((piece, i) => {
    if (piece.kind !== 'turnout') return;
    const shape = site.shapes.get(piece.turnout) ?? NO_SHAPE;
    const other = site.placed.get(piece.turnout);
    const before = met.get(piece.turnout);
    if (other !== undefined) {
      const goal = {
        stance: facingBack(endStance(shape, piece.enter, other.place)),
        name: `${piece.turnout}.${piece.enter}`,
      };
      close(anchor, i, goal);
      anchor = { piece: i + 1, start: endStance(shape, piece.take, other.place) };
    } else if (before === undefined) met.set(piece.turnout, i);
    else
      close(after(pieces, before, shape), i, {
        stance: facingBack(endStance(shape, piece.enter, ORIGIN)),
        name: `${piece.turnout}.${piece.enter}`,
      });
  });
  const own = ownEnd(input, met);
  if (own !== null) {
    const shape = site.shapes.get(own.turnout) ?? NO_SHAPE;
    const goal = { stance: facingBack(endStance(shape, own.end, ORIGIN)), name: input.ends };
    close(after(pieces, own.piece, shape), pieces.length, goal);
  } else if (site.target !== null) close(anchor, pieces.length, { stance: site.target, name: input.ends });
  return { pieces, closings, found };
}

type Goal = { readonly stance: Stance; readonly name: string };

/** The stretch that begins where a line leaves a turnout of its own, in the turnout's coordinates. */
function after(pieces: readonly Piece[], index: number, shape: TurnoutShape) {
  const piece = pieces[index];
  return { piece: index + 1, start: piece?.kind === 'turnout' ? endStance(shape, piece.take, ORIGIN) : ORIGIN };
}

/** A line that ends at a turnout which it lays itself: a loop. */
function ownEnd(input: LineInput, met: ReadonlyMap<string, number>) {
  const [turnout = '', end = ''] = input.ends.split('.');
  const piece = met.get(turnout);
  return piece === undefined || !isEnd(end) ? null : { turnout, piece, end };
}

function valuesOf({ slots, values }: Closing, first: number): readonly FoundValue[] {
  return slots.map(({ piece, what }, i) => ({
    piece: first + piece,
    what: what === 'length' ? 'straight' : what,
    value: values[i] ?? 0,
  }));
}

/** Unknowns that nothing determines, with a value that would do. */
function looseFaults(
  input: LineInput,
  { chain, closing, first }: Pick<LineClosing, 'chain' | 'closing' | 'first'>,
): readonly Fault[] {
  const { loose, slots, values } = closing;
  const names = loose.map(
    (i) =>
      `${slots[i]?.what === 'length' ? 'straight' : slots[i]?.what} of piece ${first + (slots[i]?.piece ?? 0) + 1}`,
  );
  const slot = slots[loose[0] ?? -1];
  if (slot === undefined) return [];
  const value = values[loose[0] ?? 0] ?? 0;
  const key = slot.what === 'length' ? 'straight' : slot.what;
  const lengths = loose.every((i) => slots[i]?.what === 'length');
  const sum = loose.reduce((total, i) => total + (values[i] ?? 0), 0);
  return [
    fault('undetermined', `${chain.pieces[slot.piece]?.at ?? input.at}.${key}`, {
      what: `closing ${input.id} does not determine the ${names.join(' and the ')}${lengths ? `; together they come to ${mm(sum)}` : ''}`,
      mend: `give one of them a value, here for example ${slot.what === 'through' ? deg(value) : mm(value)}`,
    }),
  ];
}

type Walk = { readonly turnoutWay: Chain['turnoutWay']; readonly found: readonly FoundValue[] };

/** Goes along pieces whose values are all known. */
function walked(input: LineInput, site: Site, { turnoutWay, found }: Walk): Pick<LineLaid, 'line' | 'turnouts'> {
  const elements: Element[] = [];
  const joints: LineJoint[] = [];
  const turnouts = new Map<string, LaidTurnout>();
  let [at, stance] = [0, site.start];
  input.pieces.forEach((piece, i) => {
    const known =
      piece.kind === 'turnout' ? (site.placed.get(piece.turnout) ?? turnouts.get(piece.turnout)) : undefined;
    if (piece.kind === 'turnout' && known !== undefined)
      stance = facingBack(endStance(known.shape, piece.enter, known.place));
    const [enters, start] = [at, stance];
    for (const stretch of pieceWay(piece, turnoutWay)) {
      const turnout = piece.kind === 'turnout' ? piece.turnout : null;
      elements.push({
        kind: kindOf(stretch),
        piece: i,
        turnout,
        base: stance,
        stretch,
        aside: 0,
        from: at,
        length: stretch.length,
      });
      stance = moved(stance, moveAlong(stretch, stretch.length));
      at += stretch.length;
    }
    const turnout = piece.kind === 'turnout' ? site.turnouts.get(piece.turnout) : undefined;
    if (piece.kind === 'turnout' && turnout !== undefined && known === undefined) {
      const shape = site.shapes.get(piece.turnout) ?? NO_SHAPE;
      const place = placedTurnout(shape, piece.enter, start);
      turnouts.set(piece.turnout, {
        id: piece.turnout,
        turnout,
        shape,
        place,
        line: input.id,
        enter: piece.enter,
        take: piece.take,
        enters,
        leaves: at,
        piece: i,
      });
    }
    if (piece.joint !== null) joints.push({ id: piece.joint, at, x: stance.x, y: stance.y, heading: stance.heading });
  });
  const from = input.from.kind === 'end' ? input.from.name : null;
  const line = {
    id: input.id,
    at: input.at,
    phase: input.phase,
    elements,
    length: at,
    joints,
    unknowns: found,
    start: site.start,
    end: stance,
    from,
    ends: input.ends,
  };
  return { line, turnouts: [...turnouts.values()] };
}
