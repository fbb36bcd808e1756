import { faultAt } from './misread.ts';
import type { Fault } from './problem.ts';
import type { Amount, Dimension, Expression } from './quantity.ts';

/** What is said to an author, with an example of how it is written. */
const WORDS: Readonly<Record<Dimension, readonly [noun: string, example: string]>> = {
  number: ['a plain number', '3'],
  length: ['a length', '30 mm'],
  angle: ['an angle', '22.5°'],
  grade: ['a grade', '2 %'],
  duration: ['a duration', '45 min'],
  months: ['a span of months', '12 months'],
  money: ['an amount of money', '18.50 EUR'],
  current: ['a current', '3 A'],
  voltage: ['a voltage', '15 V'],
  resistance: ['a resistance', '470 ohm'],
  power: ['a power', '5 W'],
  mass: ['a mass', '2 kg'],
  density: ['a density', '685 kg/m3'],
  stress: ['a stress', '30 N/mm2'],
  volume: ['a volume', '250 ml'],
};

/** A dimension in words: `a length`. */
export function dimensionWords(dimension: Dimension): string {
  return WORDS[dimension][0];
}

/** How a value of a dimension is written: `30 mm`. */
export function exampleOf(dimension: Dimension): string {
  return WORDS[dimension][1];
}

/** A grade is a rise over a run: the ratio of two values counts as one. */
function isRatio(tree: Expression): boolean {
  return tree.kind === 'binary' && tree.operator === '/' && !plainNumber(tree.left);
}

function plainNumber(tree: Expression): boolean {
  if (tree.kind === 'negate') return plainNumber(tree.of);
  return tree.kind === 'literal' && tree.dimension === 'number';
}

/** The fault of an amount that measures something else than its place asks for; null when it fits. */
export function wrongDimension(
  amount: Amount,
  expected: Dimension,
  { tree, at }: { readonly tree: Expression; readonly at: string },
): Fault | null {
  if (amount.dimension === expected) return null;
  if (expected === 'grade' && amount.dimension === 'number' && isRatio(tree)) return null;
  const [what, mend] = [
    `${dimensionWords(amount.dimension)} stands where ${dimensionWords(expected)} is expected`,
    `write ${dimensionWords(expected)}, for example \`${exampleOf(expected)}\``,
  ];
  return { ...faultAt(tree.from, 'wrong-dimension', [what, mend]), at };
}
