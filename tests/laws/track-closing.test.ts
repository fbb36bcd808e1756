import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOutLines } from '../../src/core/track/layout.ts';
import type { Stance } from '../../src/core/track/stretch.ts';
import { wrapped } from '../../src/core/track/stretch.ts';
import { asTrack, endOf, type Hidden, randomChain } from './random-line.ts';

const CHAINS = 200;

/** Chains whose hidden values their closing determines; the others are told as undetermined, which is right too. */
type Outcome = {
  readonly chain: Hidden;
  readonly gap: number;
  readonly turn: number;
  readonly rules: readonly string[];
};

function outcome(chain: Hidden, target: Stance): Outcome {
  const { lines, faults } = layOutLines(asTrack(chain, target));
  const end = lines.find(({ id }) => id === 'closing')?.end ?? chain.start;
  return {
    chain,
    gap: Math.hypot(end.x - target.x, end.y - target.y),
    turn: Math.abs(wrapped(end.heading - target.heading)),
    rules: faults.map(({ rule }) => rule),
  };
}

describe('a line whose values were hidden closes again', () => {
  const sample = fc.sample(
    randomChain.filter(({ hidden }) => hidden.length > 0),
    { numRuns: 320, seed: 20261125 },
  );
  const outcomes = sample.map((chain) => outcome(chain, endOf(chain)));
  const determined = outcomes.filter(({ rules }) => rules.length === 0);

  it(`${CHAINS} of them, with 1 to 3 unknowns, to 1e-6 mm and 1e-9 rad`, () => {
    console.log(`determined: ${determined.length} of ${sample.length}`);
    expect(determined.length / sample.length).toBeGreaterThanOrEqual(0.7);
    expect(determined.length).toBeGreaterThanOrEqual(CHAINS);
    expect(new Set(determined.map(({ chain }) => chain.hidden.length))).toEqual(new Set([1, 2, 3]));
    expect(determined.filter(({ gap, turn }) => gap > 1e-6 || turn > 1e-9)).toEqual([]);
  });

  it('fails when the target is moved after closing', () => {
    const moved = determined.slice(0, 20).map(({ chain }) => {
      const target = endOf(chain);
      const { lines } = layOutLines(asTrack(chain, { ...target, x: target.x + 1e-3 }));
      const end = lines.find(({ id }) => id === 'closing')?.end ?? target;
      return Math.hypot(end.x - target.x, end.y - target.y) + Math.abs(wrapped(end.heading - target.heading));
    });
    // a chain whose only unknown cannot follow stays where it was; most can
    expect(moved.filter((off) => off > 1e-6).length).toBeGreaterThanOrEqual(15);
  });

  it('what is undetermined is only what has no place to be found', () => {
    expect(new Set(outcomes.flatMap(({ rules }) => rules))).toEqual(new Set(['undetermined']));
  });
});

/** Residuals known without any search. */
describe('a line that cannot close misses by what geometry says', () => {
  const chains = fc.sample(randomChain, { numRuns: 50, seed: 7 });
  const shifts = fc.sample(
    fc.record({
      dx: fc.integer({ min: -400, max: 400 }),
      dy: fc.integer({ min: -400, max: 400 }),
      turn: fc.integer({ min: -300, max: 300 }),
    }),
    { numRuns: 50, seed: 8 },
  );

  it('50 without unknowns, their target moved and turned by known amounts', () => {
    const wrong = chains.filter((chain, i) => {
      const { dx, dy, turn } = shifts[i] ?? { dx: 1, dy: 1, turn: 1 };
      const end = endOf(chain);
      const target = { x: end.x + dx / 10, y: end.y + dy / 10, heading: end.heading + turn / 100 };
      const { closings } = layOutLines(asTrack({ ...chain, hidden: [] }, target));
      const miss = closings[0]?.closing.miss ?? { along: 0, across: 0, turn: 0 };
      return (
        Math.abs(Math.hypot(miss.along, miss.across) - Math.hypot(dx, dy) / 10) > 1e-9 ||
        Math.abs(wrapped(miss.turn + turn / 100)) > 1e-12
      );
    });
    expect(wrong).toEqual([]);
  });

  it('50 with one straight to find, their target moved along and across that straight', () => {
    const straights = fc
      .sample(
        randomChain.filter(({ pieces }) => pieces.some(({ kind }) => kind === 'straight')),
        { numRuns: 50, seed: 9 },
      )
      .map((chain) => ({
        ...chain,
        hidden: [{ piece: chain.pieces.findIndex(({ kind }) => kind === 'straight'), what: 'length' as const }],
      }));
    const wrong = straights.filter((chain, i) => {
      const { dx, dy } = shifts[i] ?? { dx: 1, dy: 1 };
      const before = endOf({ start: chain.start, pieces: chain.pieces.slice(0, chain.hidden[0]?.piece ?? 0) });
      const [c, s] = [Math.cos(before.heading), Math.sin(before.heading)];
      const end = endOf(chain);
      // only longer, so that the straight can follow; across it nothing can
      const [along, across] = [Math.abs(dx) / 10, dy / 10];
      const target = { x: end.x + c * along - s * across, y: end.y + s * along + c * across, heading: end.heading };
      const { closings } = layOutLines(asTrack(chain, target));
      const miss = closings[0]?.closing.miss ?? { along: 0, across: 0, turn: 0 };
      return Math.abs(Math.hypot(miss.along, miss.across) - Math.abs(across)) > 1e-7 || Math.abs(miss.turn) > 1e-9;
    });
    expect(wrong.length).toBe(0);
  });

  it('fails when the residual is expected where the straight can follow', () => {
    const chain = {
      ...(chains.find(({ pieces }) => pieces[0]?.kind === 'straight') ?? chains[0]),
      hidden: [{ piece: 0, what: 'length' as const }],
    };
    if (chain.pieces === undefined || chain.start === undefined) throw new Error('no chain');
    const end = endOf({ pieces: chain.pieces, start: chain.start });
    const [c, s] = [Math.cos(chain.start.heading), Math.sin(chain.start.heading)];
    const { closings } = layOutLines(
      asTrack(
        { pieces: chain.pieces, start: chain.start, hidden: chain.hidden },
        { ...end, x: end.x + 10 * c, y: end.y + 10 * s },
      ),
    );
    const miss = closings[0]?.closing.miss ?? { along: 1, across: 1, turn: 1 };
    expect(Math.hypot(miss.along, miss.across)).toBeLessThan(1e-6);
  });
});
