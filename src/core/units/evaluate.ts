import { isSound, limitWords } from './limit.ts';
import { nearest } from './nearest.ts';
import { done, type Fault, failed, type Result } from './problem.ts';
import type { Amount, Dimension, Expression, Quantity, Scope } from './quantity.ts';
import { dimensionWords, wrongDimension } from './wrong-dimension.ts';

type Binary = Extract<Expression, { readonly kind: 'binary' }>;
type Name = Extract<Expression, { readonly kind: 'name' }>;
type Words = readonly [rule: string, what: string, mend: string];

function refused(tree: Expression, at: string, [rule, what, mend]: Words): Result<never> {
  return failed({ rule, at, offset: tree.from, what, mend });
}

/** An amount of a kind, never NaN, infinite or -0. */
function amountOf(
  value: number,
  like: { readonly dimension: Dimension; readonly currency?: string | undefined },
): Amount {
  const { dimension, currency } = like;
  const sound = value === 0 ? 0 : value;
  return currency === undefined ? { value: sound, dimension } : { value: sound, dimension, currency };
}

/** `side-strut` where `side` and `strut` are known was meant as a difference. */
function asDifference(name: string, scope: Scope): string | null {
  for (let cut = name.indexOf('-'); cut >= 0; cut = name.indexOf('-', cut + 1)) {
    const [left, right] = [name.slice(0, cut), name.slice(cut + 1)];
    if (Object.hasOwn(scope, left) && Object.hasOwn(scope, right)) return `${left} - ${right}`;
  }
  return null;
}

function unknownName(name: string, scope: Scope): string {
  const difference = asDifference(name, scope);
  if (difference !== null) return `write \`${difference}\` with spaces around the minus`;
  const near = nearest(name, Object.keys(scope));
  if (near !== null) return `did you mean \`${near}\`?`;
  const known = Object.keys(scope).sort().slice(0, 12);
  return known.length === 0 ? 'no names may be used here: write the value' : `names known here: ${known.join(', ')}`;
}

function nameAmount(tree: Name, scope: Scope, at: string): Result<Amount> {
  const amount = Object.hasOwn(scope, tree.name) ? scope[tree.name] : undefined;
  if (amount !== undefined) return done(amount);
  return refused(tree, at, [
    'unknown-name',
    `\`${tree.name}\` is not a name known here`,
    unknownName(tree.name, scope),
  ]);
}

/** Zero has every dimension: `side + 0`. */
function isZero(amount: Amount): boolean {
  return amount.dimension === 'number' && amount.value === 0;
}

function currencyOf(left: Amount, right: Amount): string | undefined {
  return left.currency ?? right.currency;
}

function twoCurrencies(left: Amount, right: Amount): boolean {
  return left.currency !== undefined && right.currency !== undefined && left.currency !== right.currency;
}

function summed(tree: Binary, [left, right]: readonly [Amount, Amount], at: string): Result<Amount> {
  const value = tree.operator === '+' ? left.value + right.value : left.value - right.value;
  if (twoCurrencies(left, right)) {
    return refused(tree, at, [
      'two-currencies',
      `${left.currency} and ${right.currency} cannot be added`,
      'write all amounts in one currency',
    ]);
  }
  if (left.dimension !== right.dimension && !isZero(left) && !isZero(right)) {
    const words = tree.operator === '+' ? 'added to' : 'taken from';
    const [first, second] = tree.operator === '+' ? [left, right] : [right, left];
    return refused(tree.right, at, [
      'mixed-dimensions',
      `${dimensionWords(first.dimension)} cannot be ${words} ${dimensionWords(second.dimension)}`,
      `write both as ${dimensionWords(left.dimension)} or both as ${dimensionWords(right.dimension)}`,
    ]);
  }
  const dimension = isZero(left) ? right.dimension : left.dimension;
  return done(amountOf(value, { dimension, currency: currencyOf(left, right) }));
}

/** Numbers and grades multiply anything; two measured values have no product here. */
function isFactor(amount: Amount): boolean {
  return amount.dimension === 'number' || amount.dimension === 'grade';
}

function multiplied(tree: Binary, [left, right]: readonly [Amount, Amount], at: string): Result<Amount> {
  const value = left.value * right.value;
  if (left.dimension === 'number') return done(amountOf(value, right));
  if (isFactor(right)) return done(amountOf(value, left));
  if (left.dimension === 'grade') return done(amountOf(value, right));
  return refused(tree, at, [
    'no-product',
    `${dimensionWords(left.dimension)} times ${dimensionWords(right.dimension)} has no meaning here`,
    'multiply by a plain number',
  ]);
}

function divided(tree: Binary, [left, right]: readonly [Amount, Amount], at: string): Result<Amount> {
  if (right.value === 0) {
    return refused(tree.right, at, ['division-by-zero', 'this divides by zero', 'divide by something other than 0']);
  }
  const value = left.value / right.value;
  if (right.dimension === 'number') return done(amountOf(value, left));
  if (left.dimension === right.dimension && !twoCurrencies(left, right))
    return done(amountOf(value, { dimension: 'number' }));
  if (right.dimension === 'grade') return done(amountOf(value, left));
  return refused(tree, at, [
    'no-quotient',
    `${dimensionWords(left.dimension)} divided by ${dimensionWords(right.dimension)} has no meaning here`,
    'divide by a plain number, or by a value of the same kind',
  ]);
}

function bounded(tree: Expression, amount: Result<Amount>, at: string): Result<Amount> {
  if (!amount.ok || isSound(amount.value.value, amount.value.dimension)) return amount;
  const { dimension } = amount.value;
  return refused(tree, at, [
    'too-large',
    `this comes out larger than any ${dimension} a notebook may hold`,
    `keep it below ${limitWords(dimension)}`,
  ]);
}

function binaryAmount(tree: Binary, scope: Scope, at: string): Result<Amount> {
  const left = evaluateTree(tree.left, scope, at);
  const right = evaluateTree(tree.right, scope, at);
  if (!left.ok || !right.ok) {
    const faults: Fault[] = [];
    for (const side of [left, right]) if (!side.ok) faults.push(...side.faults);
    return failed(...faults);
  }
  const pair = [left.value, right.value] as const;
  if (tree.operator === '*') return bounded(tree, multiplied(tree, pair, at), at);
  if (tree.operator === '/') return bounded(tree, divided(tree, pair, at), at);
  return bounded(tree, summed(tree, pair, at), at);
}

/**
 * The amount an expression comes to, in the core's units, never NaN or infinite.
 * Faults at `at`, with their offset into the text: unknown name, dimensions that don't go together, division by zero.
 */
export function evaluateTree(tree: Expression, scope: Scope, at: string): Result<Amount> {
  if (tree.kind === 'literal') return bounded(tree, done(amountOf(tree.value, tree)), at);
  if (tree.kind === 'name') return bounded(tree, nameAmount(tree, scope, at), at);
  if (tree.kind === 'binary') return binaryAmount(tree, scope, at);
  const of = evaluateTree(tree.of, scope, at);
  return of.ok ? done(amountOf(-of.value.value, of.value)) : of;
}

/** The amount of a quantity; a value that measures something else than its place asks for is a fault. */
export function evaluate(quantity: Quantity, scope: Scope): Result<Amount> {
  const { tree, at, dimension } = quantity;
  const amount = evaluateTree(tree, scope, at);
  if (!amount.ok) return amount;
  const fault = wrongDimension(amount.value, dimension, { tree, at });
  return fault === null ? done(amountOf(amount.value.value, { ...amount.value, dimension })) : failed(fault);
}
