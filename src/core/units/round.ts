/** Printed step of a length in millimetres: a tenth. Unit mm. */
export const TENTH_OF_MM = 0.1;

/** Printed step of a length in inches: a sixty-fourth. Unit mm. */
export const SIXTY_FOURTH_OF_INCH = 25.4 / 64;

/** Printed step of lengths shown in a unit, mm. */
export function stepsOf(unit: 'mm' | 'in'): number {
  return unit === 'mm' ? TENTH_OF_MM : SIXTY_FOURTH_OF_INCH;
}

/** What doubles lose in `value / step`: a value typed as a half must still round as one. */
const HALF_SLACK = 1e-9;

/**
 * The whole multiple of `step` nearest to `value`; halves go away from zero; never -0.
 * Step > 0; the noise of the last bits is cut at 15 digits, so that 679 steps of 0.1 are 67.9.
 */
export function roundTo(value: number, step: number): number {
  const count = Math.floor(Math.abs(value) / step + 0.5 + HALF_SLACK);
  const rounded = Number((count * step).toPrecision(15));
  return rounded === 0 ? 0 : value < 0 ? -rounded : rounded;
}

/** Which way a length is rounded where it is shown: a least is never shown as less than it is, a most never as more. */
export type Way = 'up' | 'down';

/** A whole multiple of `step` not less than `value`, or not more; a millionth of a step is noise. Step > 0. */
export function roundTowards(value: number, step: number, way: Way): number {
  const count = way === 'up' ? Math.ceil(value / step - 1e-6) : Math.floor(value / step + 1e-6);
  return count === 0 ? 0 : Number((count * step).toPrecision(15));
}
