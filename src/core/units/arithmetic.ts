import { literalAt } from './literal.ts';
import { type Misread, misread, quoted } from './misread.ts';
import { matchAt, startsNumeral } from './numeral.ts';
import type { Dimension, Expression } from './quantity.ts';
import { twoReadings } from './reading.ts';

/** Deepest nesting read: no value a person writes comes near. */
export const DEEPEST = 40;

type Operator = '+' | '-' | '*' | '/';
/** A plain text, and what its value is expected to measure. */
export type Reader = { readonly text: string; readonly dimension: Dimension };
type Place = { readonly at: number; readonly depth: number };

const NAME = /[A-Za-z][A-Za-z0-9]*(?:[-.][A-Za-z0-9]+)*/y;
const OPERATORS: Readonly<Record<string, Operator>> = { '+': '+', '-': '-', '*': '*', '×': '*', '·': '*', '/': '/' };
const STRENGTH: Readonly<Record<Operator, number>> = { '+': 1, '-': 1, '*': 2, '/': 2 };
const UNARY_STRENGTH = 3;

function skipSpaces(text: string, at: number): number {
  return at + (matchAt(/ */y, text, at)?.[0].length ?? 0);
}

/** The value that begins at a place: a literal, a name, something in parentheses, or one with a minus before it. */
function operand(reader: Reader, place: Place): Expression {
  const { text, dimension } = reader;
  if (place.depth > DEEPEST)
    throw misread(place.at, 'too-deep', [
      'the parentheses or signs are nested too deeply',
      `nest ${DEEPEST} deep at most`,
    ]);
  const at = skipSpaces(text, place.at);
  const here = { at: at + 1, depth: place.depth + 1 };
  if (text.charAt(at) === '(') return parenthesis(reader, here);
  if (text.charAt(at) === '-') {
    const of = binary(reader, here, UNARY_STRENGTH);
    return { kind: 'negate', of, from: at, to: of.to };
  }
  return literalAt(text, at, dimension) ?? nameAt(text, at);
}

function nameAt(text: string, at: number): Expression {
  const name = matchAt(NAME, text, at)?.[0];
  if (name === undefined) throw unexpected(text, at);
  const to = at + name.length;
  if (/^(?:nan|inf|infinity)$/i.test(name))
    throw misread(at, 'not-a-number', [`\`${name}\` is no number`, 'write a number with its unit']);
  if (text.charAt(skipSpaces(text, to)) === '(') {
    throw misread(at, 'no-functions', [
      `\`${name}(...)\` looks like a function`,
      'use + - * / and parentheses; write `*` to multiply',
    ]);
  }
  return { kind: 'name', name, from: at, to };
}

function unexpected(text: string, at: number): Misread {
  const character = text.charAt(at);
  if (character === '')
    return misread(text.length, 'value-missing', [
      'the text ends where a value should stand',
      'write a value with its unit, or the name of a dimension',
    ]);
  return misread(at, 'unexpected-character', [
    `\`${character}\` cannot stand here`,
    'write a value with its unit, or the name of a dimension',
  ]);
}

function parenthesis(reader: Reader, place: Place): Expression {
  const inner = binary(reader, place, 0);
  const end = skipSpaces(reader.text, inner.to);
  if (reader.text.charAt(end) !== ')') {
    throw end >= reader.text.length
      ? misread(place.at - 1, 'parenthesis-open', ['this parenthesis is never closed', 'write `)` where it ends'])
      : notAnOperator(reader.text, end);
  }
  return { ...inner, from: place.at - 1, to: end + 1 };
}

function notAnOperator(text: string, at: number): Misread {
  const character = text.charAt(at);
  if (startsNumeral(text, at) || matchAt(NAME, text, at) !== null || character === '(') {
    return misread(at, 'operator-missing', [
      `${quoted(text.slice(at))} follows without an operator`,
      'write + - * or / between two values',
    ]);
  }
  const mend = character === ',' ? 'write a point before decimals, and no commas' : 'use + - * / and parentheses';
  return misread(at, 'unexpected-character', [`\`${character}\` cannot stand here`, mend]);
}

/** A minus between two values stands between spaces, since a hyphen joins words and fractions. */
function checkMinus(text: string, at: number): void {
  if (text.charAt(at - 1) === ' ' && text.charAt(at + 1) === ' ') return;
  throw misread(at, 'minus-without-spaces', [
    'this minus needs a space on both sides',
    'write `a - b`; a hyphen joins words and fractions',
  ]);
}

/** Operators over values, by precedence climbing (Pratt 1973): stronger than `least` binds here. */
function binary(reader: Reader, place: Place, least: number): Expression {
  const { text } = reader;
  let left = operand(reader, place);
  for (;;) {
    const at = skipSpaces(text, left.to);
    const operator = OPERATORS[text.charAt(at)];
    if (operator === undefined || STRENGTH[operator] <= least) return left;
    if (operator === '-') checkMinus(text, at);
    const right = binary(reader, { at: at + 1, depth: place.depth + 1 }, STRENGTH[operator]);
    refuseTwoMeanings(text, { operator, left, right });
    left = { kind: 'binary', operator, left, right, from: left.from, to: right.to };
  }
}

/** `5' - 6"` may be 5 ft 6 in; `side / 1/2` may be half or double. */
function refuseTwoMeanings(text: string, node: { operator: Operator; left: Expression; right: Expression }): void {
  const { operator, left, right } = node;
  const [before, after] = [text.slice(left.from, left.to), text.slice(right.from, right.to)];
  if (
    operator === '-' &&
    left.kind === 'literal' &&
    right.kind === 'literal' &&
    /^\d+ *(?:'|ft|foot|feet)$/.test(before) &&
    /(?:"|in|inch|inches)$/.test(after) &&
    right.value < 304.8
  ) {
    throw twoReadings(left.from, text.slice(left.from, right.to), [
      { text: `${before} ${after}`, mm: left.value + right.value },
      { text: `(${before}) - ${after}`, mm: left.value - right.value },
    ]);
  }
  if (operator === '/' && /^\d+\/\d+$/.test(after)) {
    throw misread(right.from, 'two-readings', [
      `\`/ ${after}\` can be read as dividing twice or by the fraction`,
      `write \`/ (${after})\` or \`/ ${after.replace('/', ' / ')}\``,
    ]);
  }
}

/** The tree of a whole plain text. Throws Misread at the first fault. */
export function treeOf(reader: Reader): Expression {
  const tree = binary(reader, { at: 0, depth: 0 }, 0);
  const end = skipSpaces(reader.text, tree.to);
  if (end < reader.text.length) throw notAnOperator(reader.text, end);
  return tree;
}
