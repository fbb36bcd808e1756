import fc from 'fast-check';
import { type Body, body, type Link } from '../../src/core/assembly/body.ts';
import type { Vector } from '../../src/core/geometry/shapes.ts';
import { type Block, block, linked } from '../core/assembly/puzzle.ts';

const AXES: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** Boxes put together one after the other, each cutting its way into what stands: an order exists by construction. */
export type BuiltFrame = { readonly bodies: readonly Body[]; readonly links: readonly Link[] };

type Step = {
  readonly axis: 0 | 1 | 2;
  readonly way: 1 | -1;
  readonly size: Vector;
  readonly at: Vector;
  readonly deep: number;
};

const whole = (min: number, max: number) => fc.integer({ min, max });
const step: fc.Arbitrary<Step> = fc.record({
  axis: fc.constantFrom(0, 1, 2),
  way: fc.constantFrom(1, -1),
  size: fc.tuple(whole(1, 9), whole(1, 9), whole(1, 9)),
  at: fc.tuple(whole(0, 100), whole(0, 100), whole(0, 100)),
  deep: whole(0, 4),
});

export const builtFrame: fc.Arbitrary<BuiltFrame> = fc.array(step, { minLength: 3, maxLength: 14 }).map(frameOf);

type Made = { readonly id: string; readonly blocks: readonly Block[] };

function frameOf(steps: readonly Step[]): BuiltFrame {
  const made: Made[] = [];
  const pairs: (readonly [string, string])[] = [];
  steps.forEach((one, i) => {
    const box = landed(one, made);
    const way = swept(box, one);
    const id = `p${i}`;
    made.forEach((other, k) => {
      const left = other.blocks.flatMap((old) => cut(old, way));
      if (touches(other.blocks, box)) pairs.push([other.id, id]);
      made[k] = { ...other, blocks: left };
    });
    made.push({ id, blocks: [box] });
  });
  const kept = made.filter(({ blocks }) => blocks.length > 0);
  return { bodies: kept.map(({ id, blocks }) => body(id, blocks.map(block), AXES)), links: linked(...pairs) };
}

/** Where a box that comes along its way ends: `deep` into the first thing it meets. */
function landed({ axis, way, size, at, deep }: Step, made: readonly Made[]): Block {
  const all = made.flatMap(({ blocks }) => blocks);
  const low: [number, number, number] = [at[0] % 16, at[1] % 16, at[2] % 16];
  const across = ([a, b]: Block) =>
    ([0, 1, 2] as const).every((k) => k === axis || (a[k] < low[k] + size[k] && low[k] < b[k]));
  const met = all.filter(across);
  if (met.length > 0) {
    low[axis] =
      way > 0
        ? Math.min(...met.map(([a]) => a[axis])) - size[axis] + deep
        : Math.max(...met.map(([, b]) => b[axis])) - deep;
  }
  return [low, [low[0] + size[0], low[1] + size[1], low[2] + size[2]]];
}

/** The box and all the room it came through. */
function swept([low, high]: Block, { axis, way }: Step): Block {
  const from: [number, number, number] = [...low];
  const to: [number, number, number] = [...high];
  if (way > 0) from[axis] = -1000;
  else to[axis] = 1000;
  return [from, to];
}

/** What is left of a block outside another: up to six blocks. */
function cut([low, high]: Block, [from, to]: Block): readonly Block[] {
  if (([0, 1, 2] as const).some((k) => high[k] <= from[k] || to[k] <= low[k])) return [[low, high]];
  const left: Block[] = [];
  const a: [number, number, number] = [...low];
  const b: [number, number, number] = [...high];
  for (const k of [0, 1, 2] as const) {
    if (a[k] < from[k]) {
      const end: [number, number, number] = [...b];
      end[k] = from[k];
      left.push([[...a], end]);
      a[k] = from[k];
    }
    if (b[k] > to[k]) {
      const start: [number, number, number] = [...a];
      start[k] = to[k];
      left.push([start, [...b]]);
      b[k] = to[k];
    }
  }
  return left;
}

function touches(blocks: readonly Block[], [low, high]: Block): boolean {
  return blocks.some(([a, b]) => ([0, 1, 2] as const).every((k) => a[k] <= high[k] && low[k] <= b[k]));
}

/** A ring of pieces, each pinned into the next along a positive axis: nothing can leave, any one left out frees the rest. */
export type Ring = { readonly bodies: readonly Body[]; readonly links: readonly Link[] };

export const pinnedRing: fc.Arbitrary<Ring> = fc
  .array(fc.constantFrom(0, 1, 2), { minLength: 2, maxLength: 6 })
  .map((axes) => {
    const blocks = axes.map((_, i) => {
      const before = axes.length - 1;
      const from = i === 0 ? before : i - 1;
      return [pin(place(i)), ...socket(place(from), axes[from] ?? 0)];
    });
    const bodies = blocks.map((own, i) => body(`k${i}`, own.map(block), AXES));
    const links = linked(...bodies.map((one, i) => [one.id, `k${(i + 1) % bodies.length}`] as const));
    return { bodies, links };
  });

/** Places no two of which lie in line along any axis. */
function place(i: number): Vector {
  return [200 + 10 * i, 300 + 14 * i, 400 + 18 * i];
}

function pin([x, y, z]: Vector): Block {
  return [
    [x, y, z],
    [x + 2, y + 2, z + 2],
  ];
}

/** Walls round a pin on every side but the one it comes from. */
function socket(at: Vector, open: 0 | 1 | 2): readonly Block[] {
  return ([0, 1, 2] as const).flatMap((axis) =>
    ([-2, 2] as const).flatMap((by): readonly Block[] => {
      if (axis === open && by < 0) return [];
      const low: [number, number, number] = [...at];
      low[axis] += by;
      return [pin(low)];
    }),
  );
}
