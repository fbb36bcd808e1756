import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { knotOf } from '../../src/core/assembly/knot.ts';
import { orderOf } from '../../src/core/assembly/order.ts';
import { overlapsOf } from '../../src/core/assembly/overlaps.ts';
import { scene } from '../../src/core/assembly/scene.ts';
import { UPRIGHT } from '../core/assembly/puzzle.ts';
import { type BuiltFrame, builtFrame, pinnedRing } from './built-frames.ts';

const frames = fc.sample(builtFrame, { numRuns: 500, seed: 20261126 }).filter(({ bodies }) => bodies.length > 1);
const knots = fc.sample(fc.tuple(builtFrame, pinnedRing), { numRuns: 200, seed: 20261127 });

function locked({ bodies, links }: BuiltFrame) {
  const at = scene(bodies, links);
  return orderOf(at, UPRIGHT).locked.map((members) => knotOf(at, members, UPRIGHT).bodies);
}

describe('an order of assembly', () => {
  it('is found for every frame that was put together piece by piece', () => {
    console.info(`frames of at least two pieces: ${frames.length} of 500`);
    expect(frames.length).toBeGreaterThanOrEqual(350);
    expect(frames.filter(({ bodies }) => overlapsOf(bodies).length > 0)).toEqual([]);
    expect(frames.map((frame) => locked(frame).length).filter((knots) => knots > 0)).toEqual([]);
  });

  it('holds every piece exactly once', () => {
    for (const { bodies, links } of frames.slice(0, 100)) {
      const { moves } = orderOf(scene(bodies, links), UPRIGHT);
      const alone = moves.filter((move) => move.bodies.length === 1).flatMap((move) => move.bodies);
      expect([...alone].sort()).toEqual(bodies.map(({ id }) => id).sort());
    }
  });

  it('is denied with exactly the pieces of a ring that was planted, whatever stands round it', () => {
    for (const [frame, ring] of knots) {
      const both = { bodies: [...frame.bodies, ...ring.bodies], links: [...frame.links, ...ring.links] };
      expect(locked(both)).toEqual([ring.bodies.map(({ id }) => id)]);
    }
  });

  it('comes back once any piece of the ring is left out: the fault that shows the law can fail', () => {
    for (const [frame, ring] of knots.slice(0, 50)) {
      const open = ring.bodies.slice(1);
      const both = { bodies: [...frame.bodies, ...open], links: [...frame.links, ...ring.links] };
      expect(locked(both)).toEqual([]);
    }
  });
});
