import { describe, expect, it } from 'vitest';
import { bodiesOf } from '../../../src/core/assembly/bodies.ts';
import type { Convex } from '../../../src/core/geometry/convex.ts';
import { area, bounds, holds } from '../../../src/core/geometry/polygon.ts';
import type { Point, Vector } from '../../../src/core/geometry/shapes.ts';
import { cross, dot, minus, plus, times, unit } from '../../../src/core/geometry/vector.ts';
import { flat, RIGHT, TOWARD, UP } from '../../../src/drawing/isometric/gaze.ts';
import { type Seen, type Shown, seenJoined, seenOf, surfaced } from '../../../src/drawing/isometric/hidden.ts';
import { hiddenEdges, silhouette } from '../../../src/drawing/isometric/hidden-edges.ts';
import { type Block, pieceOf } from '../../core/assembly/puzzle.ts';
import { model, table } from '../../core/benchwork/example.ts';

/** How near the reader a line of sight first meets a convex piece, by clipping it with the planes of its faces; or null. */
function nearest(piece: Convex, [x, y]: Point): number | null {
  const origin = plus(times(RIGHT, x), times(UP, y));
  const middle = times(piece.corners.reduce(plus), 1 / piece.corners.length);
  let from = Number.NEGATIVE_INFINITY;
  let to = Number.POSITIVE_INFINITY;
  for (const [a, b, c] of piece.faces) {
    if (a === undefined || b === undefined || c === undefined) continue;
    const found = unit(cross(minus(b, a), minus(c, b)));
    if (found === null) continue;
    const normal = dot(found, minus(a, middle)) > 0 ? found : times(found, -1);
    const [speed, gap] = [dot(normal, TOWARD), dot(normal, minus(a, origin))];
    if (Math.abs(speed) < 1e-12) {
      if (gap < 0) return null;
    } else if (speed > 0) to = Math.min(to, gap / speed);
    else from = Math.max(from, gap / speed);
  }
  return from < to ? to : null;
}

function frontmost(shown: readonly Shown[], at: Point): { readonly id: string; readonly near: number } | null {
  return shown
    .flatMap(({ id, pieces }) => pieces.flatMap((piece) => ({ id, near: nearest(piece, at) })))
    .reduce<{ id: string; near: number } | null>(
      (best, { id, near }) => (near !== null && (best === null || near > best.near) ? { id, near } : best),
      null,
    );
}

/** How near the plane of a seen face is at a place of the picture. */
function depthOf({ face }: Seen, [x, y]: Point): number {
  const origin = plus(times(RIGHT, x), times(UP, y));
  return (face.offset - dot(face.normal, origin)) / dot(face.normal, TOWARD);
}

/** Places that show the wrong thing: what is drawn there is not the nearest, or nothing is drawn where something is. */
function wrong(
  shown: readonly Shown[],
  seen: readonly Seen[],
  step: number,
): { readonly at: number; readonly wrong: readonly string[] } {
  const { low, high } = bounds(shown.flatMap(({ pieces }) => pieces.flatMap(({ corners }) => corners.map(flat))));
  const faults: string[] = [];
  let samples = 0;
  for (let x = low[0] + step / 3; x < high[0]; x += step) {
    for (let y = low[1] + step / 7; y < high[1]; y += step) {
      const at: Point = [x, y];
      const drawn = seen.filter((one) => holds(one.area, at));
      const near = [at, ...nudged(at)].map((place) => frontmost(shown, place)?.id ?? null);
      if (new Set(near).size > 1) continue;
      samples += 1;
      const front = frontmost(shown, at);
      const [only, ...more] = drawn;
      if (
        front === null
          ? drawn.length > 0
          : only === undefined ||
            more.length > 0 ||
            only.id !== front.id ||
            Math.abs(depthOf(only, at) - front.near) > 0.05
      )
        faults.push(
          `${x.toFixed(1)}, ${y.toFixed(1)}: ${front?.id ?? 'nothing'}, drawn ${drawn.map(({ id }) => id).join(' ')}`,
        );
    }
  }
  return { at: samples, wrong: faults };
}

/** Beside a place by a hundredth of a millimetre: where these differ, the place is on an edge. */
function nudged([x, y]: Point): readonly Point[] {
  return [
    [x + 0.01, y],
    [x - 0.01, y],
    [x, y + 0.01],
    [x, y - 0.01],
  ];
}

const bar = (id: string, blocks: readonly Block[]): Shown => surfaced(pieceOf(id, blocks));
const box = (low: Vector, high: Vector): Block => [low, high];

describe('what is seen', () => {
  it('is everywhere the nearest, on the demo table without its deck: interlocked laps and dados', () => {
    const parts = model(table([17.7])).parts.filter(({ role }) => role !== 'deck');
    const shown = bodiesOf(parts).map(surfaced);
    const checked = wrong(shown, seenOf(shown), 13.7);
    expect(checked.at).toBeGreaterThan(8000);
    expect(checked.wrong).toEqual([]);
  });

  it('is everywhere the nearest when the pieces join one after the other, as from step to step', () => {
    const parts = model(table([17.7])).parts.filter(({ role }) => role !== 'deck');
    const shown = bodiesOf(parts).map(surfaced);
    const seen = shown.reduce<readonly Seen[]>((before, one, i) => seenJoined(before, shown.slice(0, i), [one]), []);
    expect(wrong(shown, seen, 37).wrong).toEqual([]);
    const forgetful = shown.flatMap((one, i) => seenJoined([], shown.slice(0, i), [one]));
    expect(wrong(shown, forgetful, 61).wrong.length).toBeGreaterThan(10);
  });

  it('is everywhere the nearest on three bars, each in front of the next one’s end', () => {
    const shown = [
      bar('x', [box([0, 0, 0], [100, 10, 10])]),
      bar('y', [box([90, -100, 10], [100, 10, 20])]),
      bar('z', [box([80, -100, -60], [90, -90, 60])]),
    ];
    expect(wrong(shown, seenOf(shown), 1.3).wrong).toEqual([]);
  });

  it('shows no line between pieces of one body', () => {
    const halves = bar('bar', [box([0, 0, 0], [50, 10, 10]), box([50, 0, 0], [100, 10, 10])]);
    const whole = bar('bar', [box([0, 0, 0], [100, 10, 10])]);
    expect(seenOf([halves])).toHaveLength(3);
    const sum = (seen: readonly Seen[]) => seen.reduce((total, one) => total + area(one.area), 0);
    expect(sum(seenOf([halves]))).toBeCloseTo(sum(seenOf([whole])), 6);
  });

  it('would be told wrong if a hidden face were drawn: the fault that shows the check can fail', () => {
    const shown = [bar('low', [box([0, 0, 0], [50, 50, 10])]), bar('high', [box([0, 0, 30], [50, 50, 40])])];
    const each = shown.flatMap((one) => seenOf([one]));
    expect(wrong(shown, each, 3.1).wrong.length).toBeGreaterThan(10);
    expect(wrong(shown, seenOf(shown), 3.1).wrong).toEqual([]);
  });
});

/** Length of edges in the picture, mm. */
function longAll(edges: readonly (readonly [Point, Point])[]): number {
  return edges.reduce((sum, [[ax, ay], [bx, by]]) => sum + Math.hypot(bx - ax, by - ay), 0);
}

describe('the covered outline of a piece', () => {
  // an isometric cube of 10 looks like a hexagon with sides of 10 times the root of 2/3 (ISO 5456-3)
  const side = 10 * Math.sqrt(2 / 3);
  const cube = bar('cube', [box([0, 0, 0], [10, 10, 10])]);
  const wall = bar('wall', [box([-100, -30, -100], [200, -20, 200])]);
  const own = (seen: readonly Seen[]) => seen.filter(({ id }) => id === 'cube');

  it('is its whole hexagon behind a wall and nothing in the open', () => {
    expect(longAll(hiddenEdges(cube, own(seenOf([cube, wall]))))).toBeCloseTo(6 * side, 1);
    expect(longAll(hiddenEdges(cube, own(seenOf([cube]))))).toBe(0);
    expect(silhouette(cube).reduce((sum, one) => sum + area(one), 0)).toBeCloseTo(100 * Math.sqrt(3), 1);
  });

  it('is no edge of what covers half of it', () => {
    // a board over the right half of the cube's front face: it hides parts of edges, and its own edge is not the cube's
    const board = bar('board', [box([5, -1, -5], [40, 0, 40])]);
    const edges = hiddenEdges(cube, own(seenOf([cube, board])));
    const all = longAll(edges);
    expect(all).toBeGreaterThan(side);
    expect(all).toBeLessThan(6 * side);
    const shown = [cube, board];
    for (const [[ax, ay], [bx, by]] of edges) {
      const [x, y] = [(ax + bx) / 2, (ay + by) / 2];
      // from the middle of a dashed edge towards the cube's middle another piece is in front
      const [mx, my] = flat([5, 5, 5]);
      const inside: Point = [x + (mx - x) * 0.01, y + (my - y) * 0.01];
      expect(nearest(cube.pieces[0] ?? expect.fail('no piece'), inside)).not.toBeNull();
      expect(frontmost(shown, inside)?.id).toBe('board');
    }
  });
});
