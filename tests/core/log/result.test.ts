import { describe, expect, test } from 'vitest';
import { likelySlip } from '../../../src/core/log/slip.ts';
import { offEachSide, skew, skewedWidth } from '../../../src/core/log/square.ts';
import { entry, rules, state } from './entries.ts';

const INCH = 25.4;

describe('a likely slip', () => {
  // Made for the test by their arithmetic.
  test.each([
    [1600 - 25.4, 1600, 'inch'],
    [1600 + 25.4, 1600, 'inch'],
    [1700, 1600, 'start'],
    [1586.4, 1576.4, 'start'],
    [1067.4, 1076.4, 'swapped'],
    [1706.4, 1076.4, 'swapped'],
    [1079.4, 1076.4, 'six-nine'],
    [1376, 1676, null],
    [19.5 * INCH, 16.5 * INCH, 'six-nine'],
    [21.5 * INCH, 12.5 * INCH, 'swapped'],
    [1600.3, 1600, null],
    [1607, 1600, null],
  ] as const)('%d measured for %d: %s', (measured, expected, kind) => {
    expect(likelySlip(measured, expected, 0)?.kind ?? null).toBe(kind);
  });

  // Field case: a yard told to rip to 1x4 cut 4 in and not 3 1/2 in; dry sizes of PS 20.
  test('is a board cut to its name', () => {
    expect(likelySlip(4 * INCH, 3.5 * INCH, 0)?.kind).toBe('nominal');
    expect(likelySlip(8 * INCH, 7.25 * INCH, 0)?.kind).toBe('nominal');
    expect(likelySlip(4 * INCH, 3 * INCH, 0)?.kind).toBe('inch');
  });
});

// Field case: drawer boxes 1/16 in smaller than their opening bind; 1/8 in in all is wanted.
describe('a box that binds', () => {
  test('loses half of the missing clearance on each side', () => {
    expect(offEachSide(INCH / 16, INCH / 8)).toBeCloseTo(INCH / 32, 12);
  });

  test('may be skewed by its clearance over its depth and no more', () => {
    const [width, depth] = [16 * INCH, 18 * INCH];
    const most = Math.atan(0.0625 / 18);
    expect((most * 180) / Math.PI).toBeCloseTo(0.2, 2);
    expect(skewedWidth(width, depth, most) - width).toBeCloseTo(INCH / 16, 9);
    // the diagonals of a 16 x 18 box then differ by about 0.08 in
    const long = Math.sqrt(width ** 2 + depth ** 2 + 2 * width * depth * Math.sin(most));
    const short = Math.sqrt(width ** 2 + depth ** 2 - 2 * width * depth * Math.sin(most));
    expect((long - short) / INCH).toBeCloseTo(0.08, 2);
    expect(skew({ length: width, width: depth, readings: [long, short] })).toBeCloseTo(most, 12);
  });

  test('diagonals no frame can have are no error', () => {
    expect(skew({ length: 10, width: 10, readings: [1000, 1] })).toBeCloseTo(Math.PI / 2, 12);
  });
});

describe('results', () => {
  const measured = (what: string, ...readings: readonly string[]) =>
    entry('2026-01-24-x', { measured: [{ what, readings }] });

  test('are compared with the model, with the slip that explains them', () => {
    const log = state([measured('strut.across-1.length', '1067.4 mm')]);
    expect(log.results).toMatchObject([
      { what: 'strut.across-1.length', measured: 1067.4, expected: 1076.4, slip: { kind: 'swapped' } },
    ]);
    const finding = log.findings.find((one) => one.rule === 'measured-off');
    expect(finding).toMatchObject({ where: 'strut.across-1.length', limit: 1 });
    expect(finding?.figure).toBeCloseTo(9, 9);
    expect(rules(state([measured('strut.across-1.length', '1076 mm')]))).toEqual([]);
  });

  test('tell a frame that is out of square by its diagonals', () => {
    expect(rules(state([measured('table.diagonals', '1941 mm', '1942 mm')]))).toEqual([]);
    expect(state([measured('table.diagonals', '1939 mm', '1944 mm')]).findings).toMatchObject([
      { rule: 'out-of-square', figure: 5, limit: 2 },
    ]);
  });
});
