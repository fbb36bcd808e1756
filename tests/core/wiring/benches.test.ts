import { describe, expect, it } from 'vitest';
import type { TrackInput } from '../../../src/core/track/input.ts';
import { layOutLines } from '../../../src/core/track/layout.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { railPlan } from '../../../src/core/wiring/from-track.ts';
import { reversingSections, shortedSegments } from '../../../src/core/wiring/polarity.ts';
import { railGraph } from '../../../src/core/wiring/rail-graph.ts';
import { spaceLength } from '../../../src/core/wiring/wire.ts';
import { wiringModel } from '../../../src/core/wiring/wiring.ts';
import { table, tableParts } from './tables.ts';

const [bench] = table.ground.benches;
if (bench === undefined) throw new Error('no bench');

/** The test table twice, end to end. */
const annex = tableParts.map((part) => ({
  ...part,
  id: `annex.${part.id}`,
  bench: 'annex',
  places: part.places.map((place) => ({ ...place, id: `annex.${place.id}` })),
}));

const twins = {
  ...table.ground,
  benches: [bench, { ...bench, id: 'annex', place: { x: 1218, y: 0, turn: 0 } }],
  parts: [...tableParts, ...annex],
};

describe('two benches bolted together', () => {
  const loads = [{ id: 'lamp', place: { kind: 'place', at: [1800, 300] }, amps: 0.1, kind: 'steady' }] as const;
  const model = wiringModel({ ...table, loads, ground: twins });

  it('have a plug where the bus goes over, a pin for each wire', () => {
    expect(model.connectors).toHaveLength(1);
    const [plug] = model.connectors;
    expect(plug?.between).toEqual(['table', 'annex']);
    expect(plug?.pins.map(({ onto, pin, wire }) => `${pin} ${wire} ${onto}`)).toEqual([
      '1 bus-rest-a bus-rest-2-a',
      '2 bus-rest-b bus-rest-2-b',
    ]);
    // where the two ends touch, in line with the bus; each bench has its own length of wire
    const [x = 0, , z = 0] = plug?.at ?? [];
    expect([x, z]).toEqual([1218, model.bus?.z]);
    const [one, other] = ['bus-rest-a', 'bus-rest-2-a'].map((id) => model.wires.find((wire) => wire.id === id));
    expect(Math.max(...(one?.path ?? []).map(([at]) => at))).toBeCloseTo(1218, 6);
    expect(Math.min(...(other?.path ?? []).map(([at]) => at))).toBeCloseTo(1218, 6);
    const ends = [spoken(one?.to ?? [], String), spoken(other?.from ?? [], String)];
    expect(ends).toEqual(['plug P1', 'plug P1']);
    const whole = [model.bus?.path ?? [], ...(model.bus?.branches ?? [])].reduce(
      (sum, path) => sum + spaceLength(path),
      0,
    );
    const buses = model.wires.filter(({ id, kind }) => kind === 'bus' && id.endsWith('a'));
    expect(buses.reduce((sum, { drawn }) => sum + drawn, 0)).toBeLessThanOrEqual(whole + 1e-6);
    expect(model.holes.map(({ part }) => part)).toEqual(expect.arrayContaining(['end.right', 'annex.end.left']));
  });

  it('name their bays with the bench', () => {
    expect(model.places.find(({ loads: at }) => at.includes('lamp'))?.bay).toBe('annex.bay.1-1');
  });

  it('that stand apart are not joined: the load is out of reach', () => {
    const apart = { ...twins, benches: [bench, { ...bench, id: 'annex', place: { x: 1300, y: 0, turn: 0 } }] };
    const far = [{ ...loads[0], place: { kind: 'place', at: [1900, 300] } }] as const;
    const { findings } = wiringModel({ ...table, loads: far, ground: apart });
    expect(findings.filter(({ rule }) => rule === 'feeder-unreached').map(({ where }) => where)).toEqual(['lamp']);
  });
});

describe('a table that stands turned', () => {
  it('is wired as one that does not', () => {
    const turned = { ...table.ground, benches: [{ ...bench, place: { x: 0, y: 0, turn: Math.PI / 6 } }] };
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const spin = ([x, y]: readonly [number, number]) => [c * x - s * y, s * x + c * y] as const;
    const rails = {
      ...table.rails,
      lines: table.rails.lines.map((line) => ({ ...line, place: (at: number) => spin(line.place(at)) })),
      turnouts: table.rails.turnouts.map((one) => ({ ...one, at: spin(one.at) })),
    };
    const straight = wiringModel(table);
    const bus = table.bus === null ? null : { ...table.bus, from: spin(table.bus.from) };
    const model = wiringModel({ ...table, bus, rails, ground: turned });
    expect(model.holes.map(({ part }) => part)).toEqual(straight.holes.map(({ part }) => part));
    // a clear way beside a strut is looked for in steps that do not turn with the table
    expect(model.wires).toHaveLength(straight.wires.length);
    const off = model.wires.map(({ length }, i) => Math.abs(length - (straight.wires[i]?.length ?? 0)));
    expect(Math.max(...off)).toBeLessThanOrEqual(10);
  });
});

describe('rails from track as it is laid', () => {
  const line = { phase: 'now', heights: [], at: 'track.lines.0' } as const;
  const place = { kind: 'place', stance: { x: 0, y: 0, heading: 0 }, height: null } as const;
  const piece = { joint: null, at: '' } as const;
  const straight = (length: number) => ({ ...piece, kind: 'straight', length, times: null }) as const;
  const turnout = (id: string, enter: 'points' | 'straight' | 'branch', take: 'points' | 'straight' | 'branch') =>
    ({ ...piece, kind: 'turnout', turnout: id, enter, take }) as const;
  const round = { ...piece, kind: 'curve', hand: 'left', radius: 300, through: 5, easement: 0, times: null } as const;
  const form = {
    form: { kind: 'frog', number: 6, hand: 'left' },
    frog: null,
    motor: null,
    throwBar: null,
    at: '',
  } as const;

  function plan(lines: TrackInput['lines'], turnouts: readonly string[]) {
    const input: TrackInput = {
      ...{ scale: 'N', trains: [], roadbed: null, flex: { yard: null, height: null }, beside: [], lines },
      rules: { curvePerPercent: null, grade: null, radius: 'car-lengths', upperDeck: null, wire: false },
      turnouts: turnouts.map((id) => ({ id, ...form })),
      ground: { benches: [], parts: [], envelopes: [] },
    };
    return railPlan({ ...layOutLines(input), pieces: lines });
  }

  it('a balloon loop has one reversing section, its loop', () => {
    const rails = plan(
      [
        {
          ...line,
          id: 'loop',
          from: place,
          pieces: [straight(400), turnout('T', 'points', 'straight'), round],
          ends: 'T.branch',
        },
      ],
      ['T'],
    );
    const graph = railGraph(rails);
    expect(reversingSections(graph).sections.map(({ id }) => id)).toEqual(['loop.2']);
    expect(shortedSegments(graph, new Set(['loop.2']))).toEqual([]);
  });

  it('a ring with a siding has none, and a siding from its branch joins its metal', () => {
    const rails = plan(
      [
        {
          ...line,
          id: 'main',
          from: place,
          pieces: [straight(400), turnout('W', 'points', 'straight'), round],
          ends: 'main.start',
        },
        { ...line, id: 'siding', from: { kind: 'end', name: 'W.branch' }, pieces: [straight(300)], ends: 'open' },
      ],
      ['W'],
    );
    expect(reversingSections(railGraph(rails)).sections).toEqual([]);
    expect(rails.segments.map(({ id, from, to }) => `${id} ${from.node} ${to.node}`)).toEqual([
      'main.1 main.start W.points',
      'main.2 W.straight main.start',
      'siding.1 W.branch siding.end',
    ]);
  });
});
