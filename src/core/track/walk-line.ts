import { type Element, kindOf } from './element.ts';
import type { LineInput } from './input.ts';
import type { LaidTurnout } from './laid.ts';
import type { FoundValue, LineJoint, LineWay } from './line.ts';
import type { Piece, TurnoutPiece } from './piece.ts';
import { pieceWay } from './piece-way.ts';
import { type Site, shapeOf, wayThrough } from './site.ts';
import { facingBack, moveAlong, moved, type Stance, type Way } from './stretch.ts';
import { endStance, placedTurnout } from './turnout-shape.ts';

/** Where one stands on a line: distance from its start, place and heading. */
type Here = { readonly at: number; readonly stance: Stance };

/** Goes along pieces whose values are all known; a turnout that lies already is passed where it lies. */
export function walkLine(
  input: LineInput,
  site: Site,
  found: readonly FoundValue[],
): { readonly line: LineWay; readonly turnouts: readonly LaidTurnout[] } {
  const elements: Element[] = [];
  const joints: LineJoint[] = [];
  const turnouts = new Map<string, LaidTurnout>();
  const turnoutWay = wayThrough(site);
  let here: Here = { at: 0, stance: site.start };
  input.pieces.forEach((piece, index) => {
    const known =
      piece.kind === 'turnout' ? (site.placed.get(piece.turnout) ?? turnouts.get(piece.turnout)) : undefined;
    const entered = known === undefined || piece.kind !== 'turnout' ? here : { ...here, stance: entryOf(known, piece) };
    const step = stepOver(piece, { index, here: entered, way: pieceWay(piece, turnoutWay) });
    const laid =
      piece.kind === 'turnout' && known === undefined
        ? laidTurnout(piece, site, { line: input.id, index, from: entered, to: step.here })
        : null;
    if (laid !== null) turnouts.set(laid.id, laid);
    elements.push(...step.elements);
    here = step.here;
    if (piece.joint !== null) joints.push({ id: piece.joint, at: here.at, ...here.stance });
  });
  const { id, at, phase, ends } = input;
  const from = input.from.kind === 'end' ? input.from.name : null;
  const own = { id, at, phase, ends, from, elements, joints, unknowns: found };
  return { line: { ...own, length: here.at, start: site.start, end: here.stance }, turnouts: [...turnouts.values()] };
}

function entryOf({ shape, place }: LaidTurnout, { enter }: TurnoutPiece): Stance {
  return facingBack(endStance(shape, enter, place));
}

type Stepping = { readonly index: number; readonly here: Here; readonly way: Way };

/** The elements of one piece, and where one stands after it. */
function stepOver(
  piece: Piece,
  { index, here, way }: Stepping,
): { readonly elements: readonly Element[]; readonly here: Here } {
  const turnout = piece.kind === 'turnout' ? piece.turnout : null;
  const elements: Element[] = [];
  let { at, stance } = here;
  for (const stretch of way) {
    const { length } = stretch;
    elements.push({ kind: kindOf(stretch), piece: index, turnout, base: stance, stretch, aside: 0, from: at, length });
    stance = moved(stance, moveAlong(stretch, length));
    at += length;
  }
  return { elements, here: { at, stance } };
}

type Passing = { readonly line: string; readonly index: number; readonly from: Here; readonly to: Here };

function laidTurnout(piece: TurnoutPiece, site: Site, { line, index, from, to }: Passing): LaidTurnout | null {
  const turnout = site.turnouts.get(piece.turnout);
  if (turnout === undefined) return null;
  const shape = shapeOf(site, piece.turnout);
  const { turnout: id, enter, take } = piece;
  const place = placedTurnout(shape, enter, from.stance);
  return { id, turnout, shape, place, line, enter, take, enters: from.at, leaves: to.at, piece: index };
}
