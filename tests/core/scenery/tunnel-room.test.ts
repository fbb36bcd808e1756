import { describe, expect, test } from 'vitest';
import { insideLoop } from '../../../src/core/scenery/distance.ts';
import type { Path } from '../../../src/core/scenery/land.ts';
import { sceneryModel } from '../../../src/core/scenery/scenery.ts';
import { tunnelRoom } from '../../../src/core/scenery/tunnel-room.ts';
import { around, bare, hill } from './table.ts';

/** A line 18 mm over the deck, straight through the middle of the hill. */
const line: Path = {
  ...{ id: 'main', half: 20, slope: 2 / 3, free: [[420, 580]] },
  points: Array.from({ length: 51 }, (_, i) => ({ at: i * 20, x: i * 20, y: 300, z: 18 })),
};
const tunnel = { id: 'bore', line: 'main', from: 420, to: 580, at: '' };
const headroom = { train: 40, roof: 10, source: 'test' };
const land = { ...bare, forms: [{ ...hill, height: 150 }], tunnels: [tunnel] };
const bored = sceneryModel(land, { ...around, lines: [line], headroom });
const solid = sceneryModel({ ...land, tunnels: [] }, { ...around, lines: [line], headroom });

describe('a tunnel through layers of 25 mm', () => {
  // free from 18 to 58 mm: 7 mm off the top of the first, the whole second, 8 mm off the underside of the third
  test('takes the top of one, the whole of the next, and the underside of the third', () => {
    expect(bored.layers.map(({ room }) => room.map(({ takes, deep }) => [takes, deep]))).toEqual([
      [['top', 7]],
      [['all', 25]],
      [['underside', 8]],
      ...Array.from({ length: bored.layers.length - 3 }, () => []),
    ]);
  });

  test('leaves no foam and no pin in the room of a train', () => {
    const second = bored.layers[1];
    expect(second?.template).toHaveLength(2);
    for (let x = 425; x <= 575; x += 10) {
      const there = (second?.template ?? []).some(({ outline }) => insideLoop(outline, [x, 310]));
      expect(there).toBe(false);
    }
    for (const { at, id } of second?.marks ?? []) expect(Math.abs(at[1] - 300), id).toBeGreaterThan(20);
  });

  test('weighs less by its room', () => {
    const before = solid.layers[1]?.left ?? 0;
    expect(before - (bored.layers[1]?.left ?? 0)).toBeGreaterThan(0.5 * 160 * 40 * 25);
  });

  test('too near the top of a layer takes all of it rather than leave a thin roof', () => {
    const tall = { ...headroom, train: 50 };
    // 18 + 50 = 68 leaves 7 mm of the third layer
    const room = tunnelRoom({ tunnels: [tunnel], paths: [line], headroom: tall }, { from: 50, to: 75 });
    expect(room.map(({ takes }) => takes)).toEqual(['all']);
    const low = { ...line, points: line.points.map((point) => ({ ...point, z: 2 })) };
    const first = tunnelRoom({ tunnels: [tunnel], paths: [low], headroom }, { from: 0, to: 25 });
    expect(first.map(({ takes }) => takes)).toEqual(['all']);
  });
});
