import type { WireStock } from '../../../src/core/stock/goods.ts';
import type { Part } from '../../../src/core/stock/part.ts';
import type { WiringInput } from '../../../src/core/wiring/input.ts';
import { turnoutMetal } from '../../../src/core/wiring/metal.ts';
import type { RailPlan } from '../../../src/core/wiring/rail-plan.ts';

/** Wire with the figures its name says; thin ones resist more. */
export function wire(id: string, area: number, amps: number): WireStock {
  return {
    kind: 'wire',
    ...{ id, name: id, source: 'invented for tests', price: null, gauge: null },
    area,
    ohmPerMetre: 0.0175 / area,
    outside: 1.5 + area / 2,
    amps: { chassis: amps * 5, cautious: amps },
  };
}

const BOARD = { grain: 'length', thickness: 18 } as const;

type Side = {
  readonly id: string;
  readonly role: string;
  readonly from: readonly [number, number];
  readonly long: number;
  readonly along: 'x' | 'y';
};

/** A board on edge, its underside 500 above the floor and its top at 600. */
export function board({ id, role, from, long, along }: Side): Part {
  const [x, y] = from;
  const pose =
    along === 'x'
      ? ({ origin: [x, y + 18, 500], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] } as const)
      : ({ origin: [x, y, 500], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] } as const);
  return {
    ...{
      id,
      label: id,
      role,
      chapter: 'benchwork',
      bench: 'table',
      stock: 'ply',
      features: [],
      cutAfterMeasuring: false,
      phase: 'now',
    },
    blank: { length: long, width: 100, ...BOARD },
    places: [{ id, label: id, pose, marks: [] }],
  };
}

/** A table 1218 by 818 with one strut across and one along it, all 18 thick: four bays of 591 by 391 clear. */
export const tableParts: readonly Part[] = [
  board({ id: 'side.front', role: 'side', from: [0, 0], long: 1218, along: 'x' }),
  board({ id: 'side.back', role: 'side', from: [0, 800], long: 1218, along: 'x' }),
  board({ id: 'end.left', role: 'end', from: [0, 18], long: 782, along: 'y' }),
  board({ id: 'end.right', role: 'end', from: [1200, 18], long: 782, along: 'y' }),
  board({ id: 'strut.across', role: 'strut', from: [600, 18], long: 782, along: 'y' }),
  board({ id: 'strut.along', role: 'strut', from: [18, 400], long: 1182, along: 'x' }),
];

/** An oblong of straight lines round the table, 200 in from its edges, with a siding from one turnout. */
export const oblong: RailPlan = {
  lines: [
    { id: 'main', length: 2436, place: roundOblong },
    { id: 'siding', length: 300, place: (at) => [400 + at, 300] },
  ],
  segments: [
    segment('main.1', 'main', [0, 'main.start', 'main.start out'], [400, 'W1.points', 'W1.points']),
    segment('main.2', 'main', [500, 'W1.straight', 'W1.straight'], [2436, 'main.start', 'main.start in']),
    segment('siding.1', 'siding', [0, 'W1.branch', 'W1.branch'], [300, 'siding.end', 'siding.end in']),
  ],
  ways: [
    { turnout: 'W1', from: 'W1.points', to: 'W1.straight', length: 100 },
    { turnout: 'W1', from: 'W1.points', to: 'W1.branch', length: 100 },
  ],
  metal: [
    turnoutMetal('W1'),
    { id: 'main.start', inlets: ['main.start in'], outlets: ['main.start out'] },
    { id: 'siding.end', inlets: ['siding.end in'], outlets: ['siding.end out'] },
  ],
  turnouts: [{ id: 'W1', line: 'main', at: [600, 200], frog: 'live' }],
};

type End = readonly [at: number, node: string, end: string];

function segment(id: string, line: string, a: End, b: End): RailPlan['segments'][number] {
  return { id, line, from: { at: a[0], node: a[1], end: a[2] }, to: { at: b[0], node: b[1], end: b[2] } };
}

/** 818 along, 400 across, and back. */
function roundOblong(at: number): readonly [number, number] {
  if (at <= 818) return [200 + at, 200];
  if (at <= 1218) return [1018, 200 + (at - 818)];
  if (at <= 2036) return [1018 - (at - 1218), 600];
  return [200, 600 - (at - 2036)];
}

/** A wired table without faults; tests change one thing at a time. */
export const table: WiringInput = {
  supply: { control: 'digital', volts: 15, tripsAt: 3 },
  bus: { stock: wire('bus-2.5', 2.5, 6), from: [100, 100], route: null },
  feeders: { stock: wire('thin-0.5', 0.5, 1), every: 900 },
  loads: [],
  districts: [],
  lifts: [],
  gaps: null,
  rail: { ohmPerMetre: 0.0571, assumed: false },
  train: 200,
  show: 'mm',
  mayLose: 0.05,
  warm: 20,
  rails: oblong,
  ground: {
    benches: [
      {
        id: 'table',
        place: { x: 0, y: 0, turn: 0 },
        length: 1218,
        width: 818,
        deckTop: 609,
        sideTop: 600,
        sideUnderside: 500,
        strutUnderside: 500,
      },
    ],
    parts: tableParts,
    spaces: [],
    reach: 600,
  },
  wires: [
    wire('bus-2.5', 2.5, 6),
    wire('thin-0.5', 0.5, 1),
    wire('mid-1.5', 1.5, 4),
    wire('bus-4', 4, 9),
    wire('bus-6', 6, 12),
  ],
};
