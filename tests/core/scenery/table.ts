import type { Bench } from '../../../src/core/benchwork/bench.ts';
import type { Hill, Land, Water } from '../../../src/core/scenery/land.ts';
import type { Around } from '../../../src/core/scenery/scenery.ts';
import type { CoverStock, SheetStock } from '../../../src/core/stock/goods.ts';
import type { Part } from '../../../src/core/stock/part.ts';

/** A table of 1000 by 600 with a deck of 9 mm on two struts across, all invented. */
export const bench: Bench = {
  ...{ id: 'table', construction: 'lapped-grid', place: { x: 0, y: 0, turn: 0 }, phase: 'now' },
  ...{ length: 1000, width: 600, deckTop: 700, sideTop: 691, sideUnderside: 591, strutUnderside: 601 },
};

function strut(number: number, x: number): Part['places'][number] {
  const id = `strut.across-${number}`;
  return {
    id,
    label: `C${number}`,
    marks: [],
    pose: { origin: [x - 9, 0, 601], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] },
  };
}

export const struts: Part = {
  ...{ id: 'strut.across-1', label: 'C1, C2', role: 'strut', chapter: 'benchwork', bench: 'table', stock: 'ply-18' },
  blank: { length: 600, width: 90, thickness: 18, grain: 'length' },
  features: [
    {
      id: 'slot-1',
      for: 'strut.along-1',
      kind: 'notch',
      edge: 'top',
      patch: { x0: 291, x1: 309, y0: 45, y1: 90 },
      corner: 0,
    },
  ],
  places: [strut(1, 333), strut(2, 667)],
  ...{ cutAfterMeasuring: false, phase: 'now' },
};

export const deck: Part = {
  ...{ id: 'deck.1', label: 'D1', role: 'deck', chapter: 'benchwork', bench: 'table', stock: 'ply-9' },
  blank: { length: 1000, width: 600, thickness: 9, grain: 'length' },
  features: [],
  places: [
    { id: 'deck.1', label: 'D1', marks: [], pose: { origin: [0, 0, 691], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } },
  ],
  ...{ cutAfterMeasuring: false, phase: 'now' },
};

export const foam: SheetStock = {
  ...{ id: 'foam-25', name: 'Foam', source: 'invented', price: null, kind: 'sheet', material: 'foam' },
  thickness: { nominal: 25, listed: 25, low: 24, high: 26 },
  sizes: [{ length: 500, width: 300, grain: 'any', price: null }],
  ...{ density: 30, stiffness: null, bending: null },
};

export const cloth: CoverStock = {
  ...{ id: 'cloth', name: 'Cloth', source: 'invented', price: null, kind: 'cover', unit: 'roll' },
  ...{ coversArea: 1e6, fillsVolume: null, massPerSquareMetre: 2, layers: 2, overlap: 0.25 },
};

export const hill: Hill = { kind: 'hill', id: 'down', form: 'dome', top: [500, 300], height: 100, footRadius: 140 };

export const pond: Water = {
  ...{ id: 'pond', at: 'scenery.ground.water.0', surface: -6, depth: 10, floor: 3, pour: 3, resin: null, tray: null },
  outline: [
    [250, 100],
    [400, 100],
    [400, 200],
    [250, 200],
  ],
};

export const bare: Land = {
  ...{ spots: [], spotReach: 300, forms: [], roads: [], slope: 2 / 3, water: [], foam, hollow: null, boards: [] },
  structures: [],
  ...{ zones: [], ballast: null, bridges: [], tunnels: [], sections: [] },
};

export const around: Around = {
  benches: [bench],
  parts: [struts, deck],
  envelopes: [],
  lines: [],
  scale: 'N',
  headroom: { train: 40, roof: 10, source: 'test' },
  reach: 600,
  mustMove: false,
};
