import { describe, expect, it } from 'vitest';
import { rectangle } from '../../../src/core/geometry/polygon.ts';
import { standing, toWorld, within } from '../../../src/core/geometry/pose.ts';
import type { Pose, Vector } from '../../../src/core/geometry/shapes.ts';
import { placedBox, volume } from '../../../src/core/geometry/solid.ts';

const close = (vector: Vector) => vector.map((mm) => expect.closeTo(mm, 9));

describe('poses', () => {
  const upright: Pose = { origin: [10, 20, 30], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] };

  it('brings a point of a part into its bench', () => {
    expect(toWorld(upright, [1, 2, 3])).toEqual([13, 21, 32]);
  });

  it('a bench turned a quarter counter-clockwise points its length along y', () => {
    const bench = standing([100, 200], Math.PI / 2);
    expect(toWorld(bench, [1600, 0, 700])).toEqual(close([100, 1800, 700]));
    expect(toWorld(bench, [0, 1100, 0])).toEqual(close([-1000, 200, 0]));
  });

  it('one pose within another is one after the other', () => {
    const bench = standing([100, 200], 0.3);
    const both = toWorld(within(bench, upright), [1, 2, 3]);
    expect(both).toEqual(close(toWorld(bench, toWorld(upright, [1, 2, 3]))));
  });

  it('keeps volume and moves the box', () => {
    const solid = {
      prisms: [{ polygon: { outline: rectangle([0, 0], [5, 4]), holes: [] }, from: 0, to: 3 }],
      cuts: [],
    };
    expect(volume(solid)).toBe(60);
    expect(placedBox(solid, upright)).toEqual({ min: [10, 20, 30], max: [13, 25, 34] });
  });

  it('a cube cut by a corner plane keeps five sixths', () => {
    const cube = { polygon: { outline: rectangle([0, 0], [1, 1]), holes: [] }, from: 0, to: 1 };
    const third = 1 / Math.sqrt(3);
    expect(volume({ prisms: [cube], cuts: [{ normal: [third, third, third], offset: 2 * third }] })).toBeCloseTo(
      5 / 6,
      12,
    );
  });
});
