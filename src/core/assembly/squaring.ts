import type { Box } from '../geometry/shapes.ts';
import type { Part } from '../stock/part.ts';
import { length, type Sentence, say } from '../units/say.ts';
import type { Placing, Squaring } from './assembly.ts';
import type { Body } from './body.ts';
import { boxRound } from './engagement.ts';

/** Roles that make the outside of a frame. */
const OUTSIDE: readonly string[] = ['side', 'end'];

/**
 * How a frame is brought square: from one corner, along its longest edge first, until both diagonals are the computed
 * one (Pythagoras on the outside of the solids). mm.
 */
export function squaringOf(bodies: readonly Body[], parts: readonly Part[], corner: string): Squaring {
  // a bench without a piece has nothing to square
  if (bodies.length === 0) return { corner, edges: [], diagonal: 0 };
  const outside = parts.filter(({ role }) => OUTSIDE.includes(role));
  const ids = new Set((outside.length > 0 ? outside : parts).flatMap(({ places }) => places.map(({ id }) => id)));
  const round = boxRound(bodies.filter(({ id }) => ids.has(id)));
  const near = (id: string) => bodies.some((one) => one.id === id && touchesCorner(one.box, round, corner));
  const edges = outside
    .flatMap(({ places, blank }) => places.map(({ id }) => ({ part: id, length: blank.length, near: near(id) })))
    .sort((a, b) => b.length - a.length || Number(b.near) - Number(a.near) || (a.part < b.part ? -1 : 1))
    .map(({ part, length: long }) => ({ part, length: long }));
  return { corner, edges, diagonal: Math.hypot(round.max[0] - round.min[0], round.max[1] - round.min[1]) };
}

/** Whether a box reaches the corner of the box round the frame, seen from above, within its own thickness. */
function touchesCorner(box: Box, round: Box, corner: string): boolean {
  const x = corner.endsWith('left') ? box.min[0] - round.min[0] : round.max[0] - box.max[0];
  const y = corner.startsWith('front') ? box.min[1] - round.min[1] : round.max[1] - box.max[1];
  const thin = Math.min(box.max[0] - box.min[0], box.max[1] - box.min[1]);
  return x < thin && y < thin;
}

/** What a dry run goes through before any glue is opened. */
export function dryRunOf(order: readonly Placing[], squaring: Squaring): readonly Sentence[] {
  const turns = order.filter(({ turn }) => turn).length;
  const first = squaring.edges[0]?.part;
  const pieces = new Set(order.flatMap(({ parts }) => parts)).size;
  return [
    say`No glue yet: put ${String(pieces)} pieces in the order below, every clamp set to its opening and laid ready.`,
    ...(turns > 0 ? [say`Turn the frame over where it says so, two people, hands clear of the struts.`] : []),
    ...(first === undefined
      ? []
      : [
          say`Square from the ${squaring.corner} corner, ${first} first; both diagonals read ${length(squaring.diagonal)}.`,
        ]),
    say`A piece that needs a hammer is eased now; pencil the dry fit's marks across every joint before it comes apart.`,
  ];
}
