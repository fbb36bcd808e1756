import { describe, expect, it } from 'vitest';
import { reversingSections } from '../../../src/core/wiring/polarity.ts';
import { railGraph } from '../../../src/core/wiring/rail-graph.ts';
import type { RailPlan } from '../../../src/core/wiring/rail-plan.ts';
import { railSides, type Side } from '../../../src/core/wiring/rail-sides.ts';
import { oblong } from './tables.ts';

/** The same oblong with its siding laid from its open end to the branch. */
const backwards: RailPlan = {
  ...oblong,
  segments: oblong.segments.map((one) =>
    one.line === 'siding'
      ? {
          ...{ id: one.id, line: one.line },
          from: { at: 0, node: 'siding.start', end: 'siding.start out' },
          to: { at: 300, node: 'W1.branch', end: 'W1.branch' },
        }
      : one,
  ),
  metal: [
    ...oblong.metal.filter(({ id }) => id !== 'siding.end'),
    { id: 'siding.start', inlets: ['siding.start in'], outlets: ['siding.start out'] },
  ],
};

/** Whether wire a and wire b come together, every rail followed as a piece of metal; sections that reverse are left out. */
function meets(rails: RailPlan, sides: ReadonlyMap<string, Side>, reversing: ReadonlySet<string>): boolean {
  const up = new Map<string, string>();
  const top = (one: string): string => {
    const next = up.get(one) ?? one;
    return next === one ? one : top(next);
  };
  const join = (one: string, next: string) => up.set(top(one), top(next));
  for (const { from, id, to } of rails.segments.filter((one) => !reversing.has(one.id))) {
    for (const [end, leaves] of [
      [from, true],
      [to, false],
    ] as const) {
      const owner = rails.metal.find(({ inlets, outlets }) => [...inlets, ...outlets].includes(end.end));
      if (owner === undefined) throw new Error(`no metal at ${end.end}`);
      // looking along the line, the metal's left is left where it runs out of an outlet or into an inlet
      const same = owner.outlets.includes(end.end) === leaves;
      join(`${id} left`, `${owner.id} ${same ? 'left' : 'right'}`);
      join(`${id} right`, `${owner.id} ${same ? 'right' : 'left'}`);
    }
    const a = sides.get(id);
    if (a === undefined) throw new Error(`no side for ${id}`);
    join('a', `${id} ${a}`);
    join('b', `${id} ${a === 'left' ? 'right' : 'left'}`);
  }
  return top('a') === top('b');
}

const none: ReadonlySet<string> = new Set();

describe('the rail that wire a goes to', () => {
  it('is the left one all round an oblong and its siding', () => {
    expect([...railSides(oblong, none)]).toEqual([
      ['main.1', 'left'],
      ['main.2', 'left'],
      ['siding.1', 'left'],
    ]);
    expect(meets(oblong, railSides(oblong, none), none)).toBe(false);
  });

  it('is the right one of a siding laid towards the turnout', () => {
    const sides = railSides(backwards, none);
    expect(sides.get('siding.1')).toBe('right');
    expect(meets(backwards, sides, none)).toBe(false);
  });

  it('planted fault: the same siding with a on its left rail is a short, followed as metal', () => {
    const sides = new Map(railSides(backwards, none)).set('siding.1', 'left');
    expect(meets(backwards, sides, none)).toBe(true);
  });

  it('joins no wire to its opposite in any way of laying lines, once sections that reverse are left out', () => {
    const ways = [oblong, backwards].flatMap((rails) => [rails, turned(rails, 'main.2'), turned(rails, 'main.1')]);
    for (const rails of ways) {
      const reversing = new Set(reversingSections(railGraph(rails)).sections.map(({ id }) => id));
      expect(meets(rails, railSides(rails, reversing), reversing)).toBe(false);
    }
  });
});

/** Rails with one segment laid from its other end. */
function turned(rails: RailPlan, segment: string): RailPlan {
  return {
    ...rails,
    segments: rails.segments.map((one) =>
      one.id === segment ? { ...one, from: { ...one.to, at: one.from.at }, to: { ...one.from, at: one.to.at } } : one,
    ),
  };
}
