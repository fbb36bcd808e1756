import { describe, expect, it } from 'vitest';
import { convexPieces, shifted } from '../../../src/core/geometry/convex.ts';
import { rectangle } from '../../../src/core/geometry/polygon.ts';
import type { Pose, Solid } from '../../../src/core/geometry/shapes.ts';
import { volume } from '../../../src/core/geometry/solid.ts';

const HOME: Pose = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
const board = { polygon: { outline: rectangle([0, 0], [100, 40]), holes: [] }, from: 0, to: 20 };

describe('convex pieces of a solid', () => {
  it('are one square box for a board, and stand where its pose puts them', () => {
    const [piece, ...more] = convexPieces(
      { prisms: [board], cuts: [] },
      { origin: [10, 20, 30], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] },
    );
    expect(more).toEqual([]);
    expect(piece?.square).toBe(true);
    expect(piece?.box).toEqual({ min: [10, 20, 30], max: [30, 120, 70] });
    expect(piece?.faces).toHaveLength(6);
  });

  it('of a board mitred at 45 degrees are a wedge: half the thickness squared is gone (plane geometry)', () => {
    const half = Math.SQRT1_2;
    const mitred: Solid = { prisms: [board], cuts: [{ normal: [half, 0, half], offset: 100 * half }] };
    const [piece] = convexPieces(mitred, HOME);
    expect(piece?.square).toBe(false);
    expect(piece?.normals).toHaveLength(4);
    expect(volume(mitred)).toBeCloseTo(100 * 40 * 20 - (20 * 20 * 40) / 2, 6);
  });

  it('vanish when a cut leaves nothing', () => {
    expect(convexPieces({ prisms: [board], cuts: [{ normal: [1, 0, 0], offset: -1 }] }, HOME)).toEqual([]);
  });

  it('are moved with corners, faces and box alike', () => {
    const [piece] = convexPieces({ prisms: [board], cuts: [] }, HOME);
    const moved = piece === undefined ? undefined : shifted(piece, [1, 2, 3]);
    expect(moved?.box).toEqual({ min: [1, 2, 3], max: [101, 42, 23] });
    expect(moved?.faces.flat()).toEqual(moved?.corners);
  });
});
