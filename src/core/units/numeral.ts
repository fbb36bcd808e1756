import { VULGAR } from './characters.ts';
import { misread } from './misread.ts';
import { decimal, type Ratio, sum, whole } from './ratio.ts';

/** A number as written, without its unit. */
export type Numeral = {
  readonly ratio: Ratio;
  readonly form: 'whole' | 'decimal' | 'fraction' | 'mixed';
  /** where it begins and where the text goes on */
  readonly from: number;
  readonly to: number;
};

const GLYPHS = Object.keys(VULGAR).join('');
const MIXED = new RegExp(`(\\d+)(?:(?: +|-)(\\d+)/(\\d+)|(?: *|-)([${GLYPHS}]))`, 'y');
const FRACTION = new RegExp(`(\\d+)/(\\d+)|([${GLYPHS}])`, 'y');
const DECIMAL = /\d+(?:\.\d+)?|\.\d+/y;
const NO_NUMBER = /[\d.]*\.[\d.]*/y;

/** A sticky pattern tried at one place. */
export function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** Whether a number begins at a place: a digit, a point with a digit, or a fraction glyph. */
export function startsNumeral(text: string, at: number): boolean {
  return matchAt(DECIMAL, text, at) !== null || VULGAR[text.charAt(at)] !== undefined;
}

function fraction(over: string | undefined, under: string | undefined, glyph: string | undefined): Ratio {
  const known = glyph === undefined ? undefined : VULGAR[glyph];
  if (known !== undefined) return { over: known[0], under: known[1] };
  return { over: Number(over), under: Number(under) };
}

function sound(part: Ratio, from: number, written: string): Ratio {
  if (part.under !== 0) return part;
  throw misread(from, 'division-by-zero', [
    `\`${written}\` divides by zero`,
    'write a number other than 0 below the line',
  ]);
}

function mixed(text: string, at: number): Numeral | null {
  const found = matchAt(MIXED, text, at);
  if (found === null) return null;
  const [written, count, over, under, glyph] = found;
  const part = sound(fraction(over, under, glyph), at, written);
  if (part.over >= part.under) {
    const carried = `${Number(count) + Math.floor(part.over / part.under)} ${part.over % part.under}/${part.under}`;
    throw misread(at, 'fraction-over-one', [
      `the fraction of \`${written}\` is one or more`,
      `write \`${carried.replace(/ 0\/\d+$/, '')}\` if that is meant`,
    ]);
  }
  return { ratio: sum(whole(Number(count)), part), form: 'mixed', from: at, to: at + written.length };
}

function fractional(text: string, at: number): Numeral | null {
  const found = matchAt(FRACTION, text, at);
  if (found === null) return null;
  const [written, over, under, glyph] = found;
  return {
    ratio: sound(fraction(over, under, glyph), at, written),
    form: 'fraction',
    from: at,
    to: at + written.length,
  };
}

function pointed(text: string, at: number): Numeral | null {
  const found = matchAt(DECIMAL, text, at);
  if (found === null) return null;
  const to = at + found[0].length;
  if (text.charAt(to) === '.' && /[\d.]/.test(text.charAt(to + 1))) {
    const run = matchAt(NO_NUMBER, text, at)?.[0] ?? found[0];
    throw misread(at, 'not-a-number', [`\`${run}\` is no number`, 'write one decimal point at most']);
  }
  return { ratio: decimal(found[0]), form: /\./.test(found[0]) ? 'decimal' : 'whole', from: at, to };
}

/**
 * The number at a place, read greedily: `7 1/2`, `7-1/2`, `7½`, `3/4`, `18.25`; null when none begins there.
 * Faults: a fraction over zero, a mixed number whose fraction is one or more, two decimal points.
 */
export function numeralAt(text: string, at: number): Numeral | null {
  return mixed(text, at) ?? fractional(text, at) ?? pointed(text, at);
}
