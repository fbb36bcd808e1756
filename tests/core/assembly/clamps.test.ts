import { describe, expect, test } from 'vitest';
import type { Placing } from '../../../src/core/assembly/assembly.ts';
import { borrowed, clampsFor } from '../../../src/core/assembly/clamps.ts';
import { USUAL_WORKSHOP } from '../../../src/core/assembly/workshop.ts';
import type { Joint } from '../../../src/core/stock/part.ts';
import { type Block, pieceOf } from './puzzle.ts';

const box = (low: readonly [number, number, number], size: readonly [number, number, number]): Block => [
  [...low],
  [low[0] + size[0], low[1] + size[1], low[2] + size[2]],
];

function joint(kind: Joint['kind'], a: string, b: string): Joint {
  return { id: `${a}-${b}`, kind, between: [a, b], held: 'glue', clearance: 0, relief: 0 };
}

function going(part: string, direction: Placing['direction'], joints: readonly Joint[]): Placing {
  return {
    ...{
      parts: [part],
      direction,
      with: [],
      joints: joints.map(({ id }) => id),
      path: 'straight',
      legs: [],
      travel: 0,
    },
    ...{ frame: 'upright', turn: false, within: null },
  };
}

describe('clamps of a glue stage', () => {
  // a foot 110 wide under a post 35 wide: two layers, and a third that stands apart from them
  const bodies = [
    pieceOf('foot', [box([0, 0, 0], [100, 110, 20])]),
    pieceOf('inner', [box([0, 0, 20], [100, 17, 500])]),
    pieceOf('outer', [box([0, 17, 20], [100, 18, 500])]),
    pieceOf('far', [box([0, 60, 20], [100, 18, 500])]),
  ];
  const butt = joint('butt', 'inner', 'outer');
  const layers = { placing: going('outer', [0, -1, 0], [butt]), joints: [butt], standing: bodies };

  test('open over the wood that is pressed together, and not over the box round all that stands', () => {
    expect(clampsFor([layers], USUAL_WORKSHOP)).toEqual([{ along: 'y', reach: 35, count: 3, at: ['outer'] }]);
  });

  test('bridge a slot and a hole in one piece, but not the room between two', () => {
    const rail = pieceOf('rail', [
      box([0, 0, 0], [40, 20, 10]),
      box([60, 0, 0], [40, 20, 10]),
      box([40, 0, 0], [20, 20, 2]),
    ]);
    const wall = pieceOf('wall', [box([100, -50, -50], [18, 120, 120])]);
    const beyond = pieceOf('beyond', [box([130, -50, -50], [18, 120, 120])]);
    const dado = joint('dado', 'wall', 'rail');
    const one = { placing: going('wall', [-1, 0, 0], [dado]), joints: [dado], standing: [rail, wall, beyond] };
    expect(clampsFor([one], USUAL_WORKSHOP)).toEqual([{ along: 'x', reach: 118, count: 1, at: ['rail'] }]);
  });

  test('that are missing are counted over stages that are done one after the other', () => {
    const stage = (...wanted: readonly (readonly [count: number, reach: number])[]) =>
      wanted.map(([count, reach]) => ({ count, reach, along: 'x', at: [] }) as const);
    const hand = [{ opening: 600, count: 8 }];
    expect(borrowed([stage([1, 1600]), stage([5, 1088]), stage([5, 1100])], hand)).toEqual([
      { reach: 1600, count: 1 },
      { reach: 1100, count: 4 },
    ]);
    // the one that opens 1600 does for a short joint too: nine are asked and nine are there
    expect(borrowed([stage([1, 1600], [8, 300])], hand)).toEqual([{ reach: 1600, count: 1 }]);
    expect(borrowed([stage([9, 300])], hand)).toEqual([{ reach: 300, count: 1 }]);
    expect(borrowed([stage([8, 600])], hand)).toEqual([]);
  });
});
