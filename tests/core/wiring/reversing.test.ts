import { describe, expect, it } from 'vitest';
import { directFindings } from '../../../src/core/wiring/findings/units.ts';
import { turnoutMetal } from '../../../src/core/wiring/metal.ts';
import type { RailPlan } from '../../../src/core/wiring/rail-plan.ts';
import type { Wire } from '../../../src/core/wiring/wire.ts';
import { type WiringModel, wiringModel } from '../../../src/core/wiring/wiring.ts';
import { table } from './tables.ts';

/** A stem of 300 into the points of a turnout, and a loop of 1500 from its straight end back to its branch. */
const balloon: RailPlan = {
  lines: [{ id: 'loop', length: 1900, place: (at) => (at <= 400 ? [150 + at, 200] : around(at - 400)) }],
  segments: [
    {
      ...{ id: 'loop.1', line: 'loop' },
      from: { at: 0, node: 'loop.start', end: 'loop.start out' },
      to: { at: 300, node: 'T.points', end: 'T.points' },
    },
    {
      ...{ id: 'loop.2', line: 'loop' },
      from: { at: 400, node: 'T.straight', end: 'T.straight' },
      to: { at: 1900, node: 'T.branch', end: 'T.branch' },
    },
  ],
  ways: [
    { turnout: 'T', from: 'T.points', to: 'T.straight', length: 100 },
    { turnout: 'T', from: 'T.points', to: 'T.branch', length: 100 },
  ],
  metal: [turnoutMetal('T'), { id: 'loop.start', inlets: ['loop.start in'], outlets: ['loop.start out'] }],
  turnouts: [{ id: 'T', line: 'loop', at: [500, 200], frog: 'dead' }],
};

/** Round an oblong of 500 by 250. */
function around(at: number): readonly [number, number] {
  if (at <= 500) return [550 + at, 200];
  if (at <= 750) return [1050, 200 + (at - 500)];
  if (at <= 1250) return [1050 - (at - 750), 450];
  return [550, 450 - (at - 1250)];
}

const model = wiringModel({ ...table, rails: balloon });

/** Both rails of every length of rail and every wire as pieces of metal; the names of those joined to the supply's two poles. */
function shorts({ feeders, gaps, wires }: Pick<WiringModel, 'feeders' | 'gaps' | 'wires'>, rails: RailPlan) {
  const up = new Map<string, string>();
  const top = (one: string): string => {
    const next = up.get(one) ?? one;
    return next === one ? one : top(next);
  };
  const join = (one: string, other: string) => up.set(top(one), top(other));
  const bothPoles = (one: string, other: string, turned: 'as it is' | 'swapped') => {
    join(`${one} a`, `${other} ${turned === 'swapped' ? 'b' : 'a'}`);
    join(`${one} b`, `${other} ${turned === 'swapped' ? 'a' : 'b'}`);
  };
  // a train bridges every cut of a section that reverses, so those count for nothing here
  const open = gaps.filter(({ why }) => why !== 'reversing');
  const isCut = (segment: string, at: number) =>
    open.some((gap) => gap.segment === segment && Math.abs(gap.at - at) < 1e-6);
  for (const { id, from, to } of rails.segments) {
    for (const end of [from, to]) {
      if (isCut(id, end.at)) continue;
      const inlet = rails.metal.some(({ inlets }) => inlets.includes(end.end));
      const owner =
        rails.metal.find(({ inlets, outlets }) => inlets.includes(end.end) || outlets.includes(end.end))?.id ?? '';
      // running along the segment goes with the metal's direction where it leaves an outlet or enters an inlet
      const along = (end === from) !== inlet;
      bothPoles(`rail ${id}`, `metal ${owner}`, along ? 'as it is' : 'swapped');
    }
  }
  for (const wire of wires.filter(({ kind }) => kind === 'feeder' || kind === 'lead')) {
    const feeder = feeders.find(({ id }) => wire.id === `${id}-a` || wire.id === `${id}-b`);
    if (feeder === undefined) continue;
    join(
      `net ${wire.net} ${wire.id.endsWith('a') ? 'a' : 'b'}`,
      `rail ${feeder.segment} ${wire.id.endsWith('a') ? 'a' : 'b'}`,
    );
  }
  return [...new Set(wires.map(({ net }) => net))].filter((net) => top(`net ${net} a`) === top(`net ${net} b`));
}

describe('a loop that comes back on itself', () => {
  it('has one section that reverses, cut at both its ends, and one reverser', () => {
    expect(model.reversing.map(({ segment }) => segment)).toEqual(['loop.2']);
    expect(model.gaps.map(({ why, at }) => [why, at])).toEqual([
      ['reversing', 400],
      ['reversing', 1900],
    ]);
    expect(model.units.map(({ id, kind, from, clear }) => [id, kind, from, clear])).toEqual([
      ['reverser-loop', 'reverser', 'rest', true],
    ]);
  });

  it('is fed from the reverser alone, and the stem from the bus alone', () => {
    for (const wire of model.wires.filter(({ kind }) => kind === 'feeder')) {
      const feeder = model.feeders.find(({ id }) => wire.id.startsWith(`${id}-`));
      expect(wire.net).toBe(feeder?.segment === 'loop.2' ? 'reverser-loop' : 'rest');
    }
    expect(model.findings.filter(({ level }) => level === 'halt')).toEqual([]);
  });

  it('has wires from the bus to the reverser and from it to its own pair', () => {
    const units = model.wires.filter(({ kind }) => kind === 'unit');
    expect(units.map(({ id, net }) => [id, net])).toEqual([
      ['reverser-loop-in-a', 'rest'],
      ['reverser-loop-in-b', 'rest'],
      ['reverser-loop-out-a', 'reverser-loop'],
      ['reverser-loop-out-b', 'reverser-loop'],
    ]);
    const own = model.wires.filter(({ kind, net }) => kind === 'bus' && net === 'reverser-loop');
    expect(own.length).toBeGreaterThan(0);
  });

  it('with direct current has a switch for a hand instead', () => {
    const dc = wiringModel({ ...table, rails: balloon, supply: { control: 'dc', volts: 12, tripsAt: 2 } });
    expect(dc.units.map(({ kind }) => kind)).toEqual(['reversing-switch']);
  });

  it('joins no pole to its opposite however a train bridges its cuts, followed as metal', () => {
    const held = wiringModel({ ...table, rails: balloon });
    // between the reverser and the bus nothing is joined: it turns its own pair
    expect(
      shorts({ ...held, feeders: held.feeders.filter(({ net }) => net !== 'reverser-loop') }, cutAway(balloon)),
    ).toEqual([]);
  });

  it('planted fault: its feeders on the bus are a short, followed as metal, and a halt that names wires and reverser', () => {
    const past = (wire: Wire): Wire => (wire.net === 'reverser-loop' ? { ...wire, net: 'rest' } : wire);
    const wires = model.wires.map(past);
    expect(shorts({ ...model, wires }, balloon)).toEqual(['rest']);
    const found = directFindings({ units: model.units, sections: model.reversing, feeders: model.feeders, wires });
    expect(found.length).toBe(model.feeders.filter(({ segment }) => segment === 'loop.2').length);
    expect(found[0]).toMatchObject({ level: 'halt', where: 'loop', figure: 2, limit: 0 });
    expect(found[0]?.mend.join('')).toContain('reverser-loop');
    expect(directFindings({ ...model, sections: model.reversing })).toEqual([]);
  });
});

/** The rails without the section that reverses. */
function cutAway(rails: RailPlan): RailPlan {
  return { ...rails, segments: rails.segments.filter(({ id }) => id !== 'loop.2') };
}
