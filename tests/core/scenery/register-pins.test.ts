import { expect, test } from 'vitest';
import { grown } from '../../../src/core/geometry/offset.ts';
import { holds } from '../../../src/core/geometry/polygon.ts';
import { deepInside } from '../../../src/core/scenery/clip.ts';
import type { Path } from '../../../src/core/scenery/land.ts';
import type { BuiltLayer } from '../../../src/core/scenery/model.ts';
import { pinsIn } from '../../../src/core/scenery/register-pins.ts';
import { sceneryModel } from '../../../src/core/scenery/scenery.ts';
import { around, bare, hill } from './table.ts';

const line: Path = {
  ...{ id: 'main', half: 19, slope: 2 / 3, free: [[300, 700]] },
  points: [0, 250, 500, 750, 1000].map((x) => ({ at: x, x, y: 300, z: 10 })),
};
const tunnels = [{ id: 'bore', line: 'main', from: 300, to: 700, at: '' }];
const wide = { ...hill, footRadius: 280, height: 150 };
const bored = sceneryModel({ ...bare, forms: [wide], tunnels }, { ...around, lines: [line] });
const parted = sceneryModel({ ...bare, forms: [wide] }, around);

/** What is wrong with the pins of a stack, in words. */
function pinFaults(layers: readonly BuiltLayer[]): readonly string[] {
  const pieces = layers.flatMap((layer) => layer.pieces);
  const marks = [...new Map(layers.flatMap((layer) => layer.marks).map((mark) => [mark.id, mark])).values()];
  const few = pieces.flatMap(({ part }) => {
    const count = marks.filter(({ parts }) => parts.includes(part)).length;
    return count < 2 ? [`${part} has ${count} pins`] : [];
  });
  const loose = marks.flatMap(({ id, at, parts }) => {
    const solid = parts.every((part) => {
      const { shape } = pieces.find((piece) => piece.part === part) ?? {};
      return shape !== undefined && deepInside([shape], 7.9).some((deep) => holds(deep, at));
    });
    return solid ? [] : [`${id} is not in foam`];
  });
  const hollow = marks.flatMap(({ id, at, between }) => {
    const rooms = layers.filter(({ number }) => between.includes(number)).flatMap(({ room }) => room);
    const over = rooms.some(({ loop }) => grown([loop], 9.9).some((wall) => holds(wall, at)));
    return over ? [`${id} is at a tunnel`] : [];
  });
  return [...few, ...loose, ...hollow];
}

test('every piece has two pins in foam, clear of tunnels', () => {
  expect(bored.layers.flatMap(({ room }) => room).length).toBeGreaterThan(0);
  expect(pinFaults(bored.layers)).toEqual([]);
  expect(parted.layers[0]?.pieces.length).toBeGreaterThan(1);
  expect(pinFaults(parted.layers)).toEqual([]);
});

test('a pin over the tunnel, one off its piece and a piece without any are found', () => {
  const with_ = (at: readonly [number, number]) =>
    bored.layers.map((layer) => ({ ...layer, marks: layer.marks.map((mark) => ({ ...mark, at })) }));
  expect(pinFaults(with_([500, 300])).join()).toContain('at a tunnel');
  expect(pinFaults(with_([20, 580])).join()).toContain('not in foam');
  const none = bored.layers.map((layer) => ({ ...layer, marks: [] }));
  expect(pinFaults(none).join()).toContain('has 0 pins');
});

test('marks on the parts are the pins, on the face to what lies above', () => {
  for (const { marks, pieces } of parted.layers) {
    for (const { part } of pieces) {
      const made = parted.parts.find(({ id }) => id === part)?.places[0];
      const own = marks.filter(({ parts }) => parts.includes(part));
      expect(made?.marks.map(({ text }) => text).toSorted()).toEqual(own.map(({ id }) => id).toSorted());
      for (const { text, side, at } of made?.marks ?? []) {
        const pin = own.find(({ id }) => id === text);
        expect(side).toBe(pin?.parts.length === 2 && pin.parts[0] === part ? 'face' : 'back');
        expect(at[0] + (made?.pose.origin[0] ?? 0)).toBeCloseTo(pin?.at[0] ?? Number.NaN, 9);
        expect(at[1] + (made?.pose.origin[1] ?? 0)).toBeCloseTo(pin?.at[1] ?? Number.NaN, 9);
      }
    }
  }
});

test('pins stand in a ring, never in its hole; a scrap takes one or none', () => {
  const square = (low: number, high: number) =>
    [
      [low, low],
      [high, low],
      [high, high],
      [low, high],
    ] as const;
  const ring = [{ outline: square(0, 200), holes: [square(40, 160)] }];
  for (const pin of pinsIn(ring, [])) expect(ring.some((one) => holds(one, pin))).toBe(true);
  expect(pinsIn(ring, [])).toHaveLength(2);
  expect(pinsIn([{ outline: square(0, 30), holes: [] }], [])).toEqual([[15, 15]]);
  expect(pinsIn([{ outline: square(0, 12), holes: [] }], [])).toEqual([]);
});
