import { describe, expect, it } from 'vitest';
import type { BenchInput, LegsInput } from '../../../src/core/benchwork/input.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { model } from './example.ts';
import { CASTER, fittedTable, POSTS } from './fitted.ts';

/** The fitted table with another beside it, plain but for its legs. */
function two(place: Partial<BenchInput['place']>, legs: LegsInput = POSTS) {
  const input = fittedTable({ legs });
  const [bench] = input.benches;
  if (bench === undefined) throw new Error('no bench');
  const other = { ...bench, id: 'yard', place: { x: 0, y: 0, turn: 0, ...place }, drawers: [], shelves: [] };
  return model({ ...input, benches: [bench, other] }).findings.filter(
    ({ rule }) => rule === 'drawer-meets-bench' || rule === 'caster-meets-caster',
  );
}

describe('a bench before drawers', () => {
  it('1100 wide with its back 200 off: they come out 200 of 480', () => {
    const found = two({ y: -1300 });
    expect(found).toMatchObject([
      { rule: 'drawer-meets-bench', level: 'care', where: 'table.drawer.front-2', figure: 480, limit: 200 },
      { rule: 'drawer-meets-bench', level: 'care', where: 'table.drawer.front-3', figure: 480, limit: 200 },
    ]);
    expect(spoken(found[0]?.mend ?? [], String)).toMatch(/^move the bench 280 away/);
    expect(spoken(found[0]?.what ?? [], String)).toContain('yard stands there after 200');
  });

  it("is in nobody's way from 480 on, or beside the drawers", () => {
    expect(two({ y: -1580 })).toEqual([]);
    expect(two({ x: 1700, y: 0 })).toEqual([]);
    expect(two({ x: 1600, y: -1300 })).toEqual([]);
  });

  it('turned by 30 degrees stops the nearer drawer first', () => {
    const found = two({ x: 300, y: -1900, turn: Math.PI / 6 });
    expect(found.map(({ where }) => where)).toContain('table.drawer.front-3');
    for (const { limit } of found) expect(limit).toBeLessThan(480);
  });
});

describe('wheels of two benches side by side', () => {
  it('that can turn into each other are a care with the circle that is free', () => {
    // each stands 17.7 and half a post of 70.8 from its edge: 106.2 from middle to middle, so 53.1 are free, less than 68
    const found = two({ x: 1600 });
    expect(found.map(({ rule, level, where, figure, limit }) => [rule, level, where, figure, limit])).toEqual(
      ['table.leg.front-right', 'table.leg.back-right'].map((where) => [
        'caster-meets-caster',
        'care',
        where,
        68,
        53.1,
      ]),
    );
    expect(spoken(found[0]?.mend ?? [], String)).toContain('move the benches 29.8 apart');
    expect(two({ x: 1629.9 })).toEqual([]);
    const small: LegsInput = {
      ...POSTS,
      stand: { kind: 'caster', caster: { ...CASTER, swivelRadius: 53 }, free: null },
    };
    expect(two({ x: 1600 }, small)).toEqual([]);
  });
});
