import { integrateDirection } from './quadrature.ts';

/** A place on the deck and the way one looks there: mm, radians counter-clockwise from x. */
export type Stance = { readonly x: number; readonly y: number; readonly heading: number };

/**
 * Track whose curvature changes evenly with length: a straight (0, 0), an arc (k, k) or a clothoid. Length mm;
 * curvatures 1/mm, positive to the left.
 */
export type Stretch = { readonly length: number; readonly k0: number; readonly k1: number };

/** Stretches end to end, each going on where the one before ended. */
export type Way = readonly Stretch[];

/** Where one gets to from the origin, looking along x. */
export type Move = { readonly x: number; readonly y: number; readonly turn: number };

/** sin(a) / a, without loss near 0. */
function sinc(a: number): number {
  return Math.abs(a) < 1e-4 ? 1 - (a * a) / 6 + a ** 4 / 120 : Math.sin(a) / a;
}

/** Turn after `s` of a stretch, radians. */
export function turnAfter({ length, k0, k1 }: Stretch, s: number): number {
  return length === 0 ? 0 : k0 * s + ((k1 - k0) * s * s) / (2 * length);
}

/** Curvature at `s` of a stretch, 1/mm. */
export function curvatureAt({ length, k0, k1 }: Stretch, s: number): number {
  return length === 0 ? k0 : k0 + ((k1 - k0) * s) / length;
}

/** The move along the first `s` of a stretch; 0 <= s <= length, mm. Arcs in closed form, clothoids by quadrature. */
export function moveAlong(stretch: Stretch, s: number): Move {
  const { length, k0, k1 } = stretch;
  const turn = turnAfter(stretch, s);
  if (Math.abs(k1 - k0) * length < 1e-14) {
    // a chord of s sinc(turn / 2) in the direction of half the turn
    const chord = s * sinc(turn / 2);
    return { x: chord * Math.cos(turn / 2), y: chord * Math.sin(turn / 2), turn };
  }
  const most = Math.max(Math.abs(k0), Math.abs(curvatureAt(stretch, s))) * s;
  const panels = Math.max(1, Math.ceil(most / 1.5));
  const [x, y] = integrateDirection((t) => turnAfter(stretch, t), { to: s, panels });
  return { x, y, turn };
}

/** The stance after a move. */
export function moved(from: Stance, { x, y, turn }: Move): Stance {
  const [c, s] = [Math.cos(from.heading), Math.sin(from.heading)];
  return { x: from.x + c * x - s * y, y: from.y + s * x + c * y, heading: from.heading + turn };
}

/** One move after another. */
export function followed(first: Move, next: Move): Move {
  const { x, y, heading } = moved({ x: first.x, y: first.y, heading: first.turn }, next);
  return { x, y, turn: heading };
}

/** The move along a whole way. */
export function wayMove(way: Way): Move {
  return way.reduce<Move>((move, stretch) => followed(move, moveAlong(stretch, stretch.length)), {
    x: 0,
    y: 0,
    turn: 0,
  });
}

/** Length of a way, mm. */
export function wayLength(way: Way): number {
  return way.reduce((sum, { length }) => sum + length, 0);
}

/** The same rails run the other way. */
export function reversedWay(way: Way): Way {
  return way.map(({ length, k0, k1 }) => ({ length, k0: -k1 || 0, k1: -k0 || 0 })).reverse();
}

/** The same place looked at from ahead. */
export function facingBack({ x, y, heading }: Stance): Stance {
  return { x, y, heading: heading + Math.PI };
}

/** An angle brought to more than -pi and at most pi. */
export function wrapped(angle: number): number {
  const turn = angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
  return turn <= -Math.PI ? turn + 2 * Math.PI : turn;
}
