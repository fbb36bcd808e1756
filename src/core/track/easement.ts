import { moveAlong, type Stretch } from './stretch.ts';

/** What a clothoid from straight to a radius comes to, mm and radians. */
export type EasementFigures = {
  /** angle between the straight and the arc's end of the easement */
  readonly angle: number;
  /** its end from its start, along and across the straight */
  readonly x: number;
  readonly y: number;
  /** how far the arc stands off the straight's line */
  readonly shift: number;
  /** along the straight, from the easement's start to the foot of the arc's centre */
  readonly k: number;
};

/** The easement from straight to `radius` over `length`; both more than 0, mm. */
export function easementFigures({
  radius,
  length,
}: {
  readonly radius: number;
  readonly length: number;
}): EasementFigures {
  const { x, y, turn } = moveAlong({ length, k0: 0, k1: 1 / radius }, length);
  return {
    angle: turn,
    x,
    y,
    shift: y - radius * (1 - Math.cos(turn)),
    k: x - radius * Math.sin(turn),
  };
}

/** Along and across after `at` of an easement to `radius` over `length`; mm. */
export function easementOffset(
  { radius, length }: { readonly radius: number; readonly length: number },
  at: number,
): { readonly x: number; readonly y: number } {
  const { x, y } = moveAlong({ length, k0: 0, k1: 1 / radius }, at);
  return { x, y };
}

/** Length of easement that shifts an arc by `shift`: L = sqrt(24 R f), NEM 113 as quoted; mm. */
export function easementLength({ radius, shift }: { readonly radius: number; readonly shift: number }): number {
  return Math.sqrt(24 * radius * shift);
}

/** Radius above which no easement is called for, 60 times the gauge (NEM 113); mm. */
export function easementLimit(gauge: number): number {
  return 60 * gauge;
}

/** The longest easements a curve can hold at both ends: each turns L / 2R, so L = R times the turn; mm. */
export function longestEasement({ radius, through }: { readonly radius: number; readonly through: number }): number {
  return radius * through;
}

/** Distance from the corner of two straights to the easement's start (a road's tangent): (R + p) tan(turn / 2) + k; mm. */
export function tangentLength(curve: {
  readonly radius: number;
  readonly length: number;
  readonly through: number;
}): number {
  const { shift, k } = easementFigures(curve);
  return (curve.radius + shift) * Math.tan(curve.through / 2) + k;
}

/** Fresnel's integrals of cos and sin of (pi / 2) t^2 from 0 to x (Abramowitz & Stegun 7.3.1 and 7.3.2). */
export function fresnel(x: number): { readonly c: number; readonly s: number } {
  // a clothoid of length |x| whose curvature grows to pi |x| turns by (pi / 2) t^2
  const size = Math.abs(x);
  const stretch: Stretch = { length: size, k0: 0, k1: Math.PI * size };
  const move = moveAlong(stretch, size);
  return x < 0 ? { c: -move.x || 0, s: -move.y || 0 } : { c: move.x, s: move.y };
}
