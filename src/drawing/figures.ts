import { showDecimalInches } from '../core/units/show.ts';
import type { DrawingUnit } from './drawing.ts';

/** The least difference a drawing prints: 0.1 mm, or 1/32 in. In mm. */
export const leastStep: Readonly<Record<DrawingUnit, number>> = { mm: 0.1, in: 25.4 / 32 };

/** An inch figure further than this from the true length carries a + or a - (1/128 in). In mm. */
const remainderThatMatters = 25.4 / 128;

/** What doubles lose in a division: a length typed as a half still rounds up. */
const halfSlack = 1e-9;

/** The ordinate as a whole number of least steps, so that differences of printed ordinates add up as printed. */
export function onGrid(mm: number, unit: DrawingUnit): number {
  const steps = Math.floor(mm / leastStep[unit] + 0.5 + halfSlack);
  return steps === 0 ? 0 : steps;
}

function millimetres(steps: number): string {
  return String(steps / 10);
}

/** So many parts of an inch in lowest terms: 44 of 64 is `11/16`. */
function inches(count: number, parts: number): string {
  const whole = Math.floor(Math.abs(count) / parts);
  let top = Math.abs(count) % parts;
  let bottom = parts;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = top === 0 ? '' : `${top}/${bottom}`;
  const figure = whole === 0 ? fraction || '0' : [whole, fraction].filter((piece) => piece !== '').join(' ');
  return count < 0 ? `-${figure}` : figure;
}

/** What is printed for so many least steps; `exact` (mm) adds the inch sign of a remainder that matters. */
export function stepsText(steps: number, unit: DrawingUnit, exact: number): string {
  if (unit === 'mm') return millimetres(steps);
  const over = exact - steps * leastStep.in;
  const sign = Math.abs(over) <= remainderThatMatters ? '' : over > 0 ? '+' : '-';
  return inches(steps, 32) + sign;
}

/** A length as a rule reads it, rounded once: positions from a datum, heights, and all that is long. */
export function lengthText(mm: number, unit: DrawingUnit): string {
  return stepsText(onGrid(mm, unit), unit, mm);
}

/** A fraction of an inch stands for a fit when it is no further than this from it (0.002 in). In mm. */
const snug = 0.002 * 25.4;

/**
 * What a tool or a caliper is set to: millimetres to 0.1, under a millimetre to 0.01; inches in 64ths where one is as
 * good as exact, else decimal to 0.001.
 */
export function fitText(mm: number, unit: DrawingUnit): string {
  if (unit === 'mm') return Math.abs(mm) < 1 ? String(Math.round(mm * 100) / 100 + 0) : lengthText(mm, unit);
  const count = Math.round((mm / 25.4) * 64) + 0;
  return count !== 0 && Math.abs(mm - (count * 25.4) / 64) <= snug ? inches(count, 64) : showDecimalInches(mm);
}

/** A size printed on its own: what is under an inch is a thickness, a width or a depth of a fit, the rest a length. */
export function sizeText(mm: number, unit: DrawingUnit): string {
  return unit === 'in' && Math.abs(mm) < 25.4 ? fitText(mm, unit) : lengthText(mm, unit);
}

/** The largest cut that is made to fit another piece rather than to a line, mm. */
const largestFit = 4 * 25.4;

/** The width or depth of a cut: a fit up to 4 in, a length beyond. */
export function cutText(mm: number, unit: DrawingUnit): string {
  return unit === 'in' && Math.abs(mm) < largestFit ? fitText(mm, unit) : lengthText(mm, unit);
}

/**
 * A link of a chain. In millimetres the difference of its rounded ends, so that a chain adds up as printed; in inches
 * rounded by itself, so that one length reads alike wherever it stands, and its sign says what the sum may be out.
 */
export function betweenText(from: number, to: number, unit: DrawingUnit): string {
  return unit === 'mm' ? stepsText(onGrid(to, unit) - onGrid(from, unit), unit, to - from) : sizeText(to - from, unit);
}

/** A link of a chain between places, where nothing has to fit: inches in fractions alone. */
export function apartText(from: number, to: number, unit: DrawingUnit): string {
  return unit === 'mm' ? betweenText(from, to, unit) : lengthText(to - from, unit);
}

/** The name of the unit as the title block gives it. */
export const unitNames: Readonly<Record<DrawingUnit, string>> = { mm: 'mm', in: 'inches' };

/** A length inside a sentence, with its unit. */
export function saidLength(mm: number, unit: DrawingUnit): string {
  return `${sizeText(mm, unit)} ${unit}`;
}

/** The width or depth of a cut inside a sentence, with its unit. */
export function saidCut(mm: number, unit: DrawingUnit): string {
  return `${cutText(mm, unit)} ${unit}`;
}
