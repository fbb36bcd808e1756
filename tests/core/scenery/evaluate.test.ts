import { expect, test } from 'vitest';
import { evaluateScenery } from '../../../src/core/scenery/evaluate.ts';
import { selfCrossing } from '../../../src/core/scenery/outline-faults.ts';
import { scenerySchema } from '../../../src/core/scenery/schema.ts';
import { spotFaults } from '../../../src/core/scenery/spot-faults.ts';
import { quantityKit } from '../../../src/core/units/schema.ts';
import { cloth, foam } from './table.ts';

const read = (chapter: unknown) =>
  evaluateScenery(scenerySchema(quantityKit(null)).parse(chapter), {
    scope: {},
    scale: 'N',
    stock: [foam, cloth],
    benches: ['table'],
  });
const rules = (chapter: unknown) => {
  const land = read(chapter);
  return land.ok ? [] : land.faults.map(({ rule }) => rule);
};
const hill = { id: 'down', form: 'dome', top: ['500 mm', '300 mm'], height: '100 mm', 'foot-radius': '140 mm' };

test('a chapter becomes figures in mm, with the earth slope where none is written', () => {
  const land = read({
    ground: {
      hills: [hill],
      foam: 'foam-25',
      roads: [
        {
          id: 'lane',
          along: [
            ['0', '0', '0'],
            ['30 mm', '40 mm', '5 mm'],
          ],
          width: '40 mm',
        },
      ],
    },
    cover: [{ id: 'green', outline: 'down.foot', of: ['cloth'] }],
  });
  expect(land.ok && land.value.forms).toEqual([
    { kind: 'hill', id: 'down', form: 'dome', top: [500, 300], height: 100, footRadius: 140 },
  ]);
  expect(land.ok && land.value.slope).toBeCloseTo(1 / 1.5, 12);
  expect(land.ok && land.value.roads[0]?.points[1]).toEqual({ at: 50, x: 30, y: 40, z: 5 });
  expect(land.ok && land.value.zones[0]?.outline).toHaveLength(96);
});

test('two heights at one spot, and one under the deck', () => {
  const spot = (x: number, height: number, at: string) => ({ x, y: 40, height, at });
  const faults = spotFaults([spot(10, 20, 'a'), spot(10.2, 30, 'b'), spot(10, 20, 'c'), spot(60, -2, 'd')]);
  expect(faults.map(({ rule, at }) => [rule, at])).toEqual([
    ['spot-twice', 'b'],
    ['spot-twice', 'c'],
    ['spot-under-deck', 'd'],
  ]);
  expect(
    rules({
      ground: {
        spots: [
          ['0', '0', '5 mm'],
          ['0', '0', '6 mm'],
        ],
      },
    }),
  ).toEqual(['spot-twice']);
});

test('an outline that crosses itself is told where', () => {
  expect(
    selfCrossing([
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ]),
  ).toEqual({ first: 0, second: 2, where: [5, 5] });
  expect(
    selfCrossing([
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]),
  ).toBeNull();
  const water = {
    id: 'pond',
    outline: [
      ['0', '0'],
      ['9 mm', '9 mm'],
      ['9 mm', '0'],
      ['0', '9 mm'],
    ],
    surface: '0',
    depth: '5 mm',
    floor: '3 mm',
    pour: '3 mm',
  };
  expect(rules({ ground: { water: [water] } })).toEqual(['outline-crosses']);
  expect(
    rules({
      ground: {
        water: [
          {
            ...water,
            outline: [
              ['0', '0'],
              ['9 mm', '0'],
              ['4 mm', '0'],
            ],
          },
        ],
      },
    }),
  ).not.toEqual([]);
});

test('nothing where something must be, and stock of the wrong kind', () => {
  expect(rules({ ground: { hills: [{ ...hill, height: '0' }] } })).toEqual(['land-nothing']);
  expect(rules({ ground: { foam: 'cloth' } })).toEqual(['land-stock']);
  expect(rules({ ground: { boards: [{ id: 'b', edge: 'back', bench: 'shelf', stock: 'foam-25' }] } })).toEqual([
    'board-bench',
  ]);
});

test('a tray is as thick as its sheet: as measured, else as listed, whatever the name of the sheet says', () => {
  const pond = {
    ...{ id: 'pond', surface: '-6 mm', depth: '10 mm', floor: '25 mm', pour: '3 mm', tray: 'foam-25' },
    outline: [
      ['0', '0'],
      ['90 mm', '0'],
      ['90 mm', '90 mm'],
    ],
  };
  const listed = { ...foam, thickness: { ...foam.thickness, listed: 25.4 } };
  const floorOf = (measured: Readonly<Record<string, number>>) => {
    const chapter = scenerySchema(quantityKit(null)).parse({ ground: { water: [pond] } });
    const land = evaluateScenery(chapter, {
      ...{ scope: {}, scale: 'N', stock: [listed, cloth], benches: ['table'], measured },
    });
    const water = land.ok ? land.value.water[0] : undefined;
    return [water?.floor, water?.tray?.thickness.listed];
  };
  expect(floorOf({})).toEqual([25.4, 25.4]);
  expect(floorOf({ 'foam-25': 24.7 })).toEqual([24.7, 24.7]);
});

test('a building is written in the size of the real one or of the model', () => {
  const of = (size: object) => {
    const land = read({ structures: [{ id: 'barn', at: ['400 mm', '300 mm'], turn: '30 deg', ...size }] });
    return land.ok ? land.value.structures : land.faults;
  };
  // 16 m at 1:160 is 100 mm
  expect(of({ prototype: { length: '16 m', width: '8 m', height: '12 m' } })).toMatchObject([
    { id: 'barn', middle: [400, 300], length: 100, width: 50, height: 75 },
  ]);
  expect(of({ model: { length: '90 mm', width: '60 mm', height: '45 mm' } })).toMatchObject([
    { length: 90, width: 60, height: 45, turn: Math.PI / 6 },
  ]);
  expect(of({ model: { length: '0 mm', width: '60 mm', height: '45 mm' } })).toMatchObject([{ rule: 'land-nothing' }]);
});
