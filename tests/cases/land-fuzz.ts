import { headValues } from '../../src/core/head.ts';
import type { Plan } from '../../src/core/plan.ts';
import { benchworkStage } from '../../src/core/stages/benchwork.ts';
import { readLog } from '../../src/core/stages/log.ts';
import { sceneryStage } from '../../src/core/stages/scenery.ts';
import { trackStage } from '../../src/core/stages/track.ts';
import { done, failed, type Result } from '../../src/core/units/problem.ts';

/** A notebook small enough to be computed a thousand times, whose land has every key, and ways to bend it. */

const HEAD = `---
title: Small Tarn
show: mm
scale: N
makers: [nobody]
licence: CC-BY-4.0
people: { reach: 600 mm, youngest: 6 }
---

A small table.
`;

const BENCHWORK = `---
dimensions:
  length: 600 mm
  width: 400 mm
  height: 700 mm
  side: 110 mm
  strut: 90 mm
  clearance: 0.3 mm
  lap-relief: 0.4 mm
materials: { frame: birch-ply-18, deck: birch-ply-9 }
benches:
  - id: table
    construction: lapped-grid
    struts: { along: 1, across: 1 }
    deck: { overhang: 3 mm, flush: front-left }
---

A table.
`;

const TRACK = `---
trains: [short-wagon-n]
roadbed: { stock: cork-3, width: 25 mm }
lines:
  - id: main
    from: { x: 20 mm, y: 280 mm, heading: 0°, height: 0 }
    lay: [ { straight: 540 mm } ]
    ends: buffer
---

One straight line.
`;

/** The chapter's front matter with every key it can have. */
export const FUZZ_CHAPTER = `
ground:
  spots: [ [40 mm, 40 mm, 4 mm], [420 mm, 300 mm, 80 mm] ]
  hills: [ { id: knob, form: dome, top: [420 mm, 290 mm], height: 80 mm, foot-radius: 130 mm } ]
  ridges: [ { id: spine, form: round, along: [ [30 mm, 350 mm], [120 mm, 380 mm] ], height: 20 mm, half-width: 30 mm } ]
  banks: [ { id: yard, outline: [ [20 mm, 140 mm], [80 mm, 140 mm], [80 mm, 180 mm] ], height: 10 mm, slope: "1:1.5" } ]
  roads: [ { id: lane, along: [ [20 mm, 100 mm, 0 mm], [100 mm, 100 mm, 5 mm] ], width: 30 mm } ]
  slope: "1:1.5"
  spot-reach: 80 mm
  hollow: 20 mm
  foam: xps-25
  boards: [ { id: back, edge: back, bench: table, stock: birch-ply-9 } ]
  water:
    - id: tarn
      outline: [ [130 mm, 30 mm], [240 mm, 30 mm], [240 mm, 120 mm], [130 mm, 120 mm] ]
      surface: -6 mm
      depth: 12 mm
      floor: 3 mm
      pour: 3 mm
      resin: clear-resin
      tray: hardboard-3
  sections:
    - { id: way, line: main, from: 100 mm, to: 500 mm }
    - { id: slant, from: [20 mm, 20 mm], to: [500 mm, 300 mm] }
bridges: [ { id: span, line: main, from: 50 mm, to: 90 mm, over: tarn, lifts: "true" } ]
tunnels: [ { id: bore, line: main, from: 360 mm, to: 440 mm } ]
structures:
  - { id: shed, at: [300 mm, 60 mm], turn: 15°, prototype: { length: 6 m, width: 4 m, height: 4 m } }
  - { id: barn, at: [400 mm, 60 mm], model: { length: 60 mm, width: 40 mm, height: 40 mm } }
cover:
  - { id: meadow, outline: knob.foot, of: [plaster-cloth, ground-foam], trees: 9 }
  - { id: shore, outline: [ [250 mm, 20 mm], [290 mm, 20 mm], [290 mm, 120 mm] ], of: [ground-foam] }
ballast: fine-ballast
renamed: { hillock: knob }
`;

export const FUZZ_FILES = [
  { path: 'notebooks/tarn/notebook.md', text: HEAD },
  { path: 'notebooks/tarn/benchwork.md', text: BENCHWORK },
  { path: 'notebooks/tarn/track.md', text: TRACK },
] as const;

/** What is written in the place of a value: other names, other units, other sizes, other shapes, or nothing at all. */
export const ODD: readonly unknown[] = [
  ...['knob.fot', 'tarn', 'knob.foot', 'birch-ply-9', '', '..', 'ünreadable', '__proto__'],
  ...['0', '-5 mm', '0.001 mm', '99999 mm', '1e9 mm', '7', '7 kg', '90°', '1:0', '0 mm / 0', 'side', '"'],
  ...[[], {}, ['5 mm'], [['5 mm', '5 mm']], null, undefined],
];

/** Where a value stands: the keys and numbers that lead to it. */
export type Way = readonly (string | number)[];

/** Ways to every value of a chapter, the lists and maps among them. */
export function waysInto(value: unknown, way: Way = []): readonly Way[] {
  if (typeof value !== 'object' || value === null) return [way];
  const inner = Array.isArray(value)
    ? value.flatMap((item, i) => waysInto(item, [...way, i]))
    : Object.entries(value).flatMap(([key, item]) => waysInto(item, [...way, key]));
  return way.length === 0 ? inner : [way, ...inner];
}

/** A chapter with one value replaced; undefined takes it out. */
export function withOdd(value: unknown, way: Way, odd: unknown): unknown {
  const [first, ...rest] = way;
  if (first === undefined) return odd;
  if (Array.isArray(value)) {
    const items = value.map((item, i) => (i === first ? withOdd(item, rest, odd) : item));
    return items.filter((item) => item !== undefined);
  }
  if (typeof value !== 'object' || value === null) return value;
  const pairs = Object.entries(value).map(([key, item]) => [key, key === first ? withOdd(item, rest, odd) : item]);
  return Object.fromEntries(pairs.filter(([, item]) => item !== undefined));
}

/** The stages up to the land alone: what follows from the land is a matter of whole notebooks. */
export function landAlone(plan: Plan): Result<unknown> {
  const bench = benchworkStage(plan, readLog(plan).readings, headValues(plan.head));
  if (!bench.ok) return bench;
  const { model, scope } = bench.value;
  const laid = trackStage(plan, { model, scope });
  const land = sceneryStage(plan, { model, scope, track: laid.ok ? (laid.value?.model ?? null) : null });
  return land.ok ? done(null) : failed(...land.faults);
}
