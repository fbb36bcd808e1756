import { expect, test } from 'vitest';
import { area } from '../../../src/core/geometry/polygon.ts';
import { contourLength, contours } from '../../../src/core/scenery/contour.ts';
import { heightField } from '../../../src/core/scenery/field.ts';
import { sampled, usualStep } from '../../../src/core/scenery/grid.ts';
import type { Hill, Path } from '../../../src/core/scenery/land.ts';
import { wholeGrid } from '../../../src/core/scenery/mask.ts';
import { regionAbove } from '../../../src/core/scenery/region.ts';
import { groundVolume, slopeRatio } from '../../../src/core/scenery/volume.ts';

const cone: Hill = { kind: 'hill', id: 'c', form: 'cone', top: [200, 150], height: 90, footRadius: 120 };
const dome: Hill = { ...cone, form: 'dome' };
const bare = { forms: [], spots: [], spotReach: 300, paths: [] };
const domain = { low: [0, 0], high: [400, 300] } as const;
const gridOf = (hill: Hill, step: number) => sampled(heightField({ ...bare, forms: [hill] }), domain, step);

test('a spot is honoured exactly and fades out at its reach', () => {
  const spots = [
    { x: 100, y: 40, height: 33, at: '' },
    { x: 220, y: 150, height: 70, at: '' },
  ];
  const field = heightField({ ...bare, forms: [dome], spots, spotReach: 100 });
  const plain = heightField({ ...bare, forms: [dome] });
  for (const spot of spots) expect(field(spot.x, spot.y)).toBeCloseTo(spot.height, 9);
  expect(field(360, 290)).toBe(plain(360, 290));
  expect(field(100.001, 40)).toBeCloseTo(33, 1);
});

test('a line cuts through a hill and is carried over low ground', () => {
  const path: Path = {
    id: 'main',
    points: [
      { at: 0, x: 0, y: 150, z: 30 },
      { at: 400, x: 400, y: 150, z: 30 },
    ],
    half: 10,
    slope: 2 / 3,
    free: [],
  };
  const field = heightField({ ...bare, forms: [cone], paths: [path] });
  expect(field(200, 150)).toBe(30);
  expect(field(200, 160)).toBe(30);
  expect(field(200, 175)).toBeCloseTo(40, 9); // 15 mm beyond the level width at 1:1.5
  expect(field(20, 175)).toBeCloseTo(20, 9);
  const tunnel = heightField({ ...bare, forms: [cone], paths: [{ ...path, free: [[150, 250]] }] });
  expect(tunnel(200, 150)).toBe(90);
  expect(tunnel(60, 150)).toBe(30);
});

test('lines of a plane are straight, at every slant', () => {
  for (const [a, b] of [
    [1, 0],
    [0, 1],
    [0.3, 0.7],
    [-0.4, 0.9],
  ] as const) {
    const grid = sampled((x, y) => a * x + b * y, { low: [0, 0], high: [70, 50] }, 7);
    const found = contours(grid, 20);
    expect(found).toHaveLength(1);
    for (const [x, y] of found.flatMap(({ points }) => points)) expect(a * x + b * y).toBeCloseTo(20, 9);
  }
});

test('the line of a cone is a circle whose length and area converge at second order', () => {
  const radius = 120 * (1 - 40 / 90);
  const errors = [8, 4, 2].map((step) => {
    const [ring] = contours(gridOf(cone, step), 40);
    const [region] = regionAbove(gridOf(cone, step), 40);
    const long = ring === undefined ? 0 : contourLength(ring);
    return [
      Math.abs(long - 2 * Math.PI * radius),
      Math.abs((region === undefined ? 0 : area(region)) - Math.PI * radius ** 2),
    ] as const;
  });
  const [first, second, third] = errors;
  for (const i of [0, 1] as const) {
    expect((first?.[i] ?? 0) / (second?.[i] ?? 1)).toBeGreaterThan(3);
    expect((second?.[i] ?? 0) / (third?.[i] ?? 1)).toBeGreaterThan(3);
  }
});

test('volumes of a cone and a dome converge on thirds and halves of their cylinder', () => {
  const cylinder = Math.PI * 120 ** 2 * 90;
  for (const [hill, share] of [
    [cone, 1 / 3],
    [dome, 1 / 2],
  ] as const) {
    const off = [8, 4, 2].map((step) => Math.abs(groundVolume(gridOf(hill, step)) / (cylinder * share) - 1));
    expect(off[2]).toBeLessThan(5e-4);
    expect(off[2]).toBeLessThan((off[0] ?? 0) / 6);
  }
});

test('a sloping plane has the surface that its slope gives', () => {
  const grid = sampled((x, y) => 100 + 0.75 * x + 0.2 * y, domain, 10);
  expect(slopeRatio(grid, wholeGrid(grid))).toBeCloseTo(Math.hypot(1, 0.75, 0.2), 12);
});

test('a saddle is joined when its middle is as high as the level, else parted', () => {
  const saddle = (high: number, low: number) => ({
    ...{ x0: 0, y0: 0, dx: 1, dy: 1, nx: 2, ny: 2 },
    values: Float64Array.from([high, low, low, high]),
  });
  const joined = regionAbove(saddle(10, 2), 5);
  expect(joined).toHaveLength(1);
  expect(area(joined[0] ?? { outline: [], holes: [] })).toBeCloseTo(1 - 2 * (0.5 * 0.375 ** 2), 12);
  const parted = regionAbove(saddle(10, -10), 5);
  expect(parted).toHaveLength(2);
  for (const piece of parted) expect(area(piece)).toBeCloseTo(0.5 * 0.25 ** 2, 12);
});

test('a region keeps its holes and closes along the border', () => {
  const ring = sampled((x, y) => 10 - Math.abs(Math.hypot(x - 50, y - 50) - 30), { low: [0, 0], high: [100, 100] }, 2);
  const [region, ...others] = regionAbove(ring, 0);
  expect(others).toHaveLength(0);
  expect(region?.holes).toHaveLength(1);
  expect(area(region ?? { outline: [], holes: [] }) / (Math.PI * (40 ** 2 - 20 ** 2))).toBeCloseTo(1, 2);
  const all = regionAbove(
    sampled(() => 3, domain, 50),
    1,
  );
  expect(all.map(area)).toEqual([120000]);
});

test('the usual spacing gives about 400 nodes along the longer side', () => {
  expect(usualStep({ low: [0, 0], high: [1600, 1100] })).toBe(4);
});
