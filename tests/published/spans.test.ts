import { describe, expect, it } from 'vitest';
import { betweenRabbets, cells, clearImplied, outsideImplied, thicknessImplied } from '../../src/core/benchwork/spans.ts';
import published from './spans.json' with { type: 'json' };

describe('a rabbeted cabinet 26 in wide', () => {
  const { outside, depth, panels, cutByName } = published.rabbets;

  for (const { thickness, length } of panels) {
    it(`a sheet of ${thickness} in needs a panel of ${length}, and the panel implies the sheet`, () => {
      expect(betweenRabbets(outside, thickness, depth)).toBe(length);
      expect(thicknessImplied(outside, length, depth)).toBe(thickness);
    });
  }

  it('cut by the name of the sheet it comes out 1/16 narrow', () => {
    expect(outsideImplied(cutByName.length, cutByName.thickness, depth)).toBe(cutByName.outside);
  });
});

describe('the cells of a torsion box', () => {
  const { frame, web, ways } = published.cells;

  for (const { outside, count, given, closes, cell, needs, implies } of ways) {
    it(`${count} cells across ${outside} in ${closes ? 'close' : 'do not close, and say what they imply'}`, () => {
      const clear = outside - 2 * frame;
      expect(cells(clear, { count, web })).toBe(cell ?? given);
      expect(clearImplied(given, { count, web }) === clear).toBe(closes);
      if (needs !== undefined && implies !== undefined) {
        expect(clearImplied(given, { count, web })).toBe(needs);
        expect(clearImplied(given, { count, web }) + 2 * frame).toBe(implies);
      }
    });
  }
});

describe('a bench of 5 ft between rails', () => {
  it('its cross pieces are 58-1/2 in: no rabbet, no depth', () => {
    const { outside, rail, between } = published.bench;
    expect(betweenRabbets(outside, rail, 0)).toBe(between);
  });
});
