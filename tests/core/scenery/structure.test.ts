import { expect, test } from 'vitest';
import type { Path, Structure } from '../../../src/core/scenery/land.ts';
import { sceneryModel } from '../../../src/core/scenery/scenery.ts';
import { footprint } from '../../../src/core/scenery/structure.ts';
import { clearHalfWidth } from '../../../src/core/track/clearance.ts';
import { around, bare, hill, pond } from './table.ts';

const barn: Structure = {
  ...{ id: 'barn', at: 'scenery.structures.0', middle: [700, 450], turn: 0, length: 100, width: 60, height: 50 },
};
/** a straight line along y = 300, level with the deck */
const line: Path = {
  ...{ id: 'main', half: 13, bed: 9, slope: 2 / 3, free: [] },
  points: Array.from({ length: 51 }, (_, i) => ({ at: 20 * i, x: 20 * i, y: 300, z: 0, clear: 13.5 })),
};
const model = (structures: readonly Structure[], more = {}, lines: readonly Path[] = []) =>
  sceneryModel({ ...bare, ...more, structures }, { ...around, lines });
const told = (...given: Parameters<typeof model>) =>
  model(...given)
    .findings.filter(({ rule }) => rule.startsWith('structure'))
    .map(({ rule, figure, limit }) => [rule, figure, limit]);

test('the plan of a building is turned about its middle: a quarter turn swaps its sides', () => {
  expect(footprint({ middle: [10, 20], turn: 0, length: 4, width: 2 })).toEqual([
    [8, 19],
    [12, 19],
    [12, 21],
    [8, 21],
  ]);
  const turned = footprint({ middle: [10, 20], turn: Math.PI / 2, length: 4, width: 2 });
  const expected = [
    [11, 18],
    [11, 22],
    [9, 22],
    [9, 18],
  ];
  for (const [i, [x, y]] of turned.entries()) {
    expect(x).toBeCloseTo(expected[i]?.[0] ?? Number.NaN, 12);
    expect(y).toBeCloseTo(expected[i]?.[1] ?? Number.NaN, 12);
  }
});

test('a building on open, level ground is not spoken of, and knows its bench', () => {
  expect(told([barn])).toEqual([]);
  expect(model([barn]).structures[0]).toMatchObject({ bench: 'table', ground: { low: 0, high: 0 } });
});

test('hanging over an edge is told by how much, also when turned', () => {
  expect(told([{ ...barn, middle: [30, 450] }])).toEqual([['structure-over-edge', 20, 0]]);
  const [[, over] = []] = told([{ ...barn, middle: [50, 450], turn: Math.PI / 4 }]);
  expect(over).toBeCloseTo((50 + 30) * Math.SQRT1_2 - 50, 3);
});

test('a line too near is told with the room trains need; one above the roof or in a tunnel is not', () => {
  const near = { ...barn, middle: [700, 340] } as const;
  expect(told([near], {}, [line])).toEqual([['structure-on-line', 10, 13.5]]);
  expect(told([{ ...near, middle: [700, 343.5] }], {}, [line])).toEqual([]);
  expect(told([{ ...near, middle: [700, 300] }], {}, [line])[0]).toEqual(['structure-on-line', 0, 13.5]);
  const high = { ...line, free: [[0, 1000]] as const, points: line.points.map((point) => ({ ...point, z: 60 })) };
  expect(told([near], {}, [high])).toEqual([]);
  const tunnels = [{ id: 'bore', line: 'main', from: 600, to: 800, at: 'scenery.tunnels.0' }];
  expect(told([near], { tunnels }, [line])).toEqual([]);
});

test('water under a building, two buildings in one place and a slope are told', () => {
  expect(told([{ ...barn, middle: [320, 150] }], { water: [pond] }).map(([rule]) => rule)).toEqual([
    'structure-in-water',
  ]);
  const other = { ...barn, id: 'shed', middle: [740, 470] } as const;
  expect(told([barn, other]).map(([rule]) => rule)).toEqual(['structures-overlap']);
  const [[rule, fall] = []] = told([{ ...barn, middle: [560, 300] }], { forms: [hill] });
  expect(rule).toBe('structure-on-slope');
  // a paraboloid of 100 on 140: from 10 mm beside its top to the far corner of the plan
  const at = (r: number) => 100 * (1 - (r / 140) ** 2);
  expect(fall).toBeCloseTo(at(10) - at(Math.hypot(110, 30)), 1);
});

test('half the free width of straight track is NEM 102 (2017), BL1 / 2', () => {
  expect(['Z', 'N', 'TT', 'H0', 'S', '0', '1'].map(clearHalfWidth)).toEqual([10, 13.5, 18, 24, 33, 47, 65]);
});

test('the mend of a building on a line moves the whole building clear', () => {
  const on = { ...barn, middle: [700, 310] } as const;
  const told = model([on], {}, [line]).findings.find(({ rule }) => rule === 'structure-on-line');
  expect(told?.level).toBe('halt');
  // its front edge is 20 beyond the line and has to come 13.5 in front of it
  expect(told?.mend).toContainEqual({ length: 33.5, way: 'up' });
  expect(told?.mend.join(' ')).toContain('left');
  const moved = model([{ ...on, middle: [700, 310 + 33.5] }], {}, [line]).findings;
  expect(moved.filter(({ rule }) => rule === 'structure-on-line')).toEqual([]);
  const short = model([{ ...on, middle: [700, 310 + 33.4] }], {}, [line]).findings;
  expect(short.filter(({ rule }) => rule === 'structure-on-line')).toHaveLength(1);
});

test('a tunnel or bridge past the end of its line, or written backwards, is a halt', () => {
  const rules = (from: number, to: number) =>
    model([], { tunnels: [{ id: 'bore', line: 'main', from, to, at: 'scenery.tunnels.0' }] }, [line])
      .findings.filter(({ rule }) => rule === 'stretch-off-line')
      .map(({ figure }) => figure);
  expect(rules(900, 1000)).toEqual([]);
  expect(rules(900, 1040)).toEqual([40]);
  expect(rules(600, 400)).toEqual([0]);
});

test('trees nearer than 20 mm are told, and fewer are not', () => {
  const zone = {
    id: 'wood',
    at: 'scenery.cover.0',
    of: [],
    outline: [
      [100, 100],
      [200, 100],
      [200, 200],
      [100, 200],
    ],
  };
  const rules = (trees: number) =>
    model([], { zones: [{ ...zone, trees }] }).findings.filter(({ rule }) => rule === 'trees-crowded').length;
  expect([2500, 2501, 18].map(rules)).toEqual([0, 1, 0]);
});
