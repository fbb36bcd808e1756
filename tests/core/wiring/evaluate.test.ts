import { describe, expect, it } from 'vitest';
import { quantityKit } from '../../../src/core/units/schema.ts';
import { evaluateWiring } from '../../../src/core/wiring/evaluate.ts';
import { wiringSchema } from '../../../src/core/wiring/schema.ts';
import { table, wire } from './tables.ts';

const schema = wiringSchema(quantityKit(null));
const context = {
  ...{ scope: {}, scale: 'N', trains: [], lifts: [], rails: table.rails, ground: table.ground, show: table.show },
  stock: [wire('bus-2.5', 2.5, 6), wire('thin-0.5', 0.5, 1)],
  lines: [{ id: 'main', length: 2436, joints: [{ id: 'quay', at: 300, x: 0, y: 0, heading: 0 }] }],
};
const good = {
  supply: { control: 'digital', volts: '15 V', 'trips-at': '3 A' },
  bus: { stock: 'bus-2.5', from: ['100 mm', '100 mm'], route: 'auto' },
  feeders: { stock: 'thin-0.5', every: '900 mm' },
};

function evaluated(change: object) {
  return evaluateWiring(schema.parse({ ...good, ...change }), context);
}

function rules(change: object): readonly string[] {
  const answer = evaluated(change);
  return answer.ok ? [] : answer.faults.map(({ rule, at, mend }) => `${rule} at ${at}: ${mend}`);
}

describe('the wiring chapter as numbers', () => {
  it('reads every value, and assumes what nobody said', () => {
    const answer = evaluated({
      loads: [{ id: 'lamp', at: { line: 'main', past: 'quay', by: '2 in' }, amps: '60 mA' }],
    });
    if (!answer.ok) throw new Error('faults');
    const { supply, bus, feeders, loads, mayLose, gaps, train, rail } = answer.value;
    expect(supply).toEqual({ control: 'digital', volts: 15, tripsAt: 3 });
    expect([bus?.from, bus?.route, feeders?.every]).toEqual([[100, 100], null, 900]);
    expect(loads).toMatchObject([{ amps: 0.06, kind: 'steady', place: { kind: 'line', line: 'main', at: 350.8 } }]);
    expect([mayLose, gaps, train]).toEqual([0.05, null, null]);
    expect(rail.assumed).toBe(true);
    // code 80: 1.45 milliohm an inch times (100 / 80) squared
    expect(rail.ohmPerMetre).toBeCloseTo((1.45e-3 / 0.0254) * 1.5625, 9);
  });

  it('takes branches with a written route, each point on a bench, and none with one that is found', () => {
    const route = [['900 mm', '100 mm']];
    const branches = [
      [
        ['500 mm', '100 mm'],
        ['500 mm', '300 mm'],
      ],
    ];
    const answer = evaluated({ bus: { ...good.bus, route, branches } });
    expect(answer.ok ? answer.value.bus?.branches : null).toEqual([
      [
        [500, 100],
        [500, 300],
      ],
    ]);
    const far = [[...(branches[0] ?? []), ['500 mm', '9 m']]];
    expect(rules({ bus: { ...good.bus, route, branches: far } }).join(' ')).toContain('wiring.bus.branches.0.2');
    const parsed = schema.safeParse({ ...good, bus: { ...good.bus, branches } });
    expect(parsed.success ? [] : parsed.error.issues.map(({ path }) => path.join('.'))).toEqual(['bus']);
  });

  it('takes measured rails, cuts, a longest train and a share that may be lost', () => {
    const answer = evaluated({
      rails: { 'ohm-per-metre': '0.05 ohm' },
      gaps: [{ line: 'main', at: '12 mm' }],
      'longest-train': '1.2 m',
      'may-lose': '3 %',
    });
    if (!answer.ok) throw new Error('faults');
    expect(answer.value).toMatchObject({
      rail: { ohmPerMetre: 0.05, assumed: false },
      gaps: [{ line: 'main', at: 12 }],
      train: 1200,
      mayLose: 0.03,
    });
  });

  it('tells every mistake at once, each with its place and how to mend it', () => {
    const mistakes = rules({
      bus: { stock: 'string', from: ['1 mm', '1 mm'], route: 'auto' },
      feeders: { stock: 'thin-0.5', every: '0' },
      loads: [{ id: 'lamp', at: { line: 'main', at: '9 m' }, amps: '1 A' }],
    });
    expect(mistakes).toEqual([
      'not-a-wire at wiring.bus.stock: name a wire: bus-2.5, thin-0.5',
      'too-small at wiring.feeders.every: write 1 mm or more',
      'off-the-line at wiring.loads.0.at: write a distance from 0 to 2436 mm, or past quay',
    ]);
  });

  it('refuses a name that nothing has, and a district that never trips', () => {
    expect(rules({ feeders: { stock: 'thin-0.5', every: 'reach' } }).map((rule) => rule.split(' ')[0])).toEqual([
      'unknown-name',
    ]);
    expect(rules({ districts: [{ id: 'yard', lines: ['main'], 'trips-at': '0 A' }] })).toEqual([
      'too-small at wiring.districts.0.trips-at: write 0.01 A or more',
    ]);
  });

  it('takes diodes, inrush and a fuse, and computes what the diodes draw', () => {
    const leds = { forward: '2 V', amps: '10 mA', 'in-row': '3', rows: '2' };
    const answer = evaluated({ loads: [{ id: 'signs', at: ['1 mm', '2 mm'], leds, inrush: '0.5 A', fuse: '0.1 A' }] });
    if (!answer.ok) throw new Error('faults');
    const [signs] = answer.value.loads;
    expect(signs).toMatchObject({ leds: { forward: 2, amps: 0.01, inRow: 3, rows: 2 }, inrush: 0.5, fuse: 0.1 });
    expect(signs?.amps).toBeCloseTo((2 * 7.6) / 820, 12);
  });

  it('asks for amps or diodes, one of the two, and for whole diodes', () => {
    const at = ['1 mm', '2 mm'];
    const leds = { forward: '2 V', amps: '10 mA', rows: '1.5' };
    const parsed = schema.safeParse({
      ...good,
      loads: [
        { id: 'none', at },
        { id: 'both', at, leds, amps: '1 A' },
      ],
    });
    expect(parsed.error?.issues.map(({ message, path }) => `${path.join('.')}: ${message}`)).toEqual([
      'loads.0: either `amps` or `leds`, one of the two',
      'loads.1: either `amps` or `leds`, one of the two',
    ]);
    expect(rules({ loads: [{ id: 'half', at, leds }] })).toEqual(['not-whole at wiring.loads.0.leds.rows: write 2']);
    expect(rules({ loads: [{ id: 'low', at, amps: '1 A', inrush: '0.5 A' }] })).toEqual([
      'too-small at wiring.loads.0.inrush: write 1 A or more',
    ]);
  });
});
