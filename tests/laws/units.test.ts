import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateTree } from '../../src/core/units/evaluate.ts';
import { literalAt } from '../../src/core/units/literal.ts';
import { parseQuantity } from '../../src/core/units/parse.ts';
import type { Amount, Dimension, Expression } from '../../src/core/units/quantity.ts';
import { roundTo, stepsOf } from '../../src/core/units/round.ts';
import { showFeetInches, showInches, showLength, showMm } from '../../src/core/units/show.ts';

const runs = { seed: 20_260_314, numRuns: 2000 } as const;

/** Lengths in mm to 0.001. */
const lengths = fc.integer({ min: -4_000_000, max: 4_000_000 }).map((n) => n / 1000);

function read(text: string): number {
  const tree = parseQuantity(text, 'length', { bare: null });
  if (!tree.ok) throw new Error(tree.faults[0]?.what);
  const amount = evaluateTree(tree.value, {}, '');
  if (!amount.ok) throw new Error(amount.faults[0]?.what);
  return amount.value.value;
}

function holds(property: fc.IProperty<[number]>): boolean {
  return !fc.check(property, runs).failed;
}

describe('a printed length, read again, is within half its printed step', () => {
  type Print = (mm: number) => string;
  const law = (print: Print, step: number) =>
    fc.property(lengths, (mm) => Math.abs(read(print(mm)) - mm) <= step / 2 + 1e-6);
  const noMark = Number.POSITIVE_INFINITY;

  it('in mm, inches, and feet and inches', () => {
    fc.assert(
      law((mm) => `${showMm(mm, 1)} mm`, 0.1),
      runs,
    );
    fc.assert(
      law((mm) => `${showMm(mm, 3)} mm`, 0.001),
      runs,
    );
    for (const part of [16, 32, 64] as const) {
      fc.assert(
        law((mm) => `${showInches(mm, part, noMark)} in`, 25.4 / part),
        runs,
      );
      fc.assert(
        law((mm) => showFeetInches(mm, part), 25.4 / part),
        runs,
      );
    }
  });

  it('fails for planted faults: a fraction cut off, a sign lost, a step too coarse', () => {
    expect(holds(law((mm) => `${Math.trunc(mm / 25.4)} in`, 25.4 / 16))).toBe(false);
    expect(holds(law((mm) => `${showMm(Math.abs(mm), 1)} mm`, 0.1))).toBe(false);
    expect(holds(law((mm) => `${showMm(mm, 0)} mm`, 0.1))).toBe(false);
  });
});

describe('a rounded length, shown and read, is itself', () => {
  const law = (unit: 'mm' | 'in', round: typeof roundTo) =>
    fc.property(lengths, (mm) => {
      const printed = round(mm, stepsOf(unit));
      return Math.abs(read(showLength(printed, unit)) - printed) < 1e-9 && round(printed, stepsOf(unit)) === printed;
    });

  it('in mm and in inches', () => {
    fc.assert(law('mm', roundTo), runs);
    fc.assert(law('in', roundTo), runs);
  });

  it('fails for a planted fault: rounding to another step', () => {
    expect(holds(law('mm', (mm, step) => roundTo(mm, step * 0.7)))).toBe(false);
  });
});

const literal = (dimension: Dimension, values: fc.Arbitrary<number>) =>
  values.map((value): Expression => ({ kind: 'literal', value, dimension, from: 0, to: 0 }));

/** Trees of length: sums of lengths, lengths times or over numbers; hostile ones divide by what may be 0 or nearly. */
const { sound, hostile } = fc.letrec<{ sound: Expression; hostile: Expression }>((tie) => {
  const mm = literal(
    'length',
    fc.integer({ min: -20_000, max: 20_000 }).map((n) => n / 10),
  );
  const factor = literal('number', fc.integer({ min: 1, max: 9 }));
  const wild = literal(
    'number',
    fc.oneof(fc.double(), fc.constantFrom(0, 1e300, 5e-324, Number.NaN, Number.POSITIVE_INFINITY)),
  );
  const pair = (
    operators: readonly ('+' | '-' | '*' | '/')[],
    left: fc.Arbitrary<Expression>,
    right: fc.Arbitrary<Expression>,
  ) =>
    fc.record({
      kind: fc.constant('binary' as const),
      operator: fc.constantFrom(...operators),
      left,
      right,
      from: fc.constant(0),
      to: fc.constant(0),
    });
  return {
    sound: fc.oneof(
      { maxDepth: 5 },
      mm,
      pair(['+', '-'], tie('sound'), tie('sound')),
      pair(['*', '/'], tie('sound'), factor),
    ),
    hostile: fc.oneof({ maxDepth: 6 }, wild, mm, pair(['+', '-', '*', '/'], tie('hostile'), tie('hostile'))),
  };
});

describe('an amount is a finite number or a fault', () => {
  type Evaluate = typeof evaluateTree;
  const law = (evaluate: Evaluate) =>
    fc.property(hostile, (tree) => {
      const amount = evaluate(tree, {}, '');
      return !amount.ok || (Number.isFinite(amount.value.value) && !Object.is(amount.value.value, -0));
    });

  it('whatever stands in the tree', () => {
    fc.assert(law(evaluateTree), runs);
  });

  it('fails for a planted fault: no check of what comes out', () => {
    const careless = (tree: Expression): Amount => {
      if (tree.kind !== 'binary') return { value: tree.kind === 'literal' ? tree.value : 0, dimension: 'number' };
      const [a, b] = [careless(tree.left).value, careless(tree.right).value];
      const value = { '+': a + b, '-': a - b, '*': a * b, '/': a / b }[tree.operator];
      return { value, dimension: 'number' };
    };
    expect(
      fc.check(
        law((tree) => ({ ok: true, value: careless(tree) })),
        runs,
      ).failed,
    ).toBe(true);
  });

  it('and sound trees come out: at least 70 % of those generated', () => {
    const trees = fc.sample(sound, runs);
    const share = trees.filter((tree) => evaluateTree(tree, {}, '').ok).length / trees.length;
    console.log(`valid trees: ${(share * 100).toFixed(1)} %`);
    expect(share).toBeGreaterThanOrEqual(0.7);
  });
});

describe('a tree printed and read comes to the same amount', () => {
  const print = (tree: Expression): string => {
    if (tree.kind === 'literal') return tree.dimension === 'length' ? `${tree.value} mm` : `${tree.value}`;
    if (tree.kind !== 'binary') return '';
    return `(${print(tree.left)} ${tree.operator} ${print(tree.right)})`;
  };
  const law = (written: (tree: Expression) => string) =>
    fc.property(
      sound.filter((tree) => print(tree).length < 380),
      (tree) => {
        const parsed = parseQuantity(written(tree), 'length', { bare: null });
        const [again, first] = [parsed.ok ? evaluateTree(parsed.value, {}, '') : parsed, evaluateTree(tree, {}, '')];
        if (!again.ok || !first.ok) return again.ok === first.ok;
        return Math.abs(again.value.value - first.value.value) <= 1e-9 * Math.max(1, Math.abs(first.value.value));
      },
    );

  it('with all its parentheses', () => {
    fc.assert(law(print), runs);
  });

  it('fails for a planted fault: parentheses dropped', () => {
    expect(
      fc.check(
        law((tree) => print(tree).replaceAll(/[()]/g, '')),
        runs,
      ).failed,
    ).toBe(true);
  });
});

describe('any text is read or refused, never thrown at', () => {
  const pieces = fc.constantFrom(
    '1',
    '7',
    '12',
    '1/2',
    '½',
    '3/0',
    '.',
    ',',
    "'",
    '"',
    '-',
    ' - ',
    ' ',
    '+',
    '*',
    '/',
    '(',
    ')',
    '#',
    ':',
    ' x ',
    ' in ',
    'mm',
    'in',
    'ft',
    'EUR',
    '$',
    '%',
    '°',
    ' by ',
    'side',
    'ply',
    'wide',
    '000',
    'e3',
    '′',
    '″',
    '\u0000',
    '🚂',
  );
  const texts = fc.array(pieces, { maxLength: 14 }).map((parts) => parts.join(''));
  const dimensions = fc.constantFrom<Dimension>('length', 'number', 'angle', 'grade', 'duration', 'money', 'mass');

  const law = (parse: (text: string, dimension: Dimension) => ReturnType<typeof parseQuantity>) =>
    fc.property(fc.oneof(texts, fc.string({ unit: 'binary' })), dimensions, (text, dimension) => {
      const tree = parse(text, dimension);
      if (tree.ok) return true;
      const [first] = tree.faults;
      if (first === undefined || first.what === '' || first.mend === '') return false;
      return first.offset !== undefined && first.offset >= 0 && first.offset <= text.length;
    });
  const many = { ...runs, numRuns: 20_000 };

  it('with its fault inside the text', () => {
    fc.assert(
      law((text, dimension) => parseQuantity(text, dimension, { bare: null })),
      many,
    );
  });

  it('fails for planted faults: a literal read without its guard, a place past the end', () => {
    const unguarded = law((text, dimension) => {
      literalAt(text, 0, dimension);
      return parseQuantity(text, dimension, { bare: null });
    });
    const shifted = law((text, dimension) => parseQuantity(`   ${text}`, dimension, { bare: null }));
    expect(fc.check(unguarded, many).failed).toBe(true);
    expect(fc.check(shifted, many).failed).toBe(true);
  });
});
