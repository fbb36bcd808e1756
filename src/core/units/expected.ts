import { misread } from './misread.ts';
import type { Dimension, Expression } from './quantity.ts';
import { readingWords } from './reading.ts';
import { dimensionWords, exampleOf } from './wrong-dimension.ts';

/** What a place asks for, and what numbers without a unit mean there. */
export type Expected = { readonly expected: Dimension; readonly bare: 'mm' | null; readonly text: string };

type Literal = Extract<Expression, { readonly kind: 'literal' }>;

/** Whether an expression is numbers only: a factor, a divisor. */
function isPlain(tree: Expression): boolean {
  if (tree.kind === 'literal') return tree.dimension === 'number';
  if (tree.kind === 'negate') return isPlain(tree.of);
  return tree.kind === 'binary' && isPlain(tree.left) && isPlain(tree.right);
}

function unitMissing(literal: Literal, { expected, text }: Expected) {
  const written = text.slice(literal.from, literal.to).trim();
  if (expected !== 'length') {
    return misread(literal.from, 'unit-missing', [
      `\`${written}\` has no unit, and ${dimensionWords(expected)} is expected`,
      `write it with its unit: \`${exampleOf(expected).replace(/^[\d.]+/, written)}\``,
    ]);
  }
  return unitless(literal, written);
}

function unitless(literal: Literal, written: string) {
  const [words, mend] = readingWords([
    { text: `${written} mm`, mm: literal.value },
    { text: `${written} in`, mm: literal.value * 25.4 },
  ]);
  return misread(literal.from, 'unit-missing', [`\`${written}\` has no unit: it can be read as ${words}`, mend]);
}

/** Whether a text holds feet or inches: then a bare number in it may be either. */
function hasInches(text: string): boolean {
  return /["']|\d *-?(?:in|inch|inches|ft|foot|feet)(?![\p{L}\p{N}])/u.test(text);
}

function settledLiteral(literal: Literal, place: Expected): Expression {
  const { expected, bare, text } = place;
  if (literal.dimension !== 'number') return literal;
  if (literal.value === 0) return { ...literal, dimension: expected };
  if (bare === null || expected !== 'length') throw unitMissing(literal, place);
  const written = text.slice(literal.from, literal.to).trim();
  if (/[^\d.]/.test(written) || hasInches(text)) throw unitless(literal, written);
  return { ...literal, dimension: 'length' };
}

function settledProduct(tree: Extract<Expression, { readonly kind: 'binary' }>, place: Expected): Expression {
  if (isPlain(tree.right) && !(tree.operator === '*' && isPlain(tree.left))) {
    return { ...tree, left: settled(tree.left, place) };
  }
  return tree.operator === '*' && isPlain(tree.left) ? { ...tree, right: settled(tree.right, place) } : tree;
}

/**
 * The tree with its bare numbers given the dimension their place asks for: 0 always, millimetres if the notebook
 * says so; factors and divisors stay numbers. Throws Misread for a number that needs a unit.
 */
export function settled(tree: Expression, place: Expected): Expression {
  if (place.expected === 'number' || tree.kind === 'name') return tree;
  if (tree.kind === 'literal') return settledLiteral(tree, place);
  if (tree.kind === 'negate') return { ...tree, of: settled(tree.of, place) };
  if (tree.operator === '*' || tree.operator === '/') return settledProduct(tree, place);
  return { ...tree, left: settled(tree.left, place), right: settled(tree.right, place) };
}
