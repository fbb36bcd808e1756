import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Element } from '../../src/core/track/element.ts';
import { curvatureOn, stanceOn } from '../../src/core/track/element.ts';
import { layTrack } from '../../src/core/track/lay.ts';
import { layOutLines } from '../../src/core/track/layout.ts';
import { type LineWay, stanceAlong } from '../../src/core/track/line.ts';
import { heightAt, profileOf, slopeAt } from '../../src/core/track/profile.ts';
import { moved, reversedWay, turnAfter, type Way, wayLength, wayMove } from '../../src/core/track/stretch.ts';
import { curve, from, line, straight, track } from '../core/track/example.ts';
import { endOf, type Hidden, randomChain } from './random-line.ts';

const RUNS = 150;
const chains = fc.sample(randomChain, { numRuns: RUNS, seed: 20261125 });

function laid(chain: Hidden): LineWay {
  const { heading, x, y } = chain.start;
  const degrees = (heading * 180) / Math.PI;
  const [one] = layOutLines(track([line('one', chain.pieces, { from: from(x, y, degrees) })])).lines;
  if (one === undefined) throw new Error('not laid');
  return one;
}

const lines = chains.map(laid);
const wayOf = ({ elements }: LineWay): Way => elements.map(({ stretch }) => stretch);

/** Ovals of random straights and radii, eased; each closes by its second radius and back straight. */
const ovals = fc
  .sample(
    fc.record({
      radius: fc.integer({ min: 250, max: 600 }),
      long: fc.integer({ min: 100, max: 900 }),
      easement: fc.integer({ min: 0, max: 120 }),
      hand: fc.constantFrom('left' as const, 'right' as const),
      first: fc.integer({ min: 60, max: 300 }),
    }),
    { numRuns: RUNS, seed: 11 },
  )
  .map(({ radius, long, easement, hand, first }) =>
    layOutLines(
      track([
        line(
          'ring',
          [
            straight(long),
            curve(hand, radius, first, { easement: Math.min(easement, radius * 0.5) }),
            straight('to close'),
            curve(hand, 'to close', 360 - first, { easement }),
          ],
          { ends: 'ring.start' },
        ),
      ]),
    ),
  );

describe('laws of lines', () => {
  const turnOf = ({ elements }: Pick<LineWay, 'elements'>) =>
    elements.reduce((sum, { stretch }) => sum + turnAfter(stretch, stretch.length), 0);
  const fullTurn = (line: Pick<LineWay, 'elements'>) => Math.abs(Math.abs(turnOf(line)) - 2 * Math.PI) < 1e-9;

  it('a closed line turns through one full turn', () => {
    const closed = ovals.filter(
      ({ faults, closings }) =>
        faults.length === 0 &&
        closings.every(
          ({ closing }) => closing.short.length === 0 && Math.hypot(closing.miss.along, closing.miss.across) < 1e-6,
        ),
    );
    console.log(`ovals that close: ${closed.length} of ${RUNS}`);
    expect(closed.length / RUNS).toBeGreaterThanOrEqual(0.7);
    expect(closed.flatMap(({ lines: [ring] }) => (ring !== undefined && fullTurn(ring) ? [] : [ring]))).toEqual([]);
    // planted: the last easement is forgotten
    expect(
      closed.filter(
        ({ lines: [ring] }) =>
          ring !== undefined &&
          ring.elements.at(-1)?.kind === 'easement' &&
          fullTurn({ elements: ring.elements.slice(0, -1) }),
      ),
    ).toEqual([]);
  });

  it('each element starts where the one before it ends', () => {
    const breaches = (all: readonly LineWay[]) =>
      all.flatMap(({ elements }) =>
        elements.slice(1).filter((element, i) => {
          const before = elements[i];
          if (before === undefined) return true;
          const end = stanceOn(before, before.length);
          const start = stanceOn(element, 0);
          return Math.hypot(end.x - start.x, end.y - start.y) > 1e-9 || Math.abs(end.heading - start.heading) > 1e-12;
        }),
      );
    expect(breaches(lines)).toEqual([]);
    const shifted = lines.slice(0, 20).map((one) => ({
      ...one,
      elements: one.elements.map((element, i) =>
        i === 1 ? { ...element, base: { ...element.base, x: element.base.x + 1e-3 } } : element,
      ),
    }));
    expect(breaches(shifted).length).toBeGreaterThan(0);
  });

  it('curvature never jumps inside an eased curve', () => {
    const jumps = (elements: readonly Element[]) =>
      elements.slice(1).filter((element, i) => {
        const before = elements[i];
        if (before === undefined || before.piece !== element.piece) return false;
        return Math.abs(curvatureOn(before, before.length) - curvatureOn(element, 0)) > 1e-12;
      });
    const eased = lines.map(({ elements }) => elements);
    expect(eased.flatMap(jumps)).toEqual([]);
    const blunt = eased.map((elements) =>
      elements.map((element) =>
        element.kind === 'easement'
          ? { ...element, stretch: { ...element.stretch, k1: element.stretch.k1 * 0.9, k0: element.stretch.k0 * 0.9 } }
          : element,
      ),
    );
    expect(blunt.flatMap(jumps).length).toBeGreaterThan(0);
  });

  it('run the other way a line is as long, and comes back to its start', () => {
    const breaches = (turn: (way: Way) => Way) =>
      lines.filter((one) => {
        const back = turn(wayOf(one));
        const end = moved({ ...one.end, heading: one.end.heading + Math.PI }, wayMove(back));
        return (
          Math.abs(wayLength(back) - one.length) > 1e-9 || Math.hypot(end.x - one.start.x, end.y - one.start.y) > 1e-8
        );
      });
    expect(breaches(reversedWay)).toEqual([]);
    // planted: curvatures keep their sign
    expect(breaches((way) => [...way].reverse()).length).toBeGreaterThan(0);
  });

  it('a line moved and turned is the same line', () => {
    const breaches = lines.filter((one, i) => {
      const chain = chains[i];
      if (chain === undefined) return true;
      const other = endOf({ pieces: chain.pieces, start: { x: 0, y: 0, heading: 0 } });
      const [c, s] = [Math.cos(chain.start.heading), Math.sin(chain.start.heading)];
      return (
        Math.hypot(
          chain.start.x + c * other.x - s * other.y - one.end.x,
          chain.start.y + s * other.x + c * other.y - one.end.y,
        ) > 1e-8
      );
    });
    expect(breaches).toEqual([]);
  });
});

/** Shortest distance from a point to a line, by search along it. */
function distanceTo(one: LineWay, x: number, y: number, near: number): number {
  const off = (at: number) => {
    const stance = stanceAlong(one, at);
    return stance === null ? Number.POSITIVE_INFINITY : Math.hypot(stance.x - x, stance.y - y);
  };
  let [best, step] = [near, 8];
  while (step > 1e-7) {
    const next = [best - step, best + step].find((at) => off(at) < off(best));
    if (next === undefined) step /= 2;
    else best = next;
  }
  return off(best);
}

describe('double track', () => {
  const BY = 28;
  const pairs = chains.slice(0, 60).map((chain) => {
    const { x, y, heading } = chain.start;
    const input = track([line('main', chain.pieces, { from: from(x, y, (heading * 180) / Math.PI) })], {
      beside: [{ id: 'other', at: 'b', line: 'main', side: 'left', by: BY, phase: 'now' }],
    });
    const [main, other] = layOutLines(input).lines;
    if (main === undefined || other === undefined) throw new Error('not laid');
    return { main, other };
  });

  /** The other line at a share of each element of it, against the main line there. */
  const off = ({ main, other }: (typeof pairs)[number], shift = 0) =>
    other.elements.flatMap((element, i) =>
      [0.2, 0.5, 0.9].map((share) => {
        const { x, y, heading } = stanceOn(element, element.length * share);
        const below = main.elements[i];
        const near = (below?.from ?? 0) + (below?.length ?? 0) * share;
        return Math.abs(distanceTo(main, x - shift * Math.sin(heading), y + shift * Math.cos(heading), near) - BY);
      }),
    );

  it('keeps its distance everywhere, easements included', () => {
    expect(Math.max(...pairs.flatMap((pair) => off(pair)))).toBeLessThan(1e-6);
    expect(Math.min(...pairs.flatMap((pair) => off(pair, 0.01)))).toBeGreaterThan(1e-3);
  });

  it('is shorter on the inside by the distance times the turn', () => {
    for (const { main, other } of pairs) {
      const turn = main.elements.reduce((sum, { stretch }) => sum + turnAfter(stretch, stretch.length), 0);
      expect(Math.abs(main.length - other.length - BY * turn)).toBeLessThan(1e-8);
    }
  });

  it('is as long as its points say', () => {
    for (const { other } of pairs.slice(0, 15)) {
      const count = 20000;
      const points = Array.from(
        { length: count + 1 },
        (_, i) => stanceAlong(other, (other.length * i) / count) ?? other.start,
      );
      const sum = points
        .slice(1)
        .reduce((total, p, i) => total + Math.hypot(p.x - (points[i]?.x ?? 0), p.y - (points[i]?.y ?? 0)), 0);
      expect(Math.abs(sum / other.length - 1)).toBeLessThan(1e-5);
    }
  });
});

describe('heights', () => {
  const profiles = fc
    .sample(
      fc.array(fc.record({ run: fc.integer({ min: 100, max: 900 }), height: fc.integer({ min: 0, max: 60 }) }), {
        minLength: 2,
        maxLength: 6,
      }),
      { numRuns: RUNS, seed: 5 },
    )
    .map((breaks) => {
      const asked = breaks.map(({ height }, i) => ({
        at: breaks.slice(0, i + 1).reduce((sum, { run }) => sum + run, 0),
        height,
        curve: null,
      }));
      const at = asked.at(-1)?.at ?? 0;
      return { length: at + 100, profile: profileOf(asked, { length: at + 100, perPercent: 90 }) };
    });

  it("the slope is the height's own, and never jumps where a curve was given room", () => {
    const breaches = profiles.flatMap(({ length, profile }) =>
      Array.from({ length: 97 }, (_, i) => (length * (i + 0.5)) / 97).filter((at) => {
        const step = 1e-4;
        const slope = (heightAt(profile, at + step) - heightAt(profile, at - step)) / (2 * step);
        return Math.abs(slope - slopeAt(profile, at)) > 1e-6;
      }),
    );
    expect(breaches).toEqual([]);
    const jumps = profiles.flatMap(({ profile }) =>
      profile.curves.filter(
        ({ from: low, to, before, after }) =>
          to > low &&
          (Math.abs(slopeAt(profile, low + 1e-9) - before) > 1e-6 ||
            Math.abs(slopeAt(profile, to - 1e-9) - after) > 1e-6),
      ),
    );
    expect(jumps).toEqual([]);
  });

  it('vertical curves never meet, and none is longer than asked', () => {
    for (const { profile } of profiles) {
      profile.curves.forEach((one, i) => {
        const next = profile.curves[i + 1];
        expect(one.to - one.from).toBeLessThanOrEqual(one.wanted + 1e-9);
        if (next !== undefined) expect(next.from).toBeGreaterThanOrEqual(one.to - 1e-9);
      });
    }
  });
});

describe('the model', () => {
  const odd = (value: unknown): readonly string[] => {
    if (typeof value === 'number') return Number.isFinite(value) && !Object.is(value, -0) ? [] : [String(value)];
    return typeof value === 'object' && value !== null ? Object.values(value).flatMap(odd) : [];
  };
  it('is plain JSON, the same bytes for the same input', () => {
    for (const chain of chains.slice(0, 30)) {
      const input = track([line('one', chain.pieces, { from: from(chain.start.x, chain.start.y, 30) })]);
      const [a, b] = [layTrack(input), layTrack(input)];
      expect(JSON.stringify(a)).toBe(JSON.stringify(b));
      expect(odd(a.model)).toEqual([]);
    }
  });
});
