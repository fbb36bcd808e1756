import { compoundAt, smallerUnits } from './compound.ts';
import { SHARED_SIGNS } from './currency.ts';
import { refuseDoubtfulDigits } from './doubtful.ts';
import { feetAndInchesAt, hyphenatedFeetAt } from './feet.ts';
import { withinLimits } from './limit.ts';
import { misread, quoted } from './misread.ts';
import { nearest } from './nearest.ts';
import { matchAt, type Numeral, numeralAt } from './numeral.ts';
import type { Dimension, Expression } from './quantity.ts';
import { product, quotient, type Ratio, sum } from './ratio.ts';
import { currencyUnit, type Unit, unitAt, unitWords, usualUnits } from './unit.ts';

/** A value read from a text: what it measures, how much, and where the text goes on. */
export type Read = {
  readonly ratio: Ratio;
  readonly dimension: Dimension;
  readonly currency?: string;
  readonly from: number;
  readonly to: number;
};

const WORD = /[\p{L}µ°%][\p{L}\p{N}³²/]*/uy;
const CODE_FIRST = /([A-Z]{3}|\p{Sc}|kr) ?(?=[\d.])/uy;

function spaceEnd(text: string, at: number): number {
  return at + (matchAt(/ */y, text, at)?.[0].length ?? 0);
}

function unknownUnit(text: string, at: number, dimension: Dimension) {
  const word = matchAt(WORD, text, at)?.[0] ?? text.charAt(at);
  const shared = SHARED_SIGNS[word];
  if (shared !== undefined) return sharedSign(at, word, shared);
  const near = nearest(word, unitWords(dimension)) ?? nearest(word, unitWords(null));
  const known = usualUnits(dimension).join(', ');
  return misread(at, 'unknown-unit', [
    `\`${word}\` is not a unit`,
    near === null
      ? `units here: ${known || 'none'}; a named dimension stands after \`*\``
      : `did you mean \`${near}\`?`,
  ]);
}

function sharedSign(at: number, sign: string, codes: readonly string[]) {
  return misread(at, 'two-readings', [
    `\`${sign}\` can be read as ${codes.join(' or ')}`,
    `write the currency's code: ${codes.map((code) => `\`18.50 ${code}\``).join(' or ')}`,
  ]);
}

/** Money with its code or sign in front: `USD 20`, `€18.50`. */
function moneyAt(text: string, at: number, dimension: Dimension): Read | null {
  const found = matchAt(CODE_FIRST, text, at);
  if (found === null) return null;
  const word = found[1] ?? '';
  const shared = SHARED_SIGNS[word];
  if (shared !== undefined) throw sharedSign(at, word, shared);
  const unit = currencyUnit(word);
  if (unit === null) {
    const near = nearest(word, unitWords('money'));
    throw misread(at, 'unknown-unit', [
      `\`${word}\` is not a currency`,
      near === null || dimension !== 'money' ? 'write the code of ISO 4217: `EUR`' : `did you mean \`${near}\`?`,
    ]);
  }
  refuseDoubtfulDigits(text, at + found[0].length, 'money');
  const numeral = numeralAt(text, at + found[0].length);
  return numeral === null ? null : measured(numeral, unit, { from: at, to: numeral.to });
}

function measured(numeral: Numeral, unit: Unit, place: { readonly from: number; readonly to: number }): Read {
  const currency = unit.currency === undefined ? {} : { currency: unit.currency };
  return { ratio: product(numeral.ratio, unit.size), dimension: unit.dimension, ...currency, ...place };
}

/** A grade as a ratio: `1:50`, and `1 in 50` where a grade is wanted. */
function gradeAt(text: string, numeral: Numeral, dimension: Dimension): Read | null {
  const sign = matchAt(dimension === 'grade' ? / *: *| +in +/y : / *: */y, text, numeral.to);
  if (sign === null) return null;
  const run = numeralAt(text, numeral.to + sign[0].length);
  if (run === null) return null;
  const written = text.slice(numeral.from, run.to);
  if (dimension === 'duration') {
    throw misread(numeral.from, 'two-readings', [
      `\`${written}\` can be read as hours and minutes or as minutes and seconds`,
      'write `1 h 30 min` or `1 min 30 s`',
    ]);
  }
  if (run.ratio.over === 0)
    throw misread(numeral.from, 'division-by-zero', [
      `\`${written}\` divides by zero`,
      'write a grade as `1:50` or `2 %`',
    ]);
  const ratio = product(numeral.ratio, { over: run.ratio.under, under: run.ratio.over });
  return { ratio, dimension: 'grade', from: numeral.from, to: run.to };
}

/** Where the unit begins: right after the number, after spaces, or after a hyphen before a whole word (`5-inch`). */
function unitStart(text: string, at: number): number {
  if (matchAt(/-(?=(?:inch|inches|foot|feet|ft|in)(?![\p{L}\p{N}]))/uy, text, at) !== null) return at + 1;
  return spaceEnd(text, at);
}

function afterNumeral(text: string, numeral: Numeral, dimension: Dimension): Read {
  const grade = gradeAt(text, numeral, dimension);
  if (grade !== null) return grade;
  const start = unitStart(text, numeral.to);
  const unit = unitAt(text, start, dimension);
  if (unit === null) {
    if (matchAt(WORD, text, start) !== null || SHARED_SIGNS[text.charAt(start)] !== undefined)
      throw unknownUnit(text, start, dimension);
    return { ratio: numeral.ratio, dimension: 'number', from: numeral.from, to: numeral.to };
  }
  const to = start + unit.word.length;
  const feet = feetAndInchesAt(text, numeral, unit);
  if (feet !== null) return { ...feet, dimension: 'length', from: numeral.from };
  return withSmaller(text, measured(numeral, unit, { from: numeral.from, to }), unit);
}

/** `1 h 30 min`, `5 lb 3 oz`, `22° 30'`: smaller units of the same kind follow. */
function withSmaller(text: string, first: Read, unit: Unit): Read {
  let read = first;
  let last = unit;
  while (smallerUnits(last)) {
    const next = compoundAt(text, read.to, last);
    if (next === null) return read;
    read = { ...read, ratio: sum(read.ratio, next.ratio), to: next.to };
    last = next.unit;
  }
  return read;
}

function readAt(text: string, at: number, dimension: Dimension): Read | null {
  const money = moneyAt(text, at, dimension);
  if (money !== null) return money;
  const feet = hyphenatedFeetAt(text, at);
  if (feet !== null) return { ...feet, dimension: 'length', from: at };
  refuseDoubtfulDigits(text, at, dimension);
  const numeral = numeralAt(text, at);
  return numeral === null ? null : afterNumeral(text, numeral, dimension);
}

/**
 * The literal at a place of a plain text, read greedily; null when none begins there.
 * Throws Misread: unknown unit, two readings, a number out of bounds.
 */
export function literalAt(text: string, at: number, dimension: Dimension): Expression | null {
  const read = readAt(text, at, dimension);
  if (read === null) return null;
  const { from, to, currency } = read;
  const value = quotient(read.ratio);
  withinLimits(value, read.dimension, { from, text: quoted(text.slice(from, to)) });
  return {
    kind: 'literal',
    value,
    dimension: read.dimension,
    ...(currency === undefined ? {} : { currency }),
    from,
    to,
  };
}
