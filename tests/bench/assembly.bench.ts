import { expect, test } from 'vitest';
import { bodiesOf } from '../../src/core/assembly/bodies.ts';
import { orderOf } from '../../src/core/assembly/order.ts';
import { scene } from '../../src/core/assembly/scene.ts';
import { model, table } from '../core/benchwork/example.ts';

/** Frames of 15, 30, 60 and 120 parts: along struts, across struts, and four rails. */
const FRAMES = [
  [15, 3, 8],
  [30, 6, 20],
  [60, 12, 44],
  [120, 56, 60],
] as const;

function timed(along: number, across: number): { readonly parts: number; readonly ms: number } {
  const bench = {
    struts: { along: { kind: 'even', count: along }, across: { kind: 'even', count: across } },
    flangeStrips: null,
    deck: null,
  } as const;
  const built = model(table([17.7], { length: 9000, width: 4000 }, bench));
  const bodies = bodiesOf(built.parts);
  const runs = Array.from({ length: 7 }, () => {
    const start = performance.now();
    const order = orderOf(scene(bodies, built.joints), { up: [0, 0, 1], tilts: new Set() });
    expect(order.locked).toEqual([]);
    return performance.now() - start;
  });
  return { parts: bodies.length, ms: Math.min(...runs) };
}

test('an order for frames of growing size; the growth from one to the next is the figure to watch', () => {
  timed(3, 8);
  let before: number | null = null;
  for (const [, along, across] of FRAMES) {
    const { parts, ms } = timed(along, across);
    console.info(`${parts} parts: ${ms.toFixed(1)} ms${before === null ? '' : `, ${(ms / before).toFixed(1)} times`}`);
    before = ms;
  }
});
