import { describe, expect, it } from 'vitest';
import { fitsStock } from '../../src/core/benchwork/stock-fit.ts';
import type { BoardStock, SheetStock } from '../../src/core/stock/goods.ts';
import { partMass } from '../../src/core/stock/mass.ts';
import { knownThickness, readingFaults, thicknessFindings } from '../../src/core/stock/thickness-check.ts';
import published from './sheets.json' with { type: 'json' };

const INCH = 25.4;

function sheet(thickness: SheetStock['thickness']): SheetStock {
  const sizes = [{ length: 2440, width: 1220, grain: 'length', price: null }] as const;
  const goods = { id: 'sheet', name: 'sheet', source: 'published', price: null };
  return { kind: 'sheet', ...goods, material: 'plywood', thickness, sizes, density: 600, stiffness: null, bending: null };
}

const levels = (stock: SheetStock, reading: number) => thicknessFindings(knownThickness(stock, [reading]), 'frame').map(({ level }) => level);
const refused = (stock: SheetStock, value: number) => readingFaults(stock, [{ value, at: 'x' }]).length > 0;

describe('PS 1 performance categories', () => {
  for (const { category, nominal, low, high, label } of published.panels) {
    it(`a ${category} panel may measure ${low} to ${high} in, and is never taken for another`, () => {
      const stock = sheet({ nominal: nominal * INCH, listed: label * INCH, low: low * INCH, high: high * INCH });
      for (const reading of [low, label, high]) {
        expect(levels(stock, reading * INCH)).toEqual([]);
        expect(refused(stock, reading * INCH)).toBe(false);
      }
      for (const reading of [low - 0.002, high + 0.002]) expect(levels(stock, reading * INCH)).toEqual(['care']);
    });
  }
});

describe('birch plywood of a Finnish maker', () => {
  for (const { nominal, mean, low, high, density, sheet: kg } of published.birch) {
    it(`${nominal} mm: listed ${mean}, from ${low} to ${high}`, () => {
      const stock = sheet({ nominal, listed: mean, low, high });
      expect(knownThickness(stock, [])).toMatchObject({ mean, thickest: mean });
      expect([low, mean, high].flatMap((reading) => levels(stock, reading))).toEqual([]);
      expect([low, mean, high].some((reading) => refused(stock, reading))).toBe(false);
    });
    if (kg === undefined) continue;
    it(`a sheet of ${nominal} mm weighs ${kg} kg`, () => {
      const blank = { length: 2440, width: 1220, thickness: nominal, grain: 'length' } as const;
      expect(Math.abs(partMass({ blank, features: [] }, density) - kg)).toBeLessThanOrEqual(0.05);
    });
  }
});

describe('EN 315 sanded plywood (from memory)', () => {
  it('no lawful sheet is taken for another', () => {
    for (const t of published.sanded) {
      const [low, high] = [t - 0.4 - 0.03 * t, t + 0.2 + 0.03 * t];
      const stock = sheet({ nominal: t, listed: t, low, high });
      expect([refused(stock, low), refused(stock, high)]).toEqual([false, false]);
    }
  });
});

describe('PS 20 boards', () => {
  for (const { name, thickness, width, nominal } of published.lumber) {
    it(`a ${name} yields ${width} in, not the ${nominal} of its name`, () => {
      const [t, w] = [thickness * INCH, width * INCH];
      const goods = { id: name, name, source: 'PS 20', price: null };
      const board: BoardStock = {
        kind: 'board',
        ...goods,
        thickness: { nominal: t, listed: t, low: t, high: t },
        width: w,
        lengths: [96 * INCH],
        density: 450,
        stiffness: null,
        bending: null,
      };
      const blank = (wide: number) => ({ length: 60 * INCH, width: wide, thickness: t, grain: 'length' }) as const;
      expect(fitsStock(board, blank(w))).toBe(true);
      expect(fitsStock(board, blank(nominal * INCH))).toBe(false);
    });
  }
});
