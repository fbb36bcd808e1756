import { describe, expect, it } from 'vitest';
import { fuseFor } from '../../../src/core/wiring/fuses.ts';
import type { WiringInput } from '../../../src/core/wiring/input.ts';
import { mostInRow, preferredAbove, ratingFor } from '../../../src/core/wiring/led.ts';
import { ledAmps } from '../../../src/core/wiring/led-load.ts';
import { CLIP_EVERY, ohmName } from '../../../src/core/wiring/small-parts.ts';
import { spaceLength } from '../../../src/core/wiring/wire.ts';
import { wiringModel } from '../../../src/core/wiring/wiring.ts';
import { table, wire } from './tables.ts';

type Load = WiringInput['loads'][number];

function load(change: Partial<Load>): Load {
  return { id: 'lamp', place: { kind: 'place', at: [900, 600] }, amps: 0.1, kind: 'steady', ...change };
}

function modelOf(...loads: readonly Load[]) {
  return wiringModel({ ...table, loads });
}

function found(rule: string, ...loads: readonly Load[]) {
  return modelOf(...loads).findings.filter((one) => one.rule === rule);
}

const thrown = load({ id: 'W1-motor', place: { kind: 'turnout', turnout: 'W1' }, kind: 'pulse', amps: 0.8 });

describe('pulses and steady loads', () => {
  it('are told apart: a pulse counts neither in the steady loads nor in what trains leave', () => {
    const [district] = modelOf(load({ amps: 0.2 }), thrown).districts;
    expect(district).toMatchObject({ steady: 0.2, forTrains: 2.8 });
    expect(district?.loads.map(({ amps, kind, load: id }) => [id, kind, amps])).toEqual([
      ['lamp', 'steady', 0.2],
      ['W1-motor', 'pulse', 0.8],
    ]);
  });

  it('a pulse is served through its own wires: V - I R of bus and tail, there and back', () => {
    const model = modelOf(thrown);
    const own = model.wires.find(({ id }) => id === 'W1-motor-a');
    const figures = model.districts[0]?.loads[0];
    // nothing else draws, so the loop is at least its own tail and at most tail and whole bus
    const tail = 2 * (0.0175 / 0.5) * ((own?.drawn ?? 0) / 1000);
    const bus = 2 * (0.0175 / 2.5) * (spaceLength(model.bus?.path ?? []) / 1000);
    const lost = 15 - (figures?.volts ?? 0);
    expect(lost).toBeGreaterThan(0.8 * tail);
    expect(lost).toBeLessThan(0.8 * (tail + bus));
  });

  it('a pulse that with the steady loads passes the trip current is a care, one below is none', () => {
    expect(found('pulse-overload', load({ amps: 0.5 }), { ...thrown, amps: 2.6 })).toMatchObject([
      { level: 'care', where: 'W1-motor', figure: 3.1, limit: 3 },
    ]);
    expect(found('pulse-overload', load({ amps: 0.5 }), { ...thrown, amps: 2.5 })).toEqual([]);
    expect(found('overload', load({ amps: 0.5 }), { ...thrown, amps: 9 })).toEqual([]);
  });

  it('loads that rush in together keep a breaker from coming on', () => {
    const two = [load({ inrush: 2 }), load({ id: 'sign', inrush: 1.5 })];
    expect(found('inrush-trips', ...two)).toMatchObject([{ level: 'care', where: 'rest', figure: 3.5, limit: 3 }]);
    expect(found('inrush-trips', load({ inrush: 2 }))).toEqual([]);
    expect(found('inrush-trips', load({}), { ...thrown, inrush: 9 })).toEqual([]);
  });

  it('a load at the end of wires too thin is a care with the size that mends it', () => {
    const thin = { ...table, bus: table.bus === null ? null : { ...table.bus, stock: wire('hair', 0.02, 6) } };
    const low = wiringModel({ ...thin, loads: [load({ amps: 2 })] }).findings.filter(
      ({ rule }) => rule === 'load-volts-low',
    );
    expect(low).toMatchObject([{ level: 'care', where: 'lamp', limit: 14.25, unit: 'V' }]);
    expect(low[0]?.mend.join('')).toMatch(/^Take (thin-0.5|mid-1.5|bus-2.5|bus-4|bus-6) /);
  });
});

describe('light-emitting diodes', () => {
  const leds = { forward: 2, amps: 0.01, inRow: 3, rows: 2 };

  it('have a resistor a row, bought at the next value up, and a rectifier on a digital signal', () => {
    const { leds: worked } = modelOf(load({ leds, amps: ledAmps(13.6, leds) }));
    // 15 V less 1.4 V of the rectifier less three of 2 V leave 7.6 V: 760 ohm at 10 mA, 820 ohm as sold
    expect(worked).toMatchObject([{ load: 'lamp', rows: 2, inRow: 3, rating: 0.25, rectifier: true }]);
    expect(worked[0]?.resistor?.exact).toBeCloseTo(760, 9);
    expect(worked[0]?.resistor?.bought).toBe(820);
    expect(worked[0]?.resistor?.watts).toBeCloseTo(7.6 ** 2 / 820, 12);
    expect(ledAmps(13.6, leds)).toBeCloseTo((2 * 7.6) / 820, 12);
  });

  it('that no supply lights are a halt with how many in a row do', () => {
    const eight = load({ leds: { ...leds, inRow: 8 } });
    const [halt, ...more] = found('leds-too-many', eight);
    expect(more).toEqual([]);
    expect(halt).toMatchObject({ level: 'halt', where: 'lamp', figure: 16, limit: 13.6 });
    expect(halt?.mend.join('')).toContain('Put 6 in a row at most: 3 rows');
    expect(mostInRow(13.6, 2)).toBe(6);
  });

  it('preferred values are those of IEC 60063, E24, and a rating is twice the heat', () => {
    expect([760, 820, 821, 99, 1e4 + 1].map(preferredAbove)).toEqual([820, 820, 910, 100, 11000]);
    expect([0.07, 0.125, 0.126, 4, 6].map(ratingFor)).toEqual([0.25, 0.25, 0.5, 10, null]);
    expect([ohmName(820), ohmName(1200)]).toEqual(['820 ohm', '1.2 kilohm']);
  });
});

describe('fuses', () => {
  it('carry a quarter more than the load and no more than the wire', () => {
    expect([fuseFor(0.12, 0.92), fuseFor(0.8, 1), fuseFor(0.9, 1), fuseFor(0.5, 0.63)]).toEqual([0.16, 1, null, 0.63]);
  });

  /** Thin wires that may carry less than the 3 A that the breaker lets through. */
  const frail = { ...table, feeders: { stock: wire('hair', 0.05, 0.2), every: 900 } };

  function fused(one: Load, rule: string) {
    const model = wiringModel({ ...frail, loads: [one] });
    return { model, told: model.findings.filter((finding) => finding.rule === rule) };
  }

  it('are proposed where the wires carry less than the breaker lets through', () => {
    const { model, told } = fused(load({}), 'fuse-proposed');
    expect(model.fuses).toMatchObject([{ load: 'lamp', amps: 0.125, written: false, tripsAt: 3 }]);
    expect(told).toMatchObject([{ level: 'note', where: 'lamp' }]);
    expect(modelOf(load({})).fuses).toEqual([]);
  });

  it('as written are checked both ways', () => {
    expect(fused(load({ fuse: 2 }), 'fuse-large').told).toMatchObject([{ level: 'care', figure: 2 }]);
    expect(fused(load({ fuse: 0.1 }), 'fuse-small').told).toMatchObject([{ level: 'care', limit: 0.125 }]);
    expect(fused(load({ fuse: 0.16 }), 'fuse-small').told).toEqual([]);
    expect(fused(load({ amps: 2 }), 'fuse-none').told).toMatchObject([{ level: 'care', where: 'lamp', figure: 2.5 }]);
  });
});

describe('small parts', () => {
  const model = modelOf(load({ leds: { forward: 2, amps: 0.01, inRow: 1, rows: 3 }, fuse: 0.16 }));
  const of = (kind: string) => model.smallParts.filter((one) => one.kind === kind);

  it('are a grommet a hole, a fuse, and a resistor for every row', () => {
    expect(of('grommet').reduce((sum, { quantity }) => sum + quantity, 0)).toBe(model.holes.length);
    expect(of('resistor')).toMatchObject([{ quantity: 3, of: ['lamp'] }]);
    expect(of('rectifier')).toMatchObject([{ quantity: 1 }]);
    expect(of('fuse')).toMatchObject([{ name: 'Fuse 0.16 A, slow, with its holder', quantity: 1 }]);
  });

  it('have clips enough for the bus, one each 150 mm at least', () => {
    const [clips] = of('clip');
    expect((clips?.quantity ?? 0) * CLIP_EVERY.mm).toBeGreaterThan(spaceLength(model.bus?.path ?? []));
  });
});

describe('a bay', () => {
  const box = { min: [640, 0, 510], max: [1180, 380, 540] } as const;
  const model = wiringModel({
    ...table,
    loads: [load({})],
    ground: { ...table.ground, spaces: [{ id: 'crate', kind: 'drawer', box }] },
  });

  it('tells its wires, joints and spaces with heights', () => {
    const joints = model.places.flatMap((place) => place.joints);
    expect(joints.map(({ drop }) => drop).toSorted()).toEqual(
      [...model.feeders.map(({ id }) => id), 'frog-W1-in', 'load.lamp'].toSorted(),
    );
    expect(joints.every(({ at, labels }) => at[2] === model.bus?.z && labels.length === 2)).toBe(true);
    const under = model.places.filter(({ below }) => below.length > 0);
    expect(under.map(({ bay }) => bay)).toEqual(['bay.2-1']);
    expect(under[0]?.below).toEqual([{ id: 'crate', from: 510, to: 540 }]);
    const seen = new Set(model.places.flatMap(({ wires }) => wires));
    expect([...seen].toSorted()).toEqual(model.wires.map(({ label }) => label).toSorted());
  });

  it('has its bus off the middle of the struts when a space asks it, and says how much wood is left', () => {
    const high = { min: [20, 20, 500], max: [1190, 790, 560] } as const;
    const lifted = wiringModel({
      ...table,
      ground: { ...table.ground, spaces: [{ id: 'chest', kind: 'drawer', box: high }] },
    });
    const [hole] = lifted.holes;
    expect(hole?.off).toBeCloseTo((lifted.bus?.z ?? 0) - 550, 9);
    expect(hole?.wood).toBeCloseTo(600 - (lifted.bus?.z ?? 0) - (hole?.diameter ?? 0) / 2, 9);
    const told = lifted.findings.filter(({ rule }) => rule === 'hole-off-middle');
    expect(told).toMatchObject([{ unit: 'mm' }]);
    expect(told[0]?.figure).toBeCloseTo(hole?.wood ?? 0, 9);
    expect(modelOf(load({})).findings.filter(({ rule }) => rule === 'hole-off-middle')).toEqual([]);
  });
});
