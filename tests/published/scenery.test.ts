import { describe, expect, it } from 'vitest';
import { ballastSection } from '../../src/core/scenery/ballast.ts';
import { treesOn } from '../../src/core/scenery/cover.ts';
import { trackBed } from '../../src/core/scenery/formation-width.ts';
import { GLUE_DEPTH } from '../../src/core/scenery/glue.ts';
import { deeperAt, RESIN_DENSITY } from '../../src/core/scenery/pours.ts';
import { areaLaid, wholeUnits } from '../../src/core/scenery/quantity.ts';
import { roomUnder } from '../../src/core/scenery/room-under.ts';
import { waterModel } from '../../src/core/scenery/water.ts';
import { cutLimits } from '../../src/core/stock/cut-limits.ts';
import type { CoverStock } from '../../src/core/stock/goods.ts';
import { modelLength } from '../../src/core/track/scale.ts';
import published from './scenery.json' with { type: 'json' };

const INCH = 25.4;
const SQUARE_FOOT = (12 * INCH) ** 2;

/** A water of a rectangle, mm. */
function tank(long: number, wide: number, depth: number) {
  const outline = [
    [0, 0],
    [long, 0],
    [long, wide],
    [0, wide],
  ] as const;
  return waterModel({ id: 'tank', at: '', outline, surface: 0, depth, floor: 3, pour: 3, resin: null, tray: null });
}

describe('the bed of single track', () => {
  for (const { scale, ballast, formation } of published.beds) {
    it(`${scale}: ballast ${ballast} on a formation of ${formation}`, () => {
      expect(trackBed(scale)).toEqual({ ballast, formation });
    });
  }

  for (const { scale, volume } of published.ballast) {
    it(`${scale} takes about ${volume} cm3 of ballast a metre`, () => {
      // a section of 1 mm2 is 1 cm3 a metre
      expect(Math.abs((ballastSection(scale) ?? 0) / volume - 1)).toBeLessThan(0.25);
    });
  }
});

describe('what covers and fills', () => {
  it('a roll of plaster cloth covers 4 square feet in two layers', () => {
    const { roll, layers, overlap, covers } = published.cloth;
    const cloth: CoverStock = {
      ...{ id: 'cloth', name: 'Cloth', source: '', price: null, kind: 'cover', unit: 'roll' },
      ...{ coversArea: roll * SQUARE_FOOT, fillsVolume: null, massPerSquareMetre: null, layers, overlap },
    };
    expect((areaLaid(cloth) ?? 0) / SQUARE_FOOT).toBeCloseTo(covers, 12);
  });

  for (const { area, depth, litres } of published.pours) {
    it(`${area} mm2 poured ${depth} mm deep is ${litres} l`, () => {
      expect(tank(area, 1, depth).volume / 1e6).toBeCloseTo(litres, 3);
    });
  }

  it('trees by density', () => {
    const { perSquareMetre, squareMetres, count } = published.trees;
    expect(treesOn(squareMetres * 1e6, perSquareMetre)).toBe(count);
  });

  it('a foam top of 36 square feet takes four tubes of glue', () => {
    const { squareFeet, tubes } = published.glue;
    expect(wholeUnits(squareFeet * SQUARE_FOOT * GLUE_DEPTH, 300e3)).toBe(tubes);
  });
});

describe('a river of resin', () => {
  const { size, cubicInches, litres, fluidOunces, density, kilograms, bought, fills, shortPercent } = published.river;
  const [long = 0, wide = 0, deep = 0] = size;
  const river = tank(long * INCH, wide * INCH, deep * INCH);

  it('its volume in three units', () => {
    expect(river.volume / INCH ** 3).toBeCloseTo(cubicInches, 9);
    expect(river.volume / 1e6).toBeCloseTo(litres, 2);
    expect(river.volume / 29573.5295625).toBeCloseTo(fluidOunces, 0);
  });

  it('its mass, and how far 16 kg go', () => {
    expect(RESIN_DENSITY).toBe(density);
    const floor = river.area * river.floor * 1e-9 * 900;
    expect(river.mass - floor).toBeCloseTo(kilograms, 1);
    expect(bought / RESIN_DENSITY).toBeCloseTo(fills, 1);
    const short = 100 * (1 - bought / RESIN_DENSITY / (river.volume / 1e6));
    expect(Math.abs(short - shortPercent)).toBeLessThan(1);
  });

  it('a table that leans deepens its low end', () => {
    const { slope, length, deeper } = published.lean;
    const [rise = 0, run = 1] = slope;
    expect(deeperAt(length, rise / run)).toBe(deeper);
  });
});

describe('notches and holes in a joist', () => {
  it(`of ${published.notches.depth} mm`, () => {
    const { depth, ...limits } = published.notches;
    expect(cutLimits(depth)).toEqual(limits);
  });
});

describe('room under a bridge', () => {
  for (const { scale, has, needs, short, run } of published.bridge) {
    it(`${scale}: ${short} in short, ${run} in of climb at 2 % each side or one layer of foam`, () => {
      const need = modelLength(16 * 12 * INCH, scale);
      expect(need / INCH).toBeCloseTo(needs, 2);
      const room = roomUnder({ has: has * INCH, needs: need, grade: 0.02, foam: 2 * INCH });
      expect(room.short / INCH).toBeCloseTo(short, 1);
      expect(room.raise.run / INCH).toBeCloseTo(run, -0.5);
      expect(room.layers).toBe(1);
    });
  }
});
