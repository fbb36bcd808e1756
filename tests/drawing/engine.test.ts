import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { area, rectangle } from '../../src/core/geometry/polygon.ts';
import { planChain } from '../../src/drawing/chain.ts';
import { betweenText, fitText, lengthText } from '../../src/drawing/figures.ts';
import { hatchMarks } from '../../src/drawing/hatch.ts';
import { crosses } from '../../src/drawing/labels.ts';
import { within } from '../../src/drawing/outline.ts';
import { spread } from '../../src/drawing/spread.ts';
import { shortened, textWidth, wrapped } from '../../src/drawing/text.ts';
import { onPaper, paperX, type View } from '../../src/drawing/view.ts';
import { coverOf, told } from '../../src/drawing/visible.ts';
import { readFigure } from './checker.ts';

describe('figures', () => {
  test.each([
    [1576.4, 'mm', '1576.4'],
    [18, 'mm', '18'],
    [8.85, 'mm', '8.9'],
    [0, 'mm', '0'],
    [25.4, 'in', '1'],
    [17.7, 'in', '11/16+'],
    [18, 'in', '23/32-'],
    [1600, 'in', '63-'],
    [12.7, 'in', '1/2'],
    [2.3, 'in', '3/32'],
  ] as const)('%s mm is printed in %s as %s', (mm, unit, text) => {
    expect(lengthText(mm, unit)).toBe(text);
  });

  test.each([
    // 1 in is 25.4 mm exactly (international yard and pound agreement, 1959); the decimals are worked out by it.
    [18.034, '0.710'],
    [18.1, '0.713'],
    [19.05, '3/4'],
    [5.953125, '15/64'],
    [5.9, '0.232'],
    [0.2, '0.0079'],
    [0.4, '1/64'],
    [0, '0'],
    [67.9, '2 43/64'],
    [-18.034, '-0.710'],
  ] as const)('a cut of %s mm is printed in inches as %s', (mm, text) => {
    expect(fitText(mm, 'in')).toBe(text);
  });

  test('no fit is further from the truth than 0.002 in, and none but nothing is printed as 0', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 120, noNaN: true }), (mm) => {
        const said = readFigure(fitText(mm, 'in'), 'in');
        expect(Math.abs(said - mm)).toBeLessThanOrEqual(0.002 * 25.4 + 1e-9);
        expect(said).toBeGreaterThan(0);
      }),
      { seed: 71, numRuns: 2000 },
    );
  });

  test('links of a chain add up as printed: exactly in mm, in inches within what their signs say', () => {
    const stops = fc.array(fc.double({ min: 0, max: 5000, noNaN: true }), { minLength: 2, maxLength: 40 });
    fc.assert(
      fc.property(stops, (all) => {
        const sorted = all.toSorted((a, b) => a - b);
        const links = sorted.slice(1).map((to, i) => readFigure(betweenText(sorted[i] ?? to, to, 'mm'), 'mm'));
        const whole = readFigure(betweenText(sorted[0] ?? 0, sorted.at(-1) ?? 0, 'mm'), 'mm');
        expect(links.reduce((sum, link) => sum + link, 0)).toBeCloseTo(whole, 6);
      }),
      { seed: 7, numRuns: 1000 },
    );
  });

  test('one length reads alike wherever it stands in an inch chain', () => {
    const at = fc.double({ min: 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(at, fc.integer({ min: 1, max: 40000 }), (from, tenths) => {
        expect(betweenText(from, from + tenths / 10, 'in')).toBe(betweenText(0, tenths / 10, 'in'));
      }),
      { seed: 72, numRuns: 1000 },
    );
  });
});

describe('labels along a line', () => {
  const label = fc.record({
    at: fc.double({ min: 0, max: 200, noNaN: true }),
    half: fc.double({ min: 1, max: 9, noNaN: true }),
  });

  test('never overlap, keep their order, and stay put where there is room', () => {
    fc.assert(
      fc.property(fc.array(label, { maxLength: 40 }), (labels) => {
        const wanted = labels.toSorted((a, b) => a.at - b.at);
        const found = spread(wanted, { from: -20, to: 220 });
        found.slice(1).forEach((u, i) => {
          const apart = (wanted[i]?.half ?? 0) + (wanted[i + 1]?.half ?? 0);
          expect(u - (found[i] ?? 0)).toBeGreaterThanOrEqual(apart - 1e-9);
        });
      }),
      { seed: 8, numRuns: 1000 },
    );
    expect(
      spread(
        [
          { at: 10, half: 2 },
          { at: 30, half: 2 },
        ],
        { from: 0, to: 40 },
      ),
    ).toEqual([10, 30]);
  });

  test('share the move when they crowd (least squares: 10 and 11 want 4 apart)', () => {
    expect(
      spread(
        [
          { at: 10, half: 2 },
          { at: 11, half: 2 },
        ],
        { from: 0, to: 40 },
      ),
    ).toEqual([8.5, 12.5]);
  });

  test('a chain raises the figures its links cannot hold', () => {
    const plan = planChain([
      { from: 0, to: 60, text: '373.5' },
      { from: 60, to: 61.8, text: '17.7' },
      { from: 61.8, to: 120, text: '382.3' },
    ]);
    expect(plan.within.map(({ link }) => link.text)).toEqual(['373.5', '382.3']);
    expect(plan.raised.map(({ link }) => link.text)).toEqual(['17.7']);
  });
});

describe('text', () => {
  test('is as wide as its letters: 1 em is 1000 units, capitals 668', () => {
    // Atkinson Hyperlegible: advance of "1" 402, of "l" 239 (hmtx of the shipped file).
    expect(textWidth('1', 2.5)).toBeCloseTo((0.402 * 2.5) / 0.668, 9);
    expect(textWidth('l1', 5)).toBeCloseTo((0.641 * 5) / 0.668, 9);
    expect(textWidth('駅', 2.5)).toBeCloseTo(2.5 / 0.668, 9);
  });

  test('is shortened and wrapped to its room', () => {
    const style = { size: 2.5, weight: 'regular' } as const;
    for (const text of [
      'a title that is longer than its cell in the title block',
      '湿原の駅と長い題名と長い題名',
      'x'.repeat(80),
    ]) {
      expect(textWidth(shortened(text, 40, style), 2.5)).toBeLessThanOrEqual(40);
      for (const line of wrapped(text, 40, style)) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(40);
      expect(wrapped(text, 40, style).join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
    }
  });
});

describe('geometry on paper', () => {
  test('a window keeps the holes of what it shows, whole or cut', () => {
    const polygon = { outline: rectangle([0, 0], [100, 50]), holes: [[...rectangle([20, 10], [40, 30])].reverse()] };
    const areaIn = (x0: number, x1: number) =>
      within(polygon, { x0, x1, y0: 0, y1: 50 }).reduce((sum, one) => sum + area(one), 0);
    expect(areaIn(10, 60)).toBeCloseTo(50 * 50 - 400, 6);
    expect(areaIn(30, 60)).toBeCloseTo(30 * 50 - 200, 6);
    expect(areaIn(50, 100)).toBeCloseTo(2500, 6);
  });

  const view: View = { name: 'v', scale: 10, origin: [20, 100], breaks: [{ from: 200, to: 800, gap: 4 }] };

  test('a break shortens what lies beyond it', () => {
    expect(onPaper(view, [100, 50])).toEqual([30, 95]);
    expect(paperX(view, 800)).toBeCloseTo(44, 9);
    expect(paperX(view, 1000)).toBeCloseTo(64, 9);
  });

  test('a line is told apart under and beside an area', () => {
    const area = {
      outline: [
        [2, -1],
        [5, -1],
        [5, 1],
        [2, 1],
      ] as const,
      holes: [],
    };
    expect(
      told(
        [
          [0, 0],
          [10, 0],
        ],
        [coverOf(area)],
      ),
    ).toEqual([
      {
        segment: [
          [0, 0],
          [2, 0],
        ],
        covered: false,
      },
      {
        segment: [
          [2, 0],
          [5, 0],
        ],
        covered: true,
      },
      {
        segment: [
          [5, 0],
          [10, 0],
        ],
        covered: false,
      },
    ]);
    expect(
      told(
        [
          [2, -1],
          [5, -1],
        ],
        [coverOf(area)],
      ),
    ).toEqual([
      {
        segment: [
          [2, -1],
          [5, -1],
        ],
        covered: false,
      },
    ]);
  });

  test('hatching stays inside its area and out of its holes', () => {
    const outer = [
      [0, 0],
      [20, 0],
      [20, 10],
      [0, 10],
    ] as const;
    const hole = [
      [5, 2],
      [5, 8],
      [15, 8],
      [15, 2],
    ] as const;
    const lines = hatchMarks([outer, hole], { pitch: 2, slope: 1 });
    expect(lines.length).toBeGreaterThan(10);
    for (const mark of lines) {
      expect.assert(mark.kind === 'line');
      expect(crosses([mark.from, mark.to], { x0: 5.01, x1: 14.99, y0: 2.01, y1: 7.99 })).toBe(false);
      for (const [x, y] of [mark.from, mark.to])
        expect(x >= -1e-9 && x <= 20 + 1e-9 && y >= -1e-9 && y <= 10 + 1e-9).toBe(true);
    }
  });
});
