import { describe, expect, it } from 'vitest';
import { baysBehind, standingIn } from '../../../src/core/benchwork/drawers/bays.ts';
import {
  boxWidth,
  diagonalDifference,
  drawerPitch,
  longestSlide,
  mostSkew,
  takeOff,
} from '../../../src/core/benchwork/drawers/box.ts';
import { faceOf, ligaments, openingOf, pathOf } from '../../../src/core/benchwork/drawers/face.ts';
import { type Grid, lappedGrid } from '../../../src/core/benchwork/grid.ts';
import { HAND, handRoom } from '../../../src/core/benchwork/shelves/hand-room.ts';
import { TABLE, table } from './example.ts';

function demoGrid(): Grid {
  const grid = lappedGrid(table([17.7]), TABLE);
  if (grid === null) throw new Error('no grid');
  return grid;
}

describe('bays', () => {
  const grid = demoGrid();

  it('the demo table has four of 377.875 by 523.45 behind its front', () => {
    const bays = baysBehind(grid, 'front');
    expect(bays.map(({ number, wide, deep }) => [number, wide, deep])).toEqual(
      [1, 2, 3, 4].map((n) => [n, 377.875, 523.45]),
    );
    expect(bays[0]?.min.slice(0, 2)).toEqual([17.7, 17.7]);
  });

  it('counts from the left of whoever stands before the side', () => {
    expect(baysBehind(grid, 'back')[0]?.max[0]).toBeCloseTo(1582.3, 9);
    expect(baysBehind(grid, 'left')[0]?.max[1]).toBeCloseTo(1082.3, 9);
    expect(baysBehind(grid, 'right').map(({ wide, deep }) => [wide, deep])).toEqual([
      [523.45, 377.875],
      [523.45, 377.875],
    ]);
  });

  it('knows what stands in one, and what only touches it', () => {
    const [bay] = baysBehind(grid, 'front');
    if (bay === undefined) throw new Error('no bay');
    const leg = {
      id: 'leg',
      of: 'post.front-left',
      kind: 'leg',
      min: [17.7, 17.7, 0],
      max: [88.5, 88.5, 690],
    } as const;
    const beside = { ...leg, id: 'beside', min: [bay.max[0], 17.7, 0], max: [500, 88.5, 690] } as const;
    expect(standingIn(bay, [leg, beside]).map(({ id }) => id)).toEqual(['leg']);
  });
});

describe('a face cut from its own opening by a 6.35 bit', () => {
  const path = { patch: { x0: 100, x1: 400, y0: 40, y1: 130 }, radius: 12 };
  const opening = openingOf(path, 6.35);
  const face = faceOf(path, 6.35);

  it('is the opening less two bits, its corners rounder by one (radius rho + D/2 and rho - D/2)', () => {
    if (face === null) throw new Error('no face');
    expect(opening.patch.x1 - opening.patch.x0 - (face.patch.x1 - face.patch.x0)).toBeCloseTo(12.7, 9);
    expect(opening.patch.y1 - opening.patch.y0 - (face.patch.y1 - face.patch.y0)).toBeCloseTo(12.7, 9);
    expect(opening.radius - face.radius).toBeCloseTo(6.35, 9);
  });

  it('leads back to its path, and there is none where the bit takes it all', () => {
    expect(pathOf(opening, 6.35)).toEqual(path);
    expect(faceOf({ ...path, radius: 3 }, 6.35)).toBeNull();
    expect(faceOf({ patch: { x0: 0, x1: 6, y0: 0, y1: 90 }, radius: 4 }, 6.35)).toBeNull();
  });

  it('leaves wood above and below', () => {
    expect(ligaments(opening.patch, 170)).toEqual({ above: 36.825, below: 36.825 });
    expect(ligaments({ ...opening.patch, y1: 180 }, 170).above).toBe(-10);
  });
});

describe('boxes that fit their openings (field case "Have a fit or not", woodenthings.wordpress.com)', () => {
  it('with 1/16 in where 1/8 was wanted, 1/32 comes off each side', () => {
    expect(takeOff(1 / 16, 1 / 8)).toBe(1 / 32);
    expect(takeOff(1 / 4, 1 / 8)).toBe(0);
  });

  it('1/16 in of slack at 18 in deep allows 0.20 degrees, about 0.08 in on the diagonals of a box 16 wide', () => {
    const skew = mostSkew(0.0625, 18);
    expect((skew * 180) / Math.PI).toBeCloseTo(0.2, 2);
    expect(diagonalDifference({ width: 16, depth: 18 }, skew)).toBeCloseTo(0.08, 2);
    expect(diagonalDifference({ width: 16, depth: 18 }, skew)).toBeCloseTo(
      (2 * 16 * 18 * Math.sin(skew)) / Math.hypot(16, 18),
      4,
    );
  });
});

describe('a drawer cabinet under a layout (field cases "My new storage yard", ogrforum.com, and "Access from beneath", forum.trains.com)', () => {
  it('44 in of space holds a box of 41.5 between 3/4 panels and 1/2 slides', () => {
    expect(boxWidth(boxWidth(44, 0.75), 0.5)).toBe(41.5);
  });

  it('six drawers share 33.5 in at 5.58, or 31.5 at 5.25 when two inches are kept for wires', () => {
    expect(drawerPitch(35 - 1.5, 6)).toBeCloseTo(5.58, 2);
    expect(drawerPitch(33 - 1.5, 6)).toBe(5.25);
  });

  it('40 in inside between 3/4 sides is 41.5 outside, with nothing to spare; 1/2 sides leave half an inch', () => {
    const most = boxWidth(boxWidth(44, 0.75), 0.5);
    expect([most - (40 + 2 * 0.75), most - (40 + 2 * 0.5)]).toEqual([0, 0.5]);
  });

  it('seven tracks in a drawer of 24 lie 3.43 apart; a space 26 in deep takes slides of 650', () => {
    expect(drawerPitch(24, 7)).toBeCloseTo(3.43, 2);
    expect(longestSlide(26 * 25.4)).toBe(650);
  });

  it('of a depth of 26 in, a cabinet of 24 leaves 2 in for back, face and slide stop: slides of 600 fit it, 650 do not', () => {
    const left = boxWidth(26, 0) - 24;
    expect(left).toBe(2);
    expect(longestSlide(24 * 25.4)).toBe(600);
    expect(26 * 25.4 - (longestSlide(24 * 25.4) ?? 0)).toBeGreaterThan(left * 25.4);
  });

  it('track at 42 in over a cabinet of 36, a deck of 1/2 and motors of 3 1/2: 2 in for a hand, which is no room', () => {
    const room = handRoom({ top: 42, under: 36, deck: 0.5, hangs: 3.5 });
    expect(room).toBe(2);
    expect(room * 25.4).toBeLessThan(HAND);
  });

  it('the space of 35 in is measured to the frame: wires of 2 in leave 33 for the cabinet, none for a motor of 3 1/2 more', () => {
    expect(handRoom({ top: 35, under: 33, deck: 0, hangs: 2 })).toBe(0);
    expect(handRoom({ top: 35, under: 33, deck: 0, hangs: 3.5 })).toBeLessThan(0);
  });

  it('the demo bay takes slides of 500 at most', () => {
    expect([longestSlide(523.45), longestSlide(450), longestSlide(249)]).toEqual([500, 450, null]);
  });
});
