import { describe, expect, it } from 'vitest';
import type { CutJob, CutPart, CutStock } from '../../../src/core/cutting/job.ts';
import { layOut } from '../../../src/core/cutting/layout.ts';
import { LAWS } from '../../laws/cutting-laws.ts';

const ply: CutStock = {
  ...{ id: 'ply', length: 2440, width: 1220, grain: 'length', price: 50 },
  ...{ count: null, offcut: false, noGo: [] },
};
const side: CutPart = { id: 'side', length: 1600, width: 170, quantity: 2, grain: 'length' };

function job(change: Partial<CutJob>): CutJob {
  return {
    stock: [ply],
    parts: [side],
    ...{ kerf: 2.4, trim: 10, style: { kind: 'saw', stages: 3 }, keep: 150, budget: 20 },
    ...change,
  };
}

describe('jobs that ask too much', () => {
  it('a part larger than any stock is told with the largest that fits', () => {
    const { unplaced, sheets } = layOut(job({ parts: [{ ...side, length: 2600 }] }));
    expect(sheets).toEqual([]);
    expect(unplaced).toEqual([
      { part: 'side', quantity: 2, why: 'too-large', largest: { x: 10, y: 10, length: 2420, width: 1200 } },
    ]);
  });

  it('grain across the sheet turns the largest that fits', () => {
    const { unplaced } = layOut(job({ parts: [{ ...side, grain: 'width', length: 1300, width: 2500 }] }));
    expect(unplaced[0]?.largest).toMatchObject({ length: 1200, width: 2420 });
  });

  it('stock that runs out leaves parts without a place, and uses all there is', () => {
    const { unplaced, sheets } = layOut(job({ stock: [{ ...ply, count: 1 }], parts: [{ ...side, quantity: 9 }] }));
    expect(sheets).toHaveLength(1);
    expect(unplaced).toMatchObject([{ part: 'side', quantity: 3, why: 'no-stock-left' }]);
  });

  it.each<readonly [string, Partial<CutJob>]>([
    ['no stock', { stock: [] }],
    ['no parts', { parts: [] }],
    ['quantity 0', { parts: [{ ...side, quantity: 0 }] }],
    ['zero kerf', { kerf: 0 }],
    ['a kerf larger than a part', { kerf: 40, parts: [{ ...side, width: 12, quantity: 30 }] }],
    ['a kerf larger than the sheet', { kerf: 5000 }],
    ['a kerf that is no number', { kerf: Number.NaN }],
    ['trim that leaves nothing', { trim: 700 }],
    ['a sheet without size', { stock: [{ ...ply, width: 0 }] }],
    ['a sheet of absurd size', { stock: [{ ...ply, length: 1e300, width: 1e300 }] }],
    ['a part of absurd size', { parts: [{ ...side, length: 1e300 }] }],
    ['a part of hardly any size', { parts: [{ ...side, length: 1e-9, width: 1e-9, quantity: 50 }] }],
    [
      'a part that is no number',
      {
        parts: [
          { ...side, length: Number.NaN },
          { ...side, id: 'b', quantity: Number.NaN },
        ],
      },
    ],
    ['minus three parts', { parts: [{ ...side, quantity: -3 }] }],
    ['half a part', { parts: [{ ...side, quantity: 0.5 }] }],
    ['a thousand million parts', { parts: [{ ...side, quantity: 1e9 }] }],
    ['no budget', { budget: 0 }],
    ['a budget that is no number', { budget: Number.NaN }],
    ['a spot over the whole sheet', { stock: [{ ...ply, noGo: [{ x: -10, y: -10, length: 9000, width: 9000 }] }] }],
    ['sizes finer than a hundredth', { parts: [{ ...side, length: 100.00049, width: 33.3333333, quantity: 300 }] }],
  ])('%s: an answer that keeps the laws', (name, change) => {
    const asked = job(change);
    const answer = layOut(asked);
    for (const law of [
      LAWS.inside,
      LAWS.kerfBetween,
      LAWS.cutsGiveParts,
      LAWS.materialAddsUp,
      LAWS.stockKept,
      LAWS.numbers,
    ]) {
      expect(law(asked, answer)).toEqual([]);
    }
    const usual = asked.parts.every((part) => Number.isInteger(part.quantity));
    expect(usual ? LAWS.allThere(asked, answer) : []).toEqual([]);
    if (name === 'zero kerf') expect(answer.unplaced).toEqual([]);
  });

  it('10 000 different parts are laid within a small budget', () => {
    const parts = Array.from({ length: 10_000 }, (_, i) => ({
      ...{ id: `p${i}`, length: 50 + ((i * 7919) % 900), width: 30 + ((i * 104729) % 400), quantity: 1 },
      grain: 'any' as const,
    }));
    const asked = job({ parts, budget: 50, style: { kind: 'saw', stages: 'any' } });
    const answer = layOut(asked);
    expect(answer.unplaced).toEqual([]);
    expect(LAWS.cutsGiveParts(asked, answer)).toEqual([]);
    expect(answer.bounds[0]?.bound).toBeLessThanOrEqual(answer.sheets.length);
    expect(answer.sheets.length).toBeLessThan(1.1 * (answer.bounds[0]?.bound ?? 0));
    expect(answer.work).toBeLessThan(10_000);
  });
});
