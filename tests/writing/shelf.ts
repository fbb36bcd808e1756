import { logState } from '../../src/core/log/state.ts';
import type { Notebook } from '../../src/core/notebook.ts';
import { length, say } from '../../src/core/units/say.ts';

const told: Omit<Notebook, 'state'> = {
  slug: 'shelf',
  title: 'A "shelf", = two words',
  scale: 'OO',
  show: 'mm',
  makers: ['you'],
  licence: 'CC-BY-4.0',
  dimensions: [
    { name: 'length', amount: { value: 1200, dimension: 'length' }, text: '1.2 m' },
    { name: 'climb', amount: { value: 1 / 150, dimension: 'grade' }, text: '1:150' },
  ],
  thicknesses: [
    {
      stock: 'ply',
      nominal: 12,
      listed: 11.8,
      low: 11.5,
      high: 12.1,
      mean: 11.73333333,
      thickest: 11.9,
      measured: true,
    },
  ],
  stock: [],
  benches: [
    {
      id: 'shelf',
      construction: 'lapped-grid',
      place: { x: 0, y: 0, turn: Math.PI / 2 },
      phase: 'now',
      length: 1200,
      width: 300,
      deckTop: 900,
      sideTop: 893.5,
      sideUnderside: 803.5,
      strutUnderside: 823.5,
    },
  ],
  parts: [
    {
      id: 'side',
      label: '=A',
      role: 'side',
      chapter: 'benchwork',
      bench: 'shelf',
      stock: 'ply',
      blank: { length: 1200.00049, width: 90, thickness: 11.73333333, grain: 'length' },
      features: [
        {
          kind: 'stopped-dado',
          depth: 3.9,
          corner: 3.175,
          patch: { x0: 0, x1: 12.0333333, y0: 20, y1: 90 },
          side: 'back',
          for: 'end.left',
          id: 'dado-1',
        },
        { id: 'mitre-1', kind: 'mitre', edge: 'left', angle: Math.PI / 4, long: 'face' },
      ],
      places: ['front', 'back'].map((where, i) => ({
        id: `side.${where}`,
        label: `A${i + 1}`,
        pose: { origin: [0, 100 * i, 803.5], x: [1, 0, 0], y: [0, -0, 1], z: [0, -1, 1 / 3] },
        marks: [{ text: 'up', side: 'face', at: [600, 80.00049], kind: 'up' }],
      })),
      cutAfterMeasuring: true,
      phase: 'now',
    },
    {
      id: 'flap',
      label: 'B',
      role: 'deck',
      chapter: 'benchwork',
      bench: 'shelf',
      stock: 'ply, second choice',
      blank: { length: 254, width: 25.4, thickness: 6.35, grain: 'any' },
      features: [],
      places: [],
      cutAfterMeasuring: false,
      phase: 'later',
    },
  ],
  joints: [{ id: 'j1', kind: 'dado', between: ['side.front', 'end.left'], clearance: 0.3, relief: 0, held: 'glue' }],
  seams: [
    { id: 'deck.seam-1', bench: 'shelf', from: [600, 0], to: [600, 300], on: 'strut', bearing: [5.8666667, 5.8666667] },
  ],
  envelopes: [
    { id: 'leg.left.caster', of: 'leg.left', kind: 'caster', min: [-14.90000001, 0, 0], max: [121.1, 136, 100] },
  ],
  fasteners: [
    {
      ...{ id: 'screw.bearing.side.front.deck.1.1', item: 'screw-4x30', form: 'screw', diameter: 4, length: 30 },
      ...{ holds: 'bearing.side.front.deck.1', through: ['deck.1', 'side.front'] },
      ...{ head: [40, 9, 100], direction: [0, 0, -1] },
    },
  ],
  hardware: [{ item: 'screw-4x30', quantity: 12, length: 30, where: 'deck.1' }],
  masses: { side: 0.81234567 },
  sheets: [
    {
      stock: 'ply',
      length: 2440,
      width: 1220,
      kerf: 2.4,
      parts: [{ part: 'side', x: 10, y: 10, length: 1200, width: 90, turned: false }],
      cuts: [
        {
          number: 1,
          kind: 'rip',
          from: { x: 0, y: 0, length: 2440, width: 1220 },
          setting: 90,
          kerf: { x: 0, y: 90, length: 2440, width: 2.4 },
          yields: [{ x: 0, y: 0, length: 2440, width: 90 }],
          stage: 1,
          cautions: [],
        },
      ],
      offcuts: [{ x: 0, y: 92.4, length: 2440, width: 1127.6 }],
      waste: [{ x: 0, y: 1219.9, length: 2440, width: 0.1 }],
    },
  ],
  bounds: [{ stock: 'ply', found: 1, bound: 1, proved: true }],
  offcuts: [
    { label: 'K1', stock: 'ply', thickness: 11.7333333, from: 1, used: null, x: 0, y: 200, length: 400, width: 150 },
  ],
  yard: [
    {
      stock: 'ply',
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
  whatIf: [{ stock: 'ply', part: 'side', side: 'width', from: 90, to: 84, sheets: 2, fewer: 1 }],
  shopping: {
    lines: [
      {
        ...{ stock: 'ply', name: '=Plywood, birch', unit: 'sheet', size: { length: 2440, width: 1220 }, quantity: 1 },
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
  track: null,
  trackPlan: null,
  wiring: null,
  scenery: null,
  requests: [
    { by: 'pond', part: 'side.front', kind: 'notch', at: [60, 9, 90], size: [20, 8.5], limit: 15, chapter: 'scenery' },
  ],
  machining: [
    {
      part: 'side.front',
      operations: [
        {
          id: 'dado-1',
          kind: 'dado',
          tool: 'router',
          needs: ['edge.bottom'],
          destroys: [],
          features: ['dado-1'],
          setUp: {
            fence: null,
            stop: 395.375,
            straightedge: [326.725],
            bit: 12.7,
            depth: 5.9,
            passes: 1,
            together: [],
            scrapFirst: true,
          },
        },
      ],
    },
  ],
  steps: [
    {
      id: 'benchwork.rip',
      chapter: 'benchwork',
      title: 'Rip the strips',
      generated: true,
      makes: ['side.front'],
      tools: ['table-saw'],
      people: 2,
      minutes: null,
      wait: 0,
      child: 'away',
      where: 'workshop',
      after: [],
      closes: null,
      cautions: [{ id: 'saw', text: 'Keep hands off the line of cut.', source: 'HSE' }],
      lines: [say`Set the fence to ${length(90.04)}.`],
    },
  ],
  log: [
    {
      id: '2026-05-02-started',
      date: '2026-05-02',
      chapter: 'benchwork',
      title: 'Started',
      minutes: 15,
      people: 1,
      kinds: ['measurement', 'change'],
      done: [],
      made: ['side.front'],
      placed: [],
      apart: [],
      measured: [
        {
          what: 'frame.thickness',
          readings: [11.6, 11.9],
          texts: ['11.6 mm', '11.9 mm'],
          mean: 11.75,
          thickest: 11.9,
          thinnest: 11.6,
          with: 'caliper',
          within: null,
        },
      ],
      changes: [
        {
          kind: 'set',
          dimension: 'length',
          set: 'dimensions.width',
          was: 280,
          to: 300,
          wasText: '280 mm',
          toText: '30 cm',
          because: 'the sill is wider',
        },
      ],
      fixes: [
        { part: 'side.front', at: 310.0004, from: 'left', what: 'a split', cause: null, mend: 'glue', leaves: 'half' },
      ],
      laid: [],
      trials: [],
      decided: [],
      hidden: [{ id: 'sill', access: 'lifts off', photo: null, test: null }],
      photos: [],
      upkeep: [],
      spent: { value: 18.5, currency: 'EUR' },
      accepted: [],
    },
  ],
  findings: [
    {
      rule: 'deck-seam-bearing',
      level: 'care',
      where: 'deck.seam-1',
      chapter: 'benchwork',
      what: say`The seam bears on ${length(5.8666667)} a side.`,
      figure: 5.8666667,
      limit: 10,
      unit: 'mm',
      mend: say`Screw a batten of ${length(30)} beside it.`,
      source: 'common practice, no source',
      accepted: null,
    },
  ],
};

const { log: records, parts, steps } = told;
const nothing = { benches: [], measurable: ['frame.thickness'], budget: null, toBuy: null, today: null };

/** One small notebook, made up, with every list filled and figures that need rounding. */
export const shelf: Notebook = { ...told, state: logState({ records, parts, steps, ...nothing }) };
