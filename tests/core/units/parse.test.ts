import { describe, expect, it } from 'vitest';
import { CURRENCIES } from '../../../src/core/units/currency.ts';
import { LONGEST_TEXT, parseQuantity } from '../../../src/core/units/parse.ts';
import type { Dimension } from '../../../src/core/units/quantity.ts';
import { amount, fault, value } from './read.ts';

describe('lengths', () => {
  it.each([
    ['1600 mm', 1600],
    ['1.6 m', 1600],
    ['12 cm', 120],
    ['7 1/2 in', 190.5],
    ['7½ in', 190.5],
    ['5ft 3in', 1600.2],
    ['5 ft 3 in', 1600.2],
    ['.5 in', 12.7],
    ['-3 mm', -3],
    ['0', 0],
    ['5-inch', 127],
    ["2''", 50.8],
    ['23/32"', 18.25625],
  ])('%s is %d mm, to the last bit', (text, mm) => {
    expect(value(text)).toBe(mm);
  });

  it.each([
    ['1,5 m', ['1.5 m', '1500 mm', '59.055 in', '15 m', '15000 mm', '590.551 in']],
    ['1,200 mm', ['1200 mm', '47.244 in', '1.2 mm', '0.047 in']],
    ['1 600 mm', ['1600 mm', '1.6 mm']],
    ['1.000,5 mm', ['1000.5 mm', '39.39 in']],
    ['1,000,000 mm', ['1000000 mm', '39370.079 in']],
    ['1600', ['1600 mm', '62.992 in', '1600 in', '40640 mm']],
    ['5\' - 6"', ['1676.4 mm', '1371.6 mm']],
    ['side - 3', ['3 mm', '3 in', '76.2 mm']],
  ])('%s has two readings, both named', (text, parts) => {
    const { what, rule } = fault(text);
    expect(['two-readings', 'unit-missing']).toContain(rule);
    for (const part of parts) expect(what).toContain(part);
  });

  it.each([
    ['30mmm', 'unknown-unit', 2, 'mm'],
    ['30 Mm', 'unknown-unit', 3, 'mm'],
    ['1e3 mm', 'exponent', 0, '1000'],
    ['1/0 in', 'division-by-zero', 0, 'other than 0'],
    ['1-1-1/0in', 'division-by-zero', 0, 'other than 0'],
    ['NaN', 'not-a-number', 0, 'number'],
    ['Infinity', 'not-a-number', 0, 'number'],
    ['1.2.3 mm', 'not-a-number', 0, 'point'],
    ['99999 m', 'too-large', 0, '10 km'],
    ['7 9/8 in', 'fraction-over-one', 0, '8 1/8'],
    ['5\' 14"', 'inches-over-a-foot', 0, '6 ft 2 in'],
    ['4.5\' 3"', 'feet-not-whole', 0, 'whole feet'],
    ['side -strut', 'minus-without-spaces', 5, 'a - b'],
    ['7 1/2 in-3 mm', 'minus-without-spaces', 8, 'a - b'],
    ['2 kg', 'wrong-dimension', 0, '30 mm'],
    ['2 m * 3 m', 'no-product', 0, 'plain number'],
    ['3 mm 4 mm', 'operator-missing', 5, '+ - * or /'],
    ['(3 mm', 'parenthesis-open', 0, ')'],
    ['3 mm)', 'unexpected-character', 4, 'parentheses'],
    ['3 mm,', 'unexpected-character', 4, 'point'],
    ['side * ', 'value-missing', 7, 'value'],
    ['sin(3)', 'no-functions', 0, '*'],
    ['', 'value-missing', 0, 'unit'],
    ['side / 1/2', 'two-readings', 7, '(1/2)'],
    ['7-0-1/2', 'unit-missing', 0, '7\' 0 1/2"'],
  ])('%s: %s at %i', (text, rule, offset, mend) => {
    const found = fault(text);
    expect([found.rule, found.offset]).toEqual([rule, offset]);
    expect(found.mend).toContain(mend);
  });

  it('names what was written and what was expected', () => {
    expect(fault('2 kg').what).toBe('a mass stands where a length is expected');
    expect(fault('3 mm', 'number').what).toBe('a length stands where a plain number is expected');
  });
});

describe('a notebook whose bare numbers are millimetres', () => {
  const read = (text: string) => parseQuantity(text, 'length', { bare: 'mm' });

  it('reads them where a length is asked for, and nowhere else', () => {
    expect(read('1600')).toMatchObject({ ok: true, value: { value: 1600, dimension: 'length' } });
    expect(read('side - 3')).toMatchObject({ ok: true, value: { right: { value: 3, dimension: 'length' } } });
    expect(read('side / 3')).toMatchObject({ ok: true, value: { right: { value: 3, dimension: 'number' } } });
    expect(read('3 * (side - 20)')).toMatchObject({
      ok: true,
      value: { left: { dimension: 'number' }, right: { right: { dimension: 'length' } } },
    });
    expect(parseQuantity('3', 'mass', { bare: 'mm' }).ok).toBe(false);
  });

  it('asks when fractions or inches stand beside them', () => {
    for (const text of ['18 10/16', '7 - 1/2"', '30 + 1 ft']) expect(read(text).ok, text).toBe(false);
  });
});

describe('other dimensions', () => {
  const rows: readonly (readonly [string, Dimension, number])[] = [
    ['22.5°', 'angle', Math.PI / 8],
    ['22.5 deg', 'angle', Math.PI / 8],
    ["22° 30'", 'angle', Math.PI / 8],
    ['2 %', 'grade', 0.02],
    ['1:50', 'grade', 0.02],
    ['1 in 50', 'grade', 0.02],
    ['45 min', 'duration', 45],
    ['1 h 30 min', 'duration', 90],
    ['2 h', 'duration', 120],
    ['1.5 h', 'duration', 90],
    ['12 months', 'months', 12],
    ['1 year', 'months', 12],
    ['1 year 6 months', 'months', 18],
    ['2 weeks', 'months', 14 / (365.2425 / 12)],
    ['3 A', 'current', 3],
    ['300 mA', 'current', 0.3],
    ['15 V', 'voltage', 15],
    ['470 Ω', 'resistance', 470],
    ['1.5 kohm', 'resistance', 1500],
    ['5 W', 'power', 5],
    ['1.2 kg', 'mass', 1200],
    ['850 g', 'mass', 850],
    ['685 kg/m3', 'density', 685],
    ['685 kg/m³', 'density', 685],
    ['12 N/mm2', 'stress', 12],
    ['12 MPa', 'stress', 12],
    ['250 ml', 'volume', 250_000],
    ['2 l', 'volume', 2e6],
    ['3', 'number', 3],
    ['3/4', 'number', 0.75],
    ['0', 'mass', 0],
  ];
  it.each(rows)('%s as %s', (text, dimension, expected) => {
    expect(value(text, dimension)).toBeCloseTo(expected, 12);
  });

  it('keeps the currency of money', () => {
    for (const text of ['18.50 EUR', 'EUR 18.50', 'EUR18.50', '€18.50', '18.50 €']) {
      expect(amount(text, 'money')).toEqual({ value: 18.5, dimension: 'money', currency: 'EUR' });
    }
    expect(amount('2 * 18.50 EUR + 3 EUR', 'money')).toEqual({ value: 40, dimension: 'money', currency: 'EUR' });
  });

  it('asks which currency a shared sign means, and refuses to add two', () => {
    expect(fault('$20', 'money').what).toMatch(/USD or CAD/);
    expect(fault('20 kr', 'money').what).toMatch(/SEK or NOK/);
    expect(fault('18 EUR + 3 USD', 'money').rule).toBe('two-currencies');
    expect(fault('20 EUX', 'money').mend).toContain('EUR');
    expect(fault('1,200 EUR', 'money').what).toMatch(/`1.200 EUR` or `1200 EUR`/);
  });

  it('knows only currency codes that the platform knows too (CLDR, ISO 4217)', () => {
    const known = new Set(Intl.supportedValuesOf('currency'));
    expect(CURRENCIES.filter((code) => !known.has(code))).toEqual([]);
    expect(new Set(CURRENCIES).size).toBe(CURRENCIES.length);
  });

  it('asks about 1:30 as a duration and 1 in 50 as a length', () => {
    expect(fault('1:30', 'duration').what).toMatch(/hours and minutes or .* minutes and seconds/);
    expect(fault('1 in 50').rule).toBe('operator-missing');
    expect(fault('45', 'duration').mend).toContain('`45 min`');
    expect(fault('3 A', 'voltage').what).toBe('a current stands where a voltage is expected');
  });
});

describe('hostile texts', () => {
  const long = 100_000;
  it.each([
    ['parentheses', '('.repeat(long)],
    ['signs', '-'.repeat(long)],
    ['digits', '9'.repeat(long)],
    ['spaces', ' '.repeat(long)],
    ['quotes', "1'".repeat(long)],
    ['parentheses, short', '('.repeat(LONGEST_TEXT)],
    ['signs, short', '- '.repeat(LONGEST_TEXT / 2)],
    ['digits, short', '9'.repeat(LONGEST_TEXT)],
    ['a number and spaces', `1${' '.repeat(LONGEST_TEXT - 2)}x`],
    ['many sizes', '1 x '.repeat(99)],
    ['many gauges', '#1 '.repeat(99)],
    ['nothing printable', '\u0000\u0001\ud800'],
  ])('%s are refused with a fault', (_, text) => {
    const found = parseQuantity(text, 'length', { bare: 'mm' });
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.faults[0]?.what.length).toBeLessThan(300);
  });

  it.each(['constructor', '__proto__', 'toString', 'hasOwnProperty'])('%s is no name', (name) => {
    expect(['unknown-name', 'unexpected-character']).toContain(fault(name).rule);
  });

  it('runs nothing', () => {
    for (const text of ['alert(1)', 'process.exit()', 'a[0]', '{1}', '`1`', '1;2', 'a = 3 mm']) {
      expect(parseQuantity(text, 'length', { bare: null }).ok, text).toBe(false);
    }
  });
});
