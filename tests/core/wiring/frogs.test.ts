import { describe, expect, it } from 'vitest';
import { liveFrogAt } from '../../../src/core/wiring/frog-gaps.ts';
import { gapsOf } from '../../../src/core/wiring/gaps.ts';
import type { WiringInput } from '../../../src/core/wiring/input.ts';
import { turnoutMetal } from '../../../src/core/wiring/metal.ts';
import { railBranches } from '../../../src/core/wiring/rail-circuit.ts';
import type { RailPlan } from '../../../src/core/wiring/rail-plan.ts';
import { wiringModel } from '../../../src/core/wiring/wiring.ts';
import { oblong, table } from './tables.ts';

/** Every rail end beyond a live frog from which a feeder is reached without a cut and without passing the turnout. */
function fedFrogs(input: WiringInput): readonly string[] {
  const model = wiringModel(input);
  const { rails } = railBranches(input.rails, { ...model, ohmPerMetre: 1 });
  const legs = input.rails.segments.flatMap(({ from, to }) =>
    [from, to].filter((end) => liveFrogAt(input.rails, end) !== null).map(({ end }) => end),
  );
  return legs.filter((leg) => {
    const reached = new Set([leg]);
    for (const node of reached) {
      for (const { from, to } of rails) {
        if (from === node) reached.add(to);
        if (to === node) reached.add(from);
      }
    }
    return [...reached].some((node) => node.startsWith('rail feeder-'));
  });
}

/** Two turnouts of the main line whose branches face each other over `long` mm. */
function crossover(long: number): RailPlan {
  const end = (at: number, name: string) => ({ at, node: name, end: name });
  return {
    ...oblong,
    lines: [...oblong.lines.slice(0, 1), { id: 'link', length: long, place: (at) => [400 + at, 300] }],
    segments: [
      ...oblong.segments.slice(0, 1),
      { id: 'main.2', line: 'main', from: end(500, 'W1.straight'), to: end(1500, 'W2.straight') },
      {
        id: 'main.3',
        line: 'main',
        from: end(1600, 'W2.points'),
        to: { at: 2436, node: 'main.start', end: 'main.start in' },
      },
      { id: 'link.1', line: 'link', from: end(0, 'W1.branch'), to: end(long, 'W2.branch') },
    ],
    ways: [
      ...oblong.ways,
      { turnout: 'W2', from: 'W2.points', to: 'W2.straight', length: 100 },
      { turnout: 'W2', from: 'W2.points', to: 'W2.branch', length: 100 },
    ],
    metal: [...oblong.metal, turnoutMetal('W2')],
    turnouts: [...oblong.turnouts, { id: 'W2', line: 'main', at: [600, 600], frog: 'live' }],
  };
}

function frogRules(input: WiringInput) {
  return wiringModel(input).findings.filter(({ rule }) => rule.startsWith('frog-'));
}

describe('a live frog', () => {
  it('has a cut in both rails beyond it, and none before its points', () => {
    const frogs = gapsOf(table).gaps.filter(({ why }) => why === 'frog');
    expect(frogs.map(({ line, at, rails, of }) => [line, at, rails, of])).toEqual([
      ['main', 500, 'frog', 'W1'],
      ['siding', 0, 'frog', 'W1'],
    ]);
    expect(fedFrogs(table)).toEqual([]);
  });

  it('that its author did not cut off is a halt that names the turnout, the feeder and the place', () => {
    const open = frogRules({ ...table, gaps: [{ line: 'main', at: 505 }] });
    expect(open.map(({ rule, level, where, figure }) => [rule, level, where, figure])).toEqual([
      ['frog-not-cut', 'halt', 'W1', 0],
      ['frog-cut', 'note', 'W1', 1],
    ]);
    const [first] = open;
    expect(first?.what.filter((one) => typeof one === 'string').join('')).toMatch(/frog of W1.*feeder-\d feeds siding/);
  });

  it('may be cut off farther out: nothing feeds the rails up to there', () => {
    const far = {
      ...table,
      gaps: [
        { line: 'main', at: 700 },
        { line: 'siding', at: 120 },
      ],
    };
    expect(frogRules(far).filter(({ level }) => level === 'halt')).toEqual([]);
    expect(wiringModel(far).feeders.filter(({ line, at }) => line === 'siding' && at < 120)).toEqual([]);
    expect(fedFrogs(far)).toEqual([]);
  });

  it('is dead or unknown: no cut', () => {
    for (const frog of ['dead', null] as const) {
      const rails = { ...table.rails, turnouts: table.rails.turnouts.map((one) => ({ ...one, frog })) };
      expect(gapsOf({ ...table, rails }).gaps).toEqual([]);
    }
  });
});

describe('two live frogs that face each other', () => {
  it('share one cut through both rails when they are close', () => {
    const input = { ...table, rails: crossover(80) };
    const link = gapsOf(input).gaps.filter(({ line }) => line === 'link');
    expect(link.map(({ at, rails, of }) => [at, rails, of])).toEqual([[40, 'both', 'W1 and W2']]);
    expect(wiringModel(input).feeders.filter(({ line }) => line === 'link')).toEqual([]);
    expect(fedFrogs(input)).toEqual([]);
  });

  it('are cut off one by one when they are far apart, and what lies between is fed', () => {
    const input = { ...table, rails: crossover(600) };
    const link = gapsOf(input).gaps.filter(({ line }) => line === 'link');
    expect(link.map(({ at, of }) => [at, of])).toEqual([
      [0, 'W1'],
      [600, 'W2'],
    ]);
    expect(wiringModel(input).feeders.filter(({ line }) => line === 'link')).toHaveLength(1);
    expect(fedFrogs(input)).toEqual([]);
  });

  it('planted fault: with frogs that nobody calls live the feeder is found', () => {
    const rails = crossover(600);
    const dead = { ...rails, turnouts: rails.turnouts.map((one) => ({ ...one, frog: 'dead' as const })) };
    const model = wiringModel({ ...table, rails: dead });
    const { rails: branches } = railBranches(rails, { ...model, ohmPerMetre: 1 });
    expect(branches.some(({ from, to }) => from === 'W1.branch' && to.startsWith('rail feeder-'))).toBe(true);
  });
});

describe('a cut that only its author wants', () => {
  it('parts the rails all the same', () => {
    const input = {
      ...table,
      gaps: [
        { line: 'main', at: 500 },
        { line: 'siding', at: 0 },
        { line: 'main', at: 1500 },
      ],
    };
    expect(gapsOf(input).gaps.filter(({ why }) => why === 'written')).toMatchObject([
      { line: 'main', at: 1500, rails: 'both' },
    ]);
  });
});
