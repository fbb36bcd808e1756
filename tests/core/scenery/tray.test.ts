import { describe, expect, test } from 'vitest';
import { difference, intersection } from '../../../src/core/geometry/booleans.ts';
import { area, rectangle } from '../../../src/core/geometry/polygon.ts';
import { placedBox } from '../../../src/core/geometry/solid.ts';
import { sceneryModel } from '../../../src/core/scenery/scenery.ts';
import { partOutline } from '../../../src/core/stock/outline.ts';
import type { Part } from '../../../src/core/stock/part.ts';
import { partSolid } from '../../../src/core/stock/solid.ts';
import { around, bare, foam, pond } from './table.ts';

const sheet = { ...foam, id: 'board-3', thickness: { nominal: 3, listed: 3, low: 2.9, high: 3.5 } };
const trayOf = (water: typeof pond) =>
  sceneryModel({ ...bare, water: [{ ...water, tray: sheet }] }, around).parts.filter(({ role }) => role === 'tray');
const boxOf = (part: Part) => {
  const [place] = part.places;
  if (place === undefined) throw new Error('a part without a place');
  return placedBox(partSolid(part), place.pose);
};

describe('the tray of a pond', () => {
  const tray = trayOf(pond);
  const [floor, ...walls] = tray;

  test('has a floor a wall larger all round, and a wall a side between floor and deck', () => {
    // surface 6 under the deck's top and 10 deep: floor from 19 to 16 under it; the deck takes 9
    expect(floor === undefined ? null : boxOf(floor)).toEqual({ min: [247, 97, 681], max: [403, 203, 684] });
    expect(floor === undefined ? 0 : area(partOutline(floor))).toBeCloseTo(156 * 106, 6);
    expect(walls.map(({ blank }) => [blank.length, blank.width])).toEqual([
      [153, 7],
      [103, 7],
      [153, 7],
      [103, 7],
    ]);
    for (const wall of walls) {
      const { min, max } = boxOf(wall);
      expect([min[2], max[2]].map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([684, 691]);
    }
  });

  test('closes round its outline without a gap or two walls in one place', () => {
    const loops = walls.map((wall) => {
      const { min, max } = boxOf(wall);
      return rectangle([min[0], min[1]], [max[0], max[1]]);
    });
    const ring = difference([rectangle([247, 97], [403, 203])], [pond.outline]);
    const open = difference(
      ring.map(({ outline }) => outline),
      [pond.outline, ...loops],
    );
    expect(open.reduce((sum, piece) => sum + area(piece), 0)).toBeLessThan(1e-6);
    for (const [i, one] of loops.entries()) {
      for (const other of loops.slice(i + 1)) expect(intersection([one], [other])).toEqual([]);
    }
  });

  test('keeps clear of the strut it notches', () => {
    const [notch] = sceneryModel({ ...bare, water: [{ ...pond, tray: sheet }] }, around).requests;
    const box = floor === undefined ? null : boxOf(floor);
    // the notch is 1 mm wider than the tray on both sides and as deep as its floor
    expect(notch?.size[0]).toBeCloseTo((box?.max[1] ?? 0) - (box?.min[1] ?? 0) + 2, 6);
    expect(691 - (notch?.size[1] ?? 0)).toBeCloseTo(box?.min[2] ?? 0, 6);
  });

  test('has no walls where the floor lies straight under the deck', () => {
    expect(trayOf({ ...pond, surface: -1, depth: 8 }).map(({ id }) => id)).toEqual(['tray.pond-floor']);
  });
});
