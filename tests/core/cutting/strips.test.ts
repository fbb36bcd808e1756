import { describe, expect, it } from 'vitest';
import type { CutJob } from '../../../src/core/cutting/job.ts';
import { layOut } from '../../../src/core/cutting/layout.ts';
import { stripsBySections, stripsIn } from '../../../src/core/cutting/strips.ts';
import { whatIf } from '../../../src/core/cutting/whatif.ts';

const INCH = 25.4;
const KERF = INCH / 8;

function foam(lengths: readonly number[], stock: { readonly length: number; readonly width: number }): CutJob {
  return {
    stock: [
      {
        ...{ id: 'foam', length: stock.length * INCH, width: stock.width * INCH, grain: 'any', price: 30 },
        ...{ count: null, offcut: false, noGo: [] },
      },
    ],
    parts: lengths.map((length, i) => ({
      id: `table-${i + 1}`,
      length: length * INCH,
      width: 24 * INCH,
      quantity: 1,
      grain: 'any',
    })),
    ...{ kerf: 0, trim: 0, style: { kind: 'saw', stages: 'any' }, keep: 100, budget: 40 },
  };
}

// A builders' forum question on ripping a 48 in sheet with a 1/8 in kerf; the counts follow from n w + (n - 1) k <= W.
describe('strips from a 48 in sheet, kerf 1/8 in', () => {
  it.each([
    [3.5, 13, 7 / 8],
    [4, 11, 2 + 5 / 8],
    [3.25, 14, 3 / 4],
    [3, 15, 1 + 1 / 8],
  ])('%d in wide: %d strips, %d in left', (width, count, left) => {
    const strips = stripsIn(48 * INCH, width * INCH, KERF);
    expect(strips.count).toBe(count);
    expect(strips.left / INCH).toBeCloseTo(left, 6);
  });

  it('six sheets of 4 in strips give 66, not 72', () => {
    expect(6 * stripsIn(48 * INCH, 4 * INCH, KERF).count).toBe(66);
  });

  it('12 in sections first give 12 strips of 3 in instead of 15, each whole section 2 5/8 in over', () => {
    expect(stripsBySections(48 * INCH, 12 * INCH, { strip: 3 * INCH, kerf: KERF }).count).toBe(12);
    expect(stripsIn(12 * INCH, 3 * INCH, KERF).left / INCH).toBeCloseTo(2 + 5 / 8, 6);
  });

  it.each([
    [3.5, 13],
    [4, 11],
    [3, 15],
  ])('the layout agrees: %d in wide, %d strips on one sheet and not one more', (width, count) => {
    const job = { ...foam([96], { length: 96, width: 48 }), kerf: KERF };
    const strips = (quantity: number): CutJob => ({
      ...job,
      parts: [{ id: 'strip', length: 96 * INCH, width: width * INCH, quantity, grain: 'length' }],
    });
    expect(layOut(strips(count)).sheets).toHaveLength(1);
    expect(layOut(strips(count + 1)).sheets).toHaveLength(2);
  });

  it('no size gives no strips', () => {
    expect(stripsIn(1220, 0, 3).count).toBe(0);
    expect(stripsIn(Number.NaN, 10, 3).count).toBe(0);
    expect(stripsIn(1220, 10, -1).count).toBe(0);
    expect(stripsIn(5, 10, 20).count).toBe(0);
  });
});

// "Making the Cut: Benchwork and Lumber", fjglayout.wordpress.com: four table tops 2 ft wide, 32 sq ft of foam, one sheet
// of 32 sq ft; the fourth length (3.0 ft) follows from the area.
describe('four tops of 24 in from one 48 x 96 in sheet', () => {
  const job = foam([36, 43.2, 55.2, 57.6], { length: 96, width: 48 });

  it('needs two sheets although the area is that of one', () => {
    const area = job.parts.reduce((sum, part) => sum + part.length * part.width, 0);
    expect(area).toBeCloseTo(48 * 96 * INCH * INCH, 3);
    const answer = layOut(job);
    expect(answer.sheets).toHaveLength(2);
  });

  it('misses by 2.4 in: the 4.6 ft top at 4.4 ft saves the sheet, one tick more does not', () => {
    const saving = whatIf(job, { tick: INCH / 16, most: 6 * INCH });
    expect(saving?.part).toBe('table-3');
    expect(saving?.side).toBe('length');
    const change = ((saving?.from ?? 0) - (saving?.to ?? 0)) / INCH;
    expect(change).toBeGreaterThanOrEqual(2.4 - 1e-6);
    expect(change).toBeLessThan(2.4 + 1 / 16);
    const exactly = whatIf(job, { tick: 0.1 * INCH, most: 6 * INCH });
    expect(((exactly?.from ?? 0) - (exactly?.to ?? 0)) / INCH).toBeCloseTo(2.4, 6);
  });
});
