import { misread } from './misread.ts';
import { matchAt } from './numeral.ts';
import type { Dimension } from './quantity.ts';
import { decimal, product, quotient } from './ratio.ts';
import { type Reading, twoReadings } from './reading.ts';
import { unitAt } from './unit.ts';

const COMMAS = /(\d+)((?:,\d+)+)(?:\.\d+)?/y;
const POINTS_AND_COMMA = /(\d{1,3}(?:\.\d{3})+),(\d+)/y;
const EXPONENT = /(?:\d+(?:\.\d*)?|\.\d+)[eE][+-]?\d+/y;
const APOSTROPHES = /(\d{1,3})'(\d{3})(?!\d)/y;
const SPACED = /(\d{1,3})((?: \d{3})+)(?![\d/.])/y;
const FEET_END = /' *(?:\d|$)/y;

/** What one of the unit that follows is worth in mm, and its word as it would be written. */
function lengthUnit(text: string, at: number): { readonly word: string; readonly mm: number; readonly to: number } {
  const start = at + (matchAt(/ */y, text, at)?.[0].length ?? 0);
  const unit = unitAt(text, start, 'length');
  if (unit === null || unit.dimension !== 'length') return { word: 'mm', mm: 1, to: at };
  return { word: unit.word, mm: quotient(unit.size), to: start + unit.word.length };
}

function readingOf(digits: string, unit: { readonly word: string; readonly mm: number }): Reading {
  const glue = unit.word === "'" || unit.word === '"' ? '' : ' ';
  return { text: `${digits}${glue}${unit.word}`, mm: quotient(product(decimal(digits), { over: unit.mm, under: 1 })) };
}

function refuseExponent(text: string, at: number): void {
  const found = matchAt(EXPONENT, text, at);
  if (found === null) return;
  throw misread(at, 'exponent', [
    `\`${found[0]}\` is written with an exponent`,
    'write the number out: `1000`, not `1e3`',
  ]);
}

/** `1.000,5`: points that part thousands, a comma before the decimals. */
function refusePointsAndComma(text: string, at: number): void {
  const found = matchAt(POINTS_AND_COMMA, text, at);
  if (found === null) return;
  const [run, first = '', rest = ''] = found;
  const unit = lengthUnit(text, at + run.length);
  throw twoReadings(at, text.slice(at, Math.max(unit.to, at + run.length)), [
    readingOf(`${first.replaceAll('.', '')}.${rest}`, unit),
  ]);
}

function refuseComma(text: string, at: number, dimension: Dimension): void {
  const found = matchAt(COMMAS, text, at);
  if (found === null) return;
  const [run, first = '', rest = ''] = found;
  const tail = run.slice(first.length + rest.length);
  const asThousands = first + rest.replaceAll(',', '') + tail;
  const asPoint = `${first}.${rest.slice(1).replaceAll(',', '')}`;
  if (dimension !== 'length') {
    const after = text.slice(at + run.length).trim();
    const [one, other] = [asPoint, asThousands].map((digits) => `\`${`${digits} ${after}`.trim()}\``);
    throw misread(at, 'two-readings', [`\`${run}\` can be read as ${one} or ${other}`, `write ${one} or ${other}`]);
  }
  const unit = lengthUnit(text, at + run.length);
  const both = tail === '' && rest.lastIndexOf(',') === 0;
  const readings = both ? [readingOf(asPoint, unit), readingOf(asThousands, unit)] : [readingOf(asThousands, unit)];
  throw twoReadings(at, text.slice(at, unit.to === at + run.length ? at + run.length : unit.to), readings);
}

function refuseApostrophe(text: string, at: number): void {
  const found = matchAt(APOSTROPHES, text, at);
  if (found === null) return;
  const [run, first = '', rest = ''] = found;
  const end = at + run.length;
  const after = /^' *(\d{1,2}) *"/.exec(text.slice(end));
  const inches = after === null ? 0 : Number(after[1]);
  const digits = first + rest;
  if (matchAt(FEET_END, text, end) !== null) {
    const tail = after === null ? '' : ` ${inches} in`;
    throw twoReadings(at, text.slice(at), [
      { text: `${digits} ft${tail}`, mm: (Number(digits) * 12 + inches) * 25.4 },
      { text: `${first} ft ${Number(rest) + inches} in`, mm: (Number(first) * 12 + Number(rest) + inches) * 25.4 },
    ]);
  }
  const unit = lengthUnit(text, end);
  throw twoReadings(at, text.slice(at, Math.max(unit.to, end)), [
    readingOf(digits, unit),
    { text: `${first} ft ${Number(rest)} in`, mm: (Number(first) * 12 + Number(rest)) * 25.4 },
  ]);
}

function refuseSpaces(text: string, at: number): void {
  const found = matchAt(SPACED, text, at);
  if (found === null) return;
  const [run, first = ''] = found;
  const unit = lengthUnit(text, at + run.length);
  const last = run.slice(run.lastIndexOf(' ') + 1);
  throw twoReadings(at, text.slice(at, Math.max(unit.to, at + run.length)), [
    readingOf(run.replaceAll(' ', ''), unit),
    readingOf(`${first}.${last}`, unit),
  ]);
}

/** Refuses digits that mean different numbers to different readers: `1,5`, `1'000`, `1 600`, and `1e3`. */
export function refuseDoubtfulDigits(text: string, at: number, dimension: Dimension): void {
  refuseExponent(text, at);
  refuseComma(text, at, dimension);
  if (dimension !== 'length') return;
  refusePointsAndComma(text, at);
  refuseApostrophe(text, at);
  refuseSpaces(text, at);
}
