import { describe, expect, it } from 'vitest';
import { footMarkFault } from '../../../src/core/units/foot-mark.ts';
import { nearest } from '../../../src/core/units/nearest.ts';
import { roundTo, SIXTY_FOURTH_OF_INCH, stepsOf, TENTH_OF_MM } from '../../../src/core/units/round.ts';
import { echo, showFeetInches, showInches, showLength, showMm } from '../../../src/core/units/show.ts';
import * as show from '../../../src/core/units/show-amount.ts';

describe('rounding', () => {
  it('goes half away from zero and never to -0', () => {
    expect([0.05, -0.05, 67.85, -67.85, 2.675].map((v) => roundTo(v, 0.1))).toEqual([0.1, -0.1, 67.9, -67.9, 2.7]);
    expect(Object.is(roundTo(-0.04, 0.1), 0)).toBe(true);
    expect(roundTo(1.005, 0.01)).toBe(1.01);
    expect(roundTo(18.3, SIXTY_FOURTH_OF_INCH)).toBe(18.25625);
    expect([stepsOf('mm'), stepsOf('in')]).toEqual([TENTH_OF_MM, 25.4 / 64]);
  });
});

describe('lengths', () => {
  it('in mm', () => {
    expect([18, 67.9, 67.85, -0.04, 0, 1076.4, 100].map((mm) => showMm(mm, 1))).toEqual([
      '18',
      '67.9',
      '67.9',
      '0',
      '0',
      '1076.4',
      '100',
    ]);
    expect(showMm(1234.5678, 3)).toBe('1234.568');
    expect(showMm(1200, 0)).toBe('1200');
  });

  it('in inches, in lowest terms, with a mark where the rest matters', () => {
    expect(showInches(190.5, 16)).toBe('7 1/2');
    expect(showInches(18.25625, 32)).toBe('23/32');
    expect(showInches(18.25625, 16)).toBe('3/4-');
    expect(showInches(191.5, 16)).toBe('7 9/16-');
    expect(showInches(191.2, 16)).toBe('7 1/2+');
    expect(showInches(190.6, 16)).toBe('7 1/2');
    expect(showInches(191.2, 16, Number.POSITIVE_INFINITY)).toBe('7 1/2');
    expect(showInches(-190.5, 16)).toBe('-7 1/2');
    expect(showInches(-0.01, 16)).toBe('0');
    expect(showInches(25.39, 16)).toBe('1');
  });

  it('with their unit, the other unit, and in feet', () => {
    expect([showLength(18, 'mm'), showLength(190.5, 'in'), echo(190.5, 'mm'), echo(18, 'in')]).toEqual([
      '18 mm',
      '7 1/2 in',
      '7 1/2 in',
      '18 mm',
    ]);
    expect([2193.925, 60.325, -330.2, 304.8, 0, 1543.05].map((mm) => showFeetInches(mm, 16))).toEqual([
      '7\' 2 3/8"',
      '2 3/8"',
      '-1\' 1"',
      "1'",
      '0"',
      '5\' 3/4"',
    ]);
    expect(showFeetInches(304.79, 16)).toBe("1'");
  });

  it('by a lone foot mark are doubted where the part could not be so long', () => {
    expect(footMarkFault("26'", 2440)?.what).toMatch(/26 ft.*26 in/);
    expect(footMarkFault("26'", 8000)).toBeNull();
    expect(footMarkFault('26 ft', 2440)).toBeNull();
  });
});

describe('other amounts', () => {
  it('are shown with their units', () => {
    expect(show.showAngle(Math.PI / 8)).toBe('22.5°');
    expect([45, 90, 120, 59.7, 0, -90].map(show.showDuration)).toEqual([
      '45 min',
      '1 h 30 min',
      '2 h',
      '1 h',
      '0 min',
      '-1 h 30 min',
    ]);
    expect([show.showMoney(18.5, 'EUR'), show.showMoney(1200, 'JPY'), show.showMoney(1.005, 'EUR')]).toEqual([
      '18.50 EUR',
      '1200 JPY',
      '1.01 EUR',
    ]);
    expect([show.showGrade(0.02), show.showGradeRun(0.02), show.showGradeRun(0)]).toEqual(['2 %', '1:50', 'level']);
    expect([850, 999.7, 12_400].map(show.showMass)).toEqual(['850 g', '1 kg', '12.4 kg']);
    expect([show.showCount(1, 'screw', 'screws'), show.showCount(12, 'screw', 'screws')]).toEqual([
      '1 screw',
      '12 screws',
    ]);
    expect([show.showMonths(1), show.showMonths(12)]).toEqual(['1 month', '12 months']);
    expect(show.showAmount({ value: 0.3, dimension: 'current' }, 'mm')).toBe('0.3 A');
    expect(show.showAmount({ value: 18.5, dimension: 'money', currency: 'EUR' }, 'mm')).toBe('18.50 EUR');
    expect(show.showAmount({ value: 190.5, dimension: 'length' }, 'in')).toBe('7 1/2 in');
  });
});

describe('nearest', () => {
  it('finds slips, not strangers, the same whatever the order', () => {
    const words = ['side', 'strut', 'length', 'frame.thickness', 'lap-relief'];
    expect(['sdie', 'strutt', 'lenght', 'SIDE', 'lap-releif'].map((word) => nearest(word, words))).toEqual([
      'side',
      'strut',
      'length',
      'side',
      'lap-relief',
    ]);
    expect(nearest('quite-another', words)).toBeNull();
    expect(nearest('x', ['y', 'z'])).toBeNull();
    expect(nearest('strat', ['strbt', 'strct'])).toBe(nearest('strat', ['strct', 'strbt']));
    expect(nearest('a'.repeat(100_000), words)).toBeNull();
  });
});
