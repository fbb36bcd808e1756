import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CutJob } from '../../../src/core/cutting/job.ts';
import { layOut } from '../../../src/core/cutting/layout.ts';

type Size = readonly [w: number, h: number];

/**
 * Every guillotine layout of a few pieces: a set fits a sheet when it is one piece that fits, or when some cut parts the
 * sheet and the set in two that fit. Shares no code with the solver.
 */
function fits(set: readonly Size[], [W, H]: Size, how: { readonly kerf: number; readonly turns: boolean }): boolean {
  const [only] = set;
  if (only === undefined) return true;
  if (set.length === 1) return (only[0] <= W && only[1] <= H) || (how.turns && only[1] <= W && only[0] <= H);
  for (let chosen = 1; chosen < 2 ** set.length - 1; chosen++) {
    const one = set.filter((_, i) => (chosen >> i) & 1);
    const two = set.filter((_, i) => !((chosen >> i) & 1));
    for (let x = 1; x + how.kerf < W; x++)
      if (fits(one, [x, H], how) && fits(two, [W - x - how.kerf, H], how)) return true;
    for (let y = 1; y + how.kerf < H; y++)
      if (fits(one, [W, y], how) && fits(two, [W, H - y - how.kerf], how)) return true;
  }
  return false;
}

function fewest(set: readonly Size[], sheet: Size, how: { readonly kerf: number; readonly turns: boolean }): number {
  for (let sheets = 1; sheets < set.length; sheets++) {
    for (let split = 0; split < sheets ** set.length; split++) {
      const of = (i: number) => Math.floor(split / sheets ** i) % sheets;
      const groups = Array.from({ length: sheets }, (_, s) => set.filter((_, i) => of(i) === s));
      if (groups.every((group) => fits(group, sheet, how))) return sheets;
    }
  }
  return set.length;
}

function jobOf(set: readonly Size[], sheet: Size, how: { readonly kerf: number; readonly turns: boolean }): CutJob {
  const grain = how.turns ? 'any' : 'length';
  return {
    stock: [
      {
        ...{ id: 's', length: sheet[0], width: sheet[1], grain, price: 1 },
        ...{ count: null, offcut: false, noGo: [] },
      },
    ],
    parts: set.map(([length, width], i) => ({ id: `p${i}`, length, width, quantity: 1, grain })),
    ...{ kerf: how.kerf, trim: 0, style: { kind: 'saw', stages: 'any' }, keep: 1, budget: 60 },
  };
}

describe('small jobs against every guillotine layout there is', () => {
  const size = fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 5 }));
  const jobs = fc.sample(
    fc.record({
      set: fc.array(size, { minLength: 2, maxLength: 4 }),
      how: fc.record({ kerf: fc.constantFrom(0, 1), turns: fc.boolean() }),
    }),
    { numRuns: 150, seed: 7 },
  );
  const sheet: Size = [7, 6];

  it('finds the fewest sheets, and no bound is above it', () => {
    const wrong = jobs.flatMap(({ set, how }) => {
      const answer = layOut(jobOf(set, sheet, how));
      const best = fewest(set, sheet, how);
      const bound = answer.bounds[0]?.bound ?? 0;
      return answer.sheets.length === best && bound <= best
        ? []
        : [{ set, how, best, found: answer.sheets.length, bound }];
    });
    expect(wrong).toEqual([]);
  });

  it('says proved on most of them', () => {
    const proved = jobs.filter(({ set, how }) =>
      layOut(jobOf(set, sheet, how)).bounds.every((bound) => bound.proved),
    ).length;
    expect(proved / jobs.length).toBeGreaterThan(0.7);
  });
});
