import { roundTo, roundTowards, stepsOf, type Way } from './round.ts';

/** What a length is first shown in. */
export type LengthUnit = 'mm' | 'in';

/** Inches are shown in halves down to this part of an inch. */
export type Denominator = 16 | 32 | 64;

/** How far, in inches, a shown fraction may be from the length before a + or - says so. */
export const UNMARKED_INCHES = 1 / 128;

/** A number with up to so many digits after the point; no trailing zeros, no -0, no exponent. */
export function showNumber(value: number, digits: number): string {
  const rounded = roundTo(value, 10 ** -digits);
  const text = rounded.toFixed(digits);
  return digits === 0 ? text : text.replace(/\.?0+$/, '');
}

/** A length in mm without its unit: `18`, `67.9`. */
export function showMm(mm: number, digits: number): string {
  return showNumber(mm, digits);
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}

/** Whole parts of an inch as a mixed number in lowest terms: 15/2 as `7 1/2`. Count of parts 0 or more. */
function mixed(count: number, denominator: number): string {
  const inches = Math.floor(count / denominator);
  const rest = count % denominator;
  if (rest === 0) return `${inches}`;
  const common = divisor(denominator, rest);
  const fraction = `${rest / common}/${denominator / common}`;
  return inches === 0 ? fraction : `${inches} ${fraction}`;
}

function partsOf(mm: number, denominator: number): number {
  return roundTo((Math.abs(mm) / 25.4) * denominator, 1);
}

/** `+` where the length is more than what is shown of it, `-` where it is less, by over the tolerance in inches. */
function remainderMark(
  mm: number,
  count: number,
  { denominator, tolerance }: { denominator: number; tolerance: number },
): string {
  const over = Math.abs(mm) / 25.4 - count / denominator;
  return Math.abs(over) <= tolerance + 1e-9 ? '' : over > 0 ? '+' : '-';
}

/**
 * A length in inches as a rule reads it, in lowest terms, without its unit: `7 1/2`, `23/32`. Length in mm.
 * `7 1/2+` and `7 1/2-` when the rest is over `tolerance` inches; Infinity never marks.
 */
export function showInches(mm: number, denominator: Denominator, tolerance = UNMARKED_INCHES): string {
  const count = partsOf(mm, denominator);
  const mark = remainderMark(mm, count, { denominator, tolerance });
  return `${mm < 0 && count > 0 ? '-' : ''}${mixed(count, denominator)}${mark}`;
}

/** Less than this is no length that anybody measures, mm. */
const NOTHING = 0.001;

/** Decimal inches to 0.001; what is under a hundredth of an inch keeps two digits that count. Length in mm. */
export function showDecimalInches(mm: number): string {
  const value = mm / 25.4;
  if (Math.abs(mm) < NOTHING) return '0';
  return Math.abs(value) < 0.01 ? String(Number(value.toPrecision(2))) : value.toFixed(3);
}

/**
 * A length with its unit, to 0.1 mm or 1/64 in: `18 mm`, `7 1/2 in`; what is less than half a 64th is given in decimals
 * and never as nothing; with a `way`, to the step that is still enough or not too much. Length in mm.
 */
export function showLength(exact: number, unit: LengthUnit, way?: Way): string {
  const mm = way === undefined ? exact : roundTowards(exact, stepsOf(unit), way);
  if (unit === 'mm') return `${showMm(roundTo(mm, stepsOf('mm')), 1)} mm`;
  return `${partsOf(mm, 64) === 0 ? showDecimalInches(mm) : showInches(mm, 64)} in`;
}

/** The length in the other unit than the one it is shown in, for the small print beside it. Length in mm. */
export function echo(mm: number, shown: LengthUnit): string {
  return showLength(mm, shown === 'mm' ? 'in' : 'mm');
}

/** A length in feet and inches: `7' 2 3/8"`, under a foot `2 3/8"`. Length in mm. */
export function showFeetInches(mm: number, denominator: Denominator): string {
  const count = partsOf(mm, denominator);
  const feet = Math.floor(count / (12 * denominator));
  const inches = `${mixed(count % (12 * denominator), denominator)}"`;
  const said = feet === 0 ? inches : inches === '0"' ? `${feet}'` : `${feet}' ${inches}`;
  return mm < 0 && count > 0 ? `-${said}` : said;
}
