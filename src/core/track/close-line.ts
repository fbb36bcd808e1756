import { type Closing, closeChain } from './closing.ts';
import type { LineInput } from './input.ts';
import type { LineClosing } from './laid.ts';
import type { FoundValue } from './line.ts';
import { filled, type Piece, type TurnoutPiece } from './piece.ts';
import { type Site, shapeOf, wayThrough } from './site.ts';
import { facingBack, type Stance } from './stretch.ts';
import { endStance, isEnd } from './turnout-shape.ts';

/** A stretch of a line, pieces `first` up to `last` left out, that starts at a stance and has to arrive at another. */
type Goal = {
  readonly first: number;
  readonly last: number;
  readonly start: Stance;
  readonly target: Stance;
  readonly name: string;
};

/** A line whose unknowns were found as far as its closings determine them. */
export type ClosedLine = {
  readonly pieces: readonly Piece[];
  readonly closings: readonly LineClosing[];
  readonly found: readonly FoundValue[];
};

const ORIGIN: Stance = { x: 0, y: 0, heading: 0 };

/** Closes each stretch of a line that has to arrive somewhere: at a turnout that lies already, or at its end. */
export function closeLine(input: LineInput, site: Site): ClosedLine {
  const turnoutWay = wayThrough(site);
  return goalsOf(input, site).reduce<ClosedLine>(
    ({ pieces, closings, found }, { first, last, start, target, name }) => {
      const chain = { start, pieces: pieces.slice(first, last), target, turnoutWay };
      const closing = closeChain(chain);
      const own = filled(chain.pieces, closing.slots, closing.values);
      return {
        pieces: [...pieces.slice(0, first), ...own, ...pieces.slice(last)],
        closings: [...closings, { line: input.id, first, target: name, chain, closing }],
        found: [...found, ...valuesOf(closing, first)],
      };
    },
    { pieces: input.pieces, closings: [], found: [] },
  );
}

/** Where a line has to arrive on its way, in order. Loops through a turnout of its own are seen from that turnout. */
function goalsOf(input: LineInput, site: Site): readonly Goal[] {
  const { pieces } = input;
  const goals: Goal[] = [];
  const met = new Map<string, number>();
  let anchor = { first: 0, start: site.start };
  pieces.forEach((piece, last) => {
    if (piece.kind !== 'turnout') return;
    const [other, before] = [site.placed.get(piece.turnout), met.get(piece.turnout)];
    const name = `${piece.turnout}.${piece.enter}`;
    if (other !== undefined) {
      goals.push({ ...anchor, last, target: facingBack(endOf(site, piece.turnout, piece.enter, other.place)), name });
      anchor = { first: last + 1, start: endOf(site, piece.turnout, piece.take, other.place) };
    } else if (before === undefined) met.set(piece.turnout, last);
    else
      goals.push({
        ...leaving(input, before, site),
        last,
        target: facingBack(endOf(site, piece.turnout, piece.enter, ORIGIN)),
        name,
      });
  });
  const end = endGoal(input, site, met);
  if (end !== null) return [...goals, end];
  if (site.target === null) return goals;
  return [...goals, { ...anchor, last: pieces.length, target: site.target, name: input.ends }];
}

/** The goal of a line that ends at a turnout which it lays itself: a loop. */
function endGoal(input: LineInput, site: Site, met: ReadonlyMap<string, number>): Goal | null {
  const [turnout = '', end = ''] = input.ends.split('.');
  const index = met.get(turnout);
  if (index === undefined || !isEnd(end)) return null;
  const target = facingBack(endStance(shapeOf(site, turnout), end, ORIGIN));
  return { ...leaving(input, index, site), last: input.pieces.length, target, name: input.ends };
}

/** Where a line leaves a turnout of its own, in the turnout's coordinates. */
function leaving({ pieces }: LineInput, index: number, site: Site): Pick<Goal, 'first' | 'start'> {
  const piece = pieces[index];
  const start = piece?.kind === 'turnout' ? endStance(shapeOf(site, piece.turnout), piece.take, ORIGIN) : ORIGIN;
  return { first: index + 1, start };
}

function endOf(site: Site, turnout: string, end: TurnoutPiece['enter'], place: Stance): Stance {
  return endStance(shapeOf(site, turnout), end, place);
}

function valuesOf({ slots, values }: Closing, first: number): readonly FoundValue[] {
  return slots.map(({ piece, what }, i) => ({
    piece: first + piece,
    what: what === 'length' ? 'straight' : what,
    value: values[i] ?? 0,
  }));
}
