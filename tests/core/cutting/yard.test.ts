import { describe, expect, it } from 'vitest';
import { costOfSheets, patterns, sheetsByPart } from '../../../src/core/cutting/cost.ts';
import type { CutJob } from '../../../src/core/cutting/job.ts';
import { layOut } from '../../../src/core/cutting/layout.ts';
import { cutListBySetting } from '../../../src/core/cutting/settings.ts';
import { yardPlan } from '../../../src/core/cutting/yard.ts';
import { LAWS } from '../../laws/cutting-laws.ts';

const job: CutJob = {
  stock: [
    {
      ...{ id: 'ply', length: 2440, width: 1220, grain: 'length', price: 50 },
      ...{ count: null, offcut: false, noGo: [] },
    },
  ],
  parts: [{ id: 'strut', length: 1100, width: 135, quantity: 9, grain: 'length' }],
  ...{ kerf: 2.4, trim: 0, style: { kind: 'saw', stages: 3 }, keep: 150, budget: 30 },
};
// a quarter of an inch is what a yard's saw is trusted to: common practice, no source
const car = { length: 1400, width: 1250, tolerance: 6 };

describe('a cut at the yard', () => {
  it('gives two pieces that fit the car, and no part within its tolerance', () => {
    const plan = yardPlan(job, car);
    expect(plan?.cut?.kind).toBe('crosscut');
    const at = plan?.cut?.at ?? 0;
    for (const piece of plan?.cut?.pieces ?? []) expect(piece.length).toBeLessThanOrEqual(car.length - car.tolerance);
    const parts = plan?.answer.sheets.flatMap((sheet) => sheet.parts) ?? [];
    expect(parts).toHaveLength(9);
    for (const part of parts) expect(part.x + part.length <= at - 6 + 1e-6 || part.x >= at + 2.4 + 6 - 1e-6).toBe(true);
    expect(plan?.answer.sheets).toHaveLength(1);
    if (plan !== null) expect(LAWS.cutsGiveParts(job, plan.answer)).toEqual([]);
  });

  it('is not needed for a small sheet, and not enough for a small car', () => {
    expect(yardPlan(job, { ...car, length: 2500 })?.cut).toBeNull();
    expect(yardPlan(job, { ...car, length: 600, width: 600 })).toBeNull();
  });
});

describe('lists made from the sheets', () => {
  const two = { ...job, parts: [{ id: 'side', length: 2000, width: 600, quantity: 4, grain: 'length' as const }] };
  const { sheets } = layOut(two);

  it('the cut list by setting holds every cut once', () => {
    const groups = cutListBySetting(sheets);
    const cuts = groups.flatMap((group) => group.cuts);
    expect(cuts).toHaveLength(sheets.flatMap((sheet) => sheet.cuts).length);
    expect(new Set(cuts.map((cut) => `${cut.sheet} ${cut.number}`)).size).toBe(cuts.length);
    expect(groups.filter((group) => group.kind === 'rip')).toMatchObject([{ setting: 600 }]);
  });

  it('parts remember their sheet, like sheets are one pattern, prices add up', () => {
    expect(sheetsByPart(sheets).get('side')).toEqual([0, 0, 1, 1]);
    expect(patterns(sheets)).toEqual([[0, 1]]);
    expect(costOfSheets(two, sheets)).toBe(100);
  });
});
