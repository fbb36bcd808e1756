import { describe, expect, it } from 'vitest';
import { evaluate, evaluateTree } from '../../../src/core/units/evaluate.ts';
import { namesIn } from '../../../src/core/units/names.ts';
import { resolveScope } from '../../../src/core/units/scope.ts';
import { fault, mm, quantity, value } from './read.ts';

const scope = { side: mm(170), strut: mm(135), length: mm(1600), 'frame.thickness': mm(17.7), 'lap-relief': mm(0.4) };

describe('arithmetic over named dimensions', () => {
  it.each([
    ['side - strut', 35],
    ['(length - 3 * frame.thickness) / 4', (1600 - 3 * 17.7) / 4],
    ['strut / 2 + lap-relief', 67.9],
    ['-side + 2 * strut', 100],
    ['length - 7 1/2 in', 1409.5],
    ['side*2', 340],
    ['length - 2 * 3 mm - 4 mm', 1590],
    ['length / 4 / 2', 200],
    ['2 % * length', 32],
    ['side + 0', 170],
  ])('%s', (text, expected) => {
    expect(value(text, 'length', scope)).toBeCloseTo(expected, 10);
  });

  it('takes lengths over lengths as numbers, and as grades where one is asked for', () => {
    expect(value('length / side', 'number', scope)).toBeCloseTo(1600 / 170, 12);
    expect(value('32 mm / length', 'grade', scope)).toBeCloseTo(0.02, 12);
    expect(fault('2 / 3', 'grade', scope).rule).toBe('unit-missing');
  });

  it.each([
    ['side * strut', 'no-product', 0],
    ['side / 3 kg', 'no-quotient', 0],
    ['side + 3 kg', 'mixed-dimensions', 7],
    ['side / (strut - strut)', 'division-by-zero', 7],
    ['side / strut', 'wrong-dimension', 0],
    ['length * 1000000', 'too-large', 0],
    ['2 * sidee', 'unknown-name', 4],
  ])('%s is %s at %i', (text, rule, offset) => {
    expect(fault(text, 'length', scope)).toMatchObject({ rule, offset, at: 'here' });
  });

  it('names the nearest name, or the difference a hyphen hides', () => {
    expect(fault('sidee', 'length', scope).mend).toContain('`side`');
    expect(fault('frame.thicknes', 'length', scope).mend).toContain('`frame.thickness`');
    expect(fault('side-strut', 'length', scope).mend).toContain('`side - strut`');
    expect(fault('quite-another', 'length', scope).mend).toContain('frame.thickness, lap-relief, length, side, strut');
    expect(fault('anything').mend).toContain('no names');
  });

  it('reports the faults of both sides', () => {
    const found = evaluate(quantity('nose + tail'), {});
    expect(found.ok ? [] : found.faults.map(({ offset }) => offset)).toEqual([0, 7]);
  });

  it('refuses amounts that are not finite, whoever hands them in', () => {
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(evaluateTree(quantity('side').tree, { side: mm(bad) }, 'x').ok).toBe(false);
    }
  });

  it('lists names once, in order', () => {
    expect(namesIn(quantity('b + a * (b - lap-relief) / 2').tree)).toEqual(['b', 'a', 'lap-relief']);
  });
});

describe('dimensions that name one another', () => {
  const named = (texts: Readonly<Record<string, string>>) =>
    Object.fromEntries(
      Object.entries(texts).map(([name, text]) => [name, quantity(text, 'length', `dimensions.${name}`)]),
    );

  it('are resolved in any order', () => {
    const found = resolveScope(named({ c: 'b + a', b: '2 * a', a: 'frame.thickness + 1 mm' }), scope);
    expect(found).toMatchObject({ ok: true, value: { a: mm(18.7), b: mm(37.4), side: mm(170) } });
    expect(found.ok && found.value.c?.value).toBeCloseTo(56.1, 12);
  });

  it('name their loop once, and spare what only stands behind it', () => {
    const found = resolveScope(named({ d: 'a + 1 mm', a: 'b', b: 'c', c: 'a / 2', e: '3 mm', f: 'f' }), {});
    const faults = found.ok ? [] : found.faults;
    expect(faults.map(({ rule }) => rule)).toEqual(['dimension-loop', 'dimension-loop']);
    expect(faults[0]).toMatchObject({ at: 'dimensions.a', what: '`a` needs itself: a -> b -> c -> a' });
    expect(faults[1]).toMatchObject({ at: 'dimensions.f', what: '`f` needs itself: f -> f' });
  });

  it('report a fault once, not at every value behind it, and know all names for the nearest', () => {
    const found = resolveScope(named({ a: 'zidth', b: 'a + 1 mm', width: '3 mm' }), {});
    expect(found.ok ? [] : found.faults).toMatchObject([{ at: 'dimensions.a', mend: 'did you mean `width`?' }]);
  });

  it('may not take a name that already has a value', () => {
    expect(resolveScope(named({ side: '3 mm' }), scope)).toMatchObject({ ok: false, faults: [{ rule: 'name-taken' }] });
  });

  it('stand a chain of many thousands', () => {
    const chain = Object.fromEntries(
      Array.from({ length: 20_000 }, (_, i) => [`a${i}`, i === 19_999 ? '1 mm' : `a${i + 1}`]),
    );
    expect(resolveScope(named(chain), {})).toMatchObject({ ok: true, value: { a0: mm(1) } });
    const loop = resolveScope(named({ ...chain, a19999: 'a0' }), {});
    expect(loop.ok ? 0 : loop.faults.length).toBe(1);
  });
});
