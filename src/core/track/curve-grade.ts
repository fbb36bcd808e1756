import { scaleFigures } from './scale.ts';

/** mm in 100 ft, the chord by which railways in North America measure curves. */
const CHORD = 30480;
const INCH = 25.4;

/** Degree of curve by chord: the angle over a chord of 100 ft of prototype, radians; radius of the prototype, mm. */
export function degreeOfCurve(radius: number): number {
  return 2 * Math.asin(Math.min(1, CHORD / 2 / radius));
}

/** Grade that drags like a curve of HO: 32 / R (in) per cent, as quoted by builders (common practice). */
const HO_DRAG = 32;

/** 0.04 % for each degree of curve, US practice as quoted. */
const DRAG_PER_DEGREE = 0.04;

/**
 * The grade whose pull equals the drag of a curve, as a ratio; radius of the model, mm. HO by its published 32 / R;
 * other scales by 0.04 % a degree at the prototype's radius, with the degree by arc as for flat curves.
 */
export function curveDrag(radius: number, scale: string): number {
  if (!Number.isFinite(radius)) return 0;
  const inches = radius / INCH;
  if (scale === 'HO' || scale === 'H0') return HO_DRAG / inches / 100;
  const feet = (inches * scaleFigures(scale).ratio) / 12;
  const degrees = (100 / feet) * (180 / Math.PI);
  return (DRAG_PER_DEGREE * degrees) / 100;
}

/** A grade and the drag of its curve together, as a ratio. */
export function effectiveGrade({
  grade,
  radius,
  scale,
}: {
  readonly grade: number;
  readonly radius: number;
  readonly scale: string;
}): number {
  return Math.abs(grade) + curveDrag(radius, scale);
}
