import { describe, expect, it } from 'vitest';
import { area, bounds } from '../../../src/core/geometry/polygon.ts';
import { placedBox, volume } from '../../../src/core/geometry/solid.ts';
import { bite } from '../../../src/core/stock/bite.ts';
import { partMass } from '../../../src/core/stock/mass.ts';
import { partOutline, type Shape } from '../../../src/core/stock/outline.ts';
import type { Feature } from '../../../src/core/stock/part.ts';
import { partSolid } from '../../../src/core/stock/solid.ts';

const BLANK = { length: 200, width: 100, thickness: 18, grain: 'length' } as const;
const HOME = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } as const;

function shape(...features: readonly Feature[]): Shape {
  return { blank: BLANK, features };
}

const patch = (x0: number, x1: number, y0: number, y1: number) => ({ x0, x1, y0, y1 });
/** Area and volume a part has, by its shape. */
const sizes = (...features: readonly Feature[]) => [
  area(partOutline(shape(...features))),
  volume(partSolid(shape(...features))),
];
/** What rounding off one square corner with radius r takes, as 6 chords of a quarter circle. */
const corner = (r: number) => r * r * (1 - 3 * Math.sin(Math.PI / 12));

describe('true shape and solid of each feature, by plane geometry', () => {
  it('a bare blank is its rectangle', () => {
    expect(sizes()).toEqual([20_000, 360_000]);
  });

  it('a trim takes an edge off', () => {
    expect(sizes({ id: 'a', kind: 'trim', edge: 'right', by: 3 })).toEqual([19_700, 354_600]);
    const left = placedBox(partSolid(shape({ id: 'a', kind: 'trim', edge: 'left', by: 3 })), HOME);
    expect([left.min[0], left.max[0]]).toEqual([3, 200]);
  });

  it('a notch goes through, a dado, rabbet or groove only as deep as it says', () => {
    expect(sizes({ id: 'a', kind: 'notch', edge: 'top', patch: patch(50, 68, 50, 100), corner: 0 })).toEqual([
      19_100, 343_800,
    ]);
    for (const kind of ['dado', 'rabbet', 'groove'] as const) {
      expect(sizes({ id: 'a', kind, side: 'face', patch: patch(0, 18, 0, 100), depth: 6, corner: 0 })).toEqual([
        20_000, 349_200,
      ]);
    }
  });

  it('takes a pocket from the side it is cut in', () => {
    const pocket = { id: 'a', kind: 'dado', patch: patch(0, 200, 40, 60), depth: 6, corner: 0 } as const;
    const heights = (side: 'face' | 'back') =>
      partSolid(shape({ ...pocket, side })).prisms.map(({ polygon, from, to }) => [from, to, area(polygon)]);
    expect(heights('face')).toEqual([
      [0, 12, 20_000],
      [12, 18, 8000],
      [12, 18, 8000],
    ]);
    expect(heights('back')).toEqual([
      [0, 6, 8000],
      [0, 6, 8000],
      [6, 18, 20_000],
    ]);
  });

  it('a bit leaves its radius in corners inside the part, none at its edges', () => {
    const open: Feature = { id: 'a', kind: 'opening', patch: patch(50, 150, 20, 80), corner: 10 };
    expect(sizes(open)[0]).toBeCloseTo(20_000 - 6000 + 4 * corner(10), 2);
    const stopped: Feature = {
      id: 'a',
      kind: 'stopped-dado',
      side: 'face',
      patch: patch(50, 68, 30, 100),
      depth: 6,
      corner: 5,
    };
    expect(sizes(stopped)[1]).toBeCloseTo(360_000 - 6 * (18 * 70 - 2 * corner(5)), 2);
  });

  it('a relief runs 0.2929 r past both walls of an inner corner, not of an open one', () => {
    const relieved: Feature = {
      id: 'a',
      kind: 'stopped-dado',
      side: 'face',
      patch: patch(50, 68, 30, 100),
      depth: 6,
      corner: 0,
      relief: 3.175,
    };
    const cut = bite(BLANK, relieved);
    const { low, high } = bounds(cut?.loops.flat() ?? []);
    expect(sizes(relieved)[0]).toBe(20_000);
    expect(cut?.loops).toHaveLength(3);
    expect([50 - low[0], 30 - low[1], high[0] - 68].map((mm) => mm / 3.175)).toEqual(
      [0.2929, 0.2929, 0.2929].map((r) => expect.closeTo(r, 4)),
    );
    expect(high[1]).toBe(100);
    expect(sizes(relieved)[1]).toBeLessThan(360_000 - 18 * 70 * 6);
  });

  it('holes go through or as deep as they say, counterbores widen them', () => {
    const disc = (d: number) => 12 * (d / 2) ** 2 * Math.sin(Math.PI / 12);
    expect(
      sizes({ id: 'a', kind: 'hole', at: [100, 50], diameter: 10, side: 'face', depth: 'through' })[0],
    ).toBeCloseTo(20_000 - disc(10), 2);
    expect(sizes({ id: 'a', kind: 'hole', at: [100, 50], diameter: 10, side: 'back', depth: 8 })[1]).toBeCloseTo(
      360_000 - 8 * disc(10),
      1,
    );
    const bored = sizes(
      { id: 'a', kind: 'hole', at: [100, 50], diameter: 10, side: 'face', depth: 'through' },
      { id: 'b', kind: 'counterbore', at: [100, 50], diameter: 20, side: 'face', depth: 5 },
    );
    expect(bored[1]).toBeCloseTo(360_000 - 13 * disc(10) - 5 * disc(20), 1);
  });

  it('a cut-out takes its outline, a rounded corner its corner', () => {
    expect(
      sizes({
        id: 'a',
        kind: 'cut-out',
        outline: [
          [10, 10],
          [40, 10],
          [10, 50],
        ],
      })[0],
    ).toBeCloseTo(19_400, 6);
    for (const name of ['left-bottom', 'right-bottom', 'right-top', 'left-top'] as const) {
      expect(sizes({ id: 'a', kind: 'rounded-corner', corner: name, radius: 20 })[0]).toBeCloseTo(
        20_000 - corner(20),
        2,
      );
    }
  });

  it('a taper takes the triangle outside its line, in shape and in solid', () => {
    const taper: Feature = { id: 'a', kind: 'taper', edge: 'top', from: [100, 100], to: [200, 60] };
    expect(sizes(taper)[0]).toBeCloseTo(18_000, 3);
    expect(sizes(taper)[1]).toBeCloseTo(324_000, 6);
    const turned: Feature = { ...taper, from: [200, 60], to: [100, 100] };
    expect(sizes(turned)[1]).toBeCloseTo(324_000, 6);
  });

  it('a mitre takes a wedge and keeps the long side full', () => {
    const mitre: Feature = { id: 'a', kind: 'mitre', edge: 'right', angle: Math.PI / 4, long: 'face' };
    expect(sizes(mitre)[0]).toBe(20_000);
    expect(sizes(mitre)[1]).toBeCloseTo(360_000 - (18 * 18 * 100) / 2, 6);
    const both = sizes(mitre, { ...mitre, id: 'b', edge: 'left', long: 'back' });
    expect(both[1]).toBeCloseTo(360_000 - 18 * 18 * 100, 6);
    expect(sizes({ id: 'a', kind: 'mitre', edge: 'top', angle: Math.PI / 2, long: 'back' })[1]).toBeCloseTo(360_000, 6);
  });

  it('a mitre of 45 degrees in 18 mm leaves a face of 25.46 (t sqrt 2)', () => {
    const { cuts } = partSolid(shape({ id: 'a', kind: 'mitre', edge: 'right', angle: Math.PI / 4, long: 'face' }));
    const [cut] = cuts;
    const x = (z: number) => ((cut?.offset ?? 0) - (cut?.normal[2] ?? 0) * z) / (cut?.normal[0] ?? 1);
    expect([x(18), x(0)].map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([200, 182]);
    expect(Math.hypot(x(18) - x(0), 18)).toBeCloseTo(25.456, 3);
  });

  it('a roundover is left square in the solid', () => {
    expect(sizes({ id: 'a', kind: 'roundover', edge: 'top', side: 'face', radius: 3 })).toEqual([20_000, 360_000]);
  });

  it('features that leave nothing leave an empty shape, and the larger piece counts of two', () => {
    expect(partOutline(shape({ id: 'a', kind: 'trim', edge: 'top', by: 100 }))).toEqual({ outline: [], holes: [] });
    expect(sizes({ id: 'a', kind: 'notch', edge: 'top', patch: patch(40, 60, 0, 100), corner: 0 })[0]).toBe(14_000);
  });

  it('weighs what its volume weighs', () => {
    expect(partMass(shape(), 700)).toBeCloseTo(0.252, 12);
  });
});
