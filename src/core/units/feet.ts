import { misread } from './misread.ts';
import { matchAt, type Numeral, numeralAt, startsNumeral } from './numeral.ts';
import { product, quotient, type Ratio, sum, whole } from './ratio.ts';
import { twoReadings } from './reading.ts';
import { type Unit, unitAt } from './unit.ts';

const INCH: Ratio = { over: 254, under: 10 };
const FOOT: Ratio = { over: 3048, under: 10 };
const HYPHENATED = /(\d+)-(\d+)-(\d+)\/(\d+)( *)/y;
const SEPARATOR = /-(?=\d)| */y;

type Feet = { readonly ratio: Ratio; readonly to: number };

function isFoot(unit: Unit): boolean {
  return unit.dimension === 'length' && quotient(unit.size) === 304.8;
}

function isInch(unit: Unit | null): boolean {
  return unit !== null && unit.dimension === 'length' && quotient(unit.size) === 25.4;
}

/** Denominators found on a rule or tape: halves to sixty-fourths. */
function onATape(under: number): boolean {
  return [2, 4, 8, 16, 32, 64].includes(under);
}

/** `1-1-1/2in`, `7-0-1/2ft`: feet, inches and fraction with hyphens; the unit says no more than that they are such. */
export function hyphenatedFeetAt(text: string, at: number): Feet | null {
  const found = matchAt(HYPHENATED, text, at);
  if (found === null) return null;
  const [run, feet, inches, over, under] = found;
  const unit = unitAt(text, at + run.length, 'length');
  const part: Ratio = { over: Number(over), under: Number(under) };
  if (part.under === 0)
    throw misread(at, 'division-by-zero', [
      `\`${run.trim()}\` divides by zero`,
      'write a number other than 0 below the line',
    ]);
  const spelt = `${feet}' ${inches} ${over}/${under}"`;
  if (unit === null || !(isInch(unit) || isFoot(unit))) {
    throw misread(at, 'unit-missing', [
      `\`${run.trim()}\` has no unit`,
      `write \`${spelt}\` if feet and inches are meant`,
    ]);
  }
  const inch = sum(whole(Number(inches)), part);
  underAFoot(inch, { at, feet: Number(feet), written: `${run.trim()}${unit.word}` });
  return {
    ratio: sum(product(whole(Number(feet)), FOOT), product(inch, INCH)),
    to: at + run.length + unit.word.length,
  };
}

function underAFoot(
  inches: Ratio,
  { at, feet, written }: { readonly at: number; readonly feet: number; readonly written: string },
): void {
  if (quotient(inches) < 12) return;
  const total = feet * 12 + quotient(inches);
  throw misread(at, 'inches-over-a-foot', [
    `\`${written.trim()}\` has a foot or more of inches after the feet`,
    `write \`${Math.floor(total / 12)} ft ${total % 12} in\` or \`${total} in\` if that is meant`,
  ]);
}

/** `4'2/3"`: a fraction no tape carries may be 4 ft 2/3 in, or 4 ft 2 in, or 4 ft 3 in. */
function doubtfulFraction(
  text: string,
  at: number,
  { feet, inches, to }: { feet: number; inches: Numeral; to: number },
) {
  const written = text.slice(inches.from, inches.to);
  const [over = '', under = ''] = written.split('/');
  const readings = [`${over}/${under}`, over, under].map((part, i) => ({
    text: `${feet} ft ${part} in`,
    mm: (feet * 12 + (i === 0 ? quotient(inches.ratio) : Number(part))) * 25.4,
  }));
  return twoReadings(at, text.slice(at, to), readings);
}

/**
 * Feet that begin at a number with a foot's unit, with the inches that follow: `7' 2 3/8"`, `7'2-3/8`, `5 ft 3 in`.
 * Null when the unit is no foot or no inches follow.
 */
export function feetAndInchesAt(text: string, feet: Numeral, unit: Unit): Feet | null {
  if (!isFoot(unit)) return null;
  const end = text.startsWith(unit.word, feet.to) ? feet.to : text.indexOf(unit.word, feet.to);
  const after = end + unit.word.length;
  const start = after + (matchAt(SEPARATOR, text, after)?.[0].length ?? 0);
  if (!startsNumeral(text, start)) return null;
  const inches = numeralAt(text, start);
  if (inches === null) return null;
  return joinedInches(text, feet, inches);
}

/** Where the inches end, past their unit if they carry one; null when another unit follows the number. */
function inchesEnd(text: string, inches: Numeral): number | null {
  const hyphen = matchAt(/-(?=inch|in(?![\p{L}]))/uy, text, inches.to) === null ? 0 : 1;
  const start = inches.to + hyphen + (matchAt(/ */y, text, inches.to + hyphen)?.[0].length ?? 0);
  const unit = unitAt(text, start, 'length');
  if (unit === null) return /[\p{L}:,]/u.test(text.charAt(start)) ? null : inches.to;
  return isInch(unit) ? start + unit.word.length : null;
}

function joinedInches(text: string, feet: Numeral, inches: Numeral): Feet | null {
  const to = inchesEnd(text, inches);
  if (to === null) return null;
  const written = text.slice(feet.from, to);
  if (feet.form !== 'whole') {
    throw misread(feet.from, 'feet-not-whole', [
      `\`${written.trim()}\` has parts of a foot and inches`,
      'write whole feet and inches, or inches alone',
    ]);
  }
  const { ratio } = inches;
  if (inches.form === 'fraction' && !onATape(ratio.under) && /\//.test(text.slice(inches.from, inches.to))) {
    throw doubtfulFraction(text, feet.from, { feet: feet.ratio.over, inches, to });
  }
  underAFoot(ratio, { at: feet.from, feet: feet.ratio.over, written });
  return { ratio: sum(product(feet.ratio, FOOT), product(ratio, INCH)), to };
}
