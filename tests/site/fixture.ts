import type { Cut } from '../../src/core/cutting/job.ts';
import { logState } from '../../src/core/log/state.ts';
import type { Notebook } from '../../src/core/notebook.ts';
import type { Prose } from '../../src/core/plan.ts';
import type { Step } from '../../src/core/steps/step.ts';
import type { Part } from '../../src/core/stock/part.ts';
import { length, say } from '../../src/core/units/say.ts';

const flat = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

function part(id: string, label: string, blank: readonly [number, number], places: readonly string[]): Part {
  const placements = places.map((place, i) => ({
    id: place,
    label: `${label}${i + 1}`,
    pose: flat as never,
    marks: [],
  }));
  return {
    id,
    label,
    role: id.split('.')[0] ?? id,
    chapter: 'benchwork',
    bench: 'table',
    stock: 'birch-ply-18',
    blank: { length: blank[0], width: blank[1], thickness: 17.7, grain: 'length' },
    features: [
      {
        kind: 'dado',
        id: 'd1',
        for: 'strut.across-1',
        side: 'back',
        patch: { x0: 100, x1: 118, y0: 35, y1: 170 },
        depth: 5.9,
        corner: 3.175,
      },
      { kind: 'hole', id: 'h1', at: [30, 60], diameter: 8, side: 'face', depth: 'through' },
    ],
    places: placements,
    cutAfterMeasuring: id === 'deck',
    phase: 'now',
  };
}

function step(id: string, title: string, more: Partial<Step>): Step {
  return {
    id: `benchwork.${id}`,
    chapter: 'benchwork',
    title,
    generated: false,
    makes: [],
    tools: [],
    people: 1,
    minutes: 30,
    wait: 0,
    child: 'watches',
    where: 'workshop',
    after: [],
    closes: null,
    cautions: [],
    lines: [],
    ...more,
  };
}

const saw = {
  id: 'table-saw',
  text: 'Guard and riving knife on; push sticks for the last hand’s width.',
  source: 'HSE, INDG459',
};

const cuts: readonly Cut[] = [1, 2, 3].map((number) => ({
  number,
  kind: number === 1 ? ('trim' as const) : ('rip' as const),
  from: { x: 0, y: 0, length: 2440, width: 1220 },
  setting: number === 1 ? 5 : 170,
  kerf: { x: 0, y: 170, length: 2440, width: 2.4 },
  yields: [{ x: 0, y: 0, length: 2440, width: 170 }],
  stage: 1,
  cautions: [],
}));

const parts: readonly Part[] = [
  part('side', 'S', [1600, 170], ['side.front', 'side.back']),
  part('end', 'E', [1076.4, 170], ['end.left', 'end.right']),
  part('strut.across', 'T', [1076.4, 135], ['strut.across-1', 'strut.across-2', 'strut.across-3']),
  part('deck', 'D', [1200, 1106], ['deck.left']),
];

const steps: readonly Step[] = [
  step('measure-sheets', 'Measure the sheets', {
    tools: ['caliper', 'pencil'],
    child: 'does with an adult',
    minutes: 20,
  }),
  step('rip-strips', 'Rip the frame strips', {
    tools: ['table-saw', 'push-stick'],
    people: 2,
    minutes: 60,
    child: 'away',
    after: ['benchwork.measure-sheets'],
    makes: ['side.front', 'side.back'],
    cautions: [saw],
    lines: [say`Set the fence to ${length(170)}.`],
  }),
  step('glue', 'Glue the grid', {
    generated: true,
    wait: 720,
    after: ['benchwork.rip-strips'],
    lines: [say`Glue in one stage.`],
  }),
  step('draw-lines', 'Draw the line', { id: 'track.draw-lines', chapter: 'track', where: 'room' }),
];

export const notebook: Notebook = {
  slug: 'bittern-basin',
  title: 'Bittern Basin',
  scale: 'N',
  show: 'mm',
  makers: ['an uncle', 'two nieces'],
  licence: 'CC-BY-SA-4.0',
  dimensions: [
    ['length', 1600],
    ['width', 1100],
    ['height', 700],
    ['side', 170],
    ['strut', 135],
    ['frame.thickness', 17.7],
  ].map(([name, value]) => ({
    name: String(name),
    amount: { value: Number(value), dimension: 'length' },
    text: `${value} mm`,
  })),
  thicknesses: [
    {
      stock: 'birch-ply-18',
      nominal: 18,
      listed: 17.75,
      low: 17.1,
      high: 18.1,
      mean: 17.7,
      thickest: 17.8,
      measured: true,
    },
    { stock: 'birch-ply-9', nominal: 9, listed: 8.9, low: 8.6, high: 9.1, mean: 8.9, thickest: 8.9, measured: false },
  ],
  stock: [],
  benches: [
    {
      id: 'table',
      construction: 'lapped-grid',
      place: { x: 0, y: 0, turn: 0 },
      phase: 'now',
      length: 1600,
      width: 1100,
      deckTop: 700,
      sideTop: 691.1,
      sideUnderside: 521.1,
      strutUnderside: 556.1,
    },
  ],
  parts,
  joints: [
    { id: 'j1', kind: 'dado', between: ['side.front', 'strut.across-1'], clearance: 0.3, relief: 0, held: 'glue' },
    { id: 'j2', kind: 'rabbet', between: ['side.front', 'end.left'], clearance: 0.3, relief: 0, held: 'glue' },
  ],
  seams: [],
  envelopes: [],
  fasteners: [],
  hardware: [],
  masses: { side: 3.2, end: 2.1, 'strut.across': 1.7, deck: 8 },
  sheets: [
    {
      stock: 'birch-ply-18',
      length: 2440,
      width: 1220,
      kerf: 2.4,
      parts: [
        { part: 'side', x: 5, y: 5, length: 1600, width: 170, turned: false },
        { part: 'end', x: 5, y: 180, length: 1076.4, width: 170, turned: false },
      ],
      cuts,
      offcuts: [{ x: 5, y: 800, length: 2000, width: 400 }],
      waste: [],
    },
  ],
  bounds: [{ stock: 'birch-ply-18', found: 1, bound: 1, proved: true }],
  offcuts: [
    {
      label: 'K1',
      stock: 'birch-ply-18',
      thickness: 11.7333333,
      from: 1,
      used: null,
      x: 0,
      y: 200,
      length: 400,
      width: 150,
    },
  ],
  yard: [
    {
      stock: 'birch-ply-18',
      cut: {
        ...{ kind: 'crosscut', at: 1300.0004 },
        pieces: [
          { x: 0, y: 0, length: 1300, width: 1220 },
          { x: 1303, y: 0, length: 1137, width: 1220 },
        ],
      },
      sheets: [1],
    },
  ],
  whatIf: [{ stock: 'birch-ply-18', part: 'side', side: 'width', from: 90, to: 84, sheets: 2, fewer: 1 }],
  shopping: {
    lines: [
      {
        ...{
          stock: 'birch-ply-18',
          name: '=Plywood, birch',
          unit: 'sheet',
          size: { length: 2440, width: 1220 },
          quantity: 1,
        },
        ...{ counted: null, over: null, inHand: 0, waste: 0.0456789 },
        each: { value: 62.5, currency: 'EUR' },
        price: { value: 62.5, currency: 'EUR' },
        for: ['benchwork', 'scenery'],
      },
      {
        ...{ stock: null, name: 'Trees', unit: 'piece', size: null, quantity: null, counted: null, over: null },
        ...{ inHand: 0, waste: null, each: null, price: null, for: ['scenery'] },
      },
    ],
    total: [{ value: 62.5, currency: 'EUR' }],
    unpriced: 1,
    budget: { value: 60, currency: 'EUR' },
    left: { value: -2.5, currency: 'EUR' },
  },
  assembly: [],
  machining: [],
  track: null,
  trackPlan: null,
  wiring: null,
  scenery: null,
  requests: [],
  steps,
  log: [],
  state: logState({ records: [], parts, steps, benches: [], measurable: [], budget: null, toBuy: null, today: null }),
  findings: [
    {
      rule: 'deck-seam-bearing',
      level: 'care',
      where: 'deck.seam-1',
      chapter: 'benchwork',
      what: say`The deck’s seam bears on ${length(8.85)} a side.`,
      figure: 8.85,
      limit: 20,
      unit: 'mm',
      mend: say`Glue a batten of ${length(40)} along the strut.`,
      source: 'common practice, no source',
      accepted: null,
    },
    {
      rule: 'strip-width',
      level: 'halt',
      where: 'side',
      chapter: 'benchwork',
      what: say`The side is wider than the saw rips.`,
      figure: 700,
      limit: 600,
      unit: 'mm',
      mend: say`Rip it at the yard.`,
      source: 'the saw in notebook.md',
      accepted: null,
    },
    {
      rule: 'unmeasured',
      level: 'note',
      where: 'deck',
      chapter: 'benchwork',
      what: say`The deck’s sheet has not been measured.`,
      figure: null,
      limit: null,
      unit: 'mm',
      mend: say`Measure it.`,
      source: 'common practice, no source',
      accepted: null,
    },
  ],
};

export const prose: readonly Prose[] = [
  {
    chapter: 'benchwork',
    file: 'notebooks/bittern-basin/benchwork.md',
    firstLine: 1,
    body: 'The sides are :value[side] tall.\n\n::drawing{of=benchwork.plan}\n\n## rip-strips\n\nFull lengths first.\n\n::parts\n\n::cut-list\n\n## Still open\n\nMore later.',
  },
  {
    chapter: 'track',
    file: 'notebooks/bittern-basin/track.md',
    firstLine: 1,
    body: 'An oval.\n\n## draw-lines\n\nOn the bare deck.',
  },
];
