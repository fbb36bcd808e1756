import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CutAnswer, CutJob } from '../../src/core/cutting/job.ts';
import { layOut } from '../../src/core/cutting/layout.ts';
import { LAWS, type Law, withCut, withPart } from './cutting-laws.ts';

const JOBS = 2000;
const SEED = 1879;

describe('every layout', () => {
  const { jobs, answers } = sample();

  it.each(Object.entries(LAWS))(`keeps the law %s on ${JOBS} random jobs`, (_, law: Law) => {
    const broken = jobs.flatMap((job, i) =>
      law(job, answers[i] ?? nothing).map((what) => ({ what, job: JSON.stringify(job) })),
    );
    expect(broken.slice(0, 3)).toEqual([]);
  });

  it('is the same for the same job', () => {
    for (const job of jobs.slice(0, 100)) expect(JSON.stringify(layOut(job))).toBe(JSON.stringify(layOut(job)));
  });

  it('places all parts of most random jobs', () => {
    const valid = answers.filter((answer) => answer.unplaced.length === 0).length / JOBS;
    console.log(`random jobs with every part placed: ${(100 * valid).toFixed(1)} %`);
    expect(valid).toBeGreaterThan(0.7);
  });
});

describe('each law fails on a planted fault', () => {
  const job: CutJob = {
    stock: [
      {
        ...{ id: 'ply', length: 2440, width: 1220, grain: 'length', price: 50 },
        ...{ count: null, offcut: false, noGo: [] },
      },
    ],
    parts: [
      { id: 'side', length: 1600, width: 170, quantity: 2, grain: 'length' },
      { id: 'strut', length: 1076.4, width: 135, quantity: 8, grain: 'length' },
    ],
    ...{ kerf: 2.4, trim: 10, style: { kind: 'saw', stages: 3 }, keep: 150, budget: 10 },
  };
  const good = layOut(job);
  const [sheet] = good.sheets;
  const deep = layOut({ ...job, style: { kind: 'saw', stages: 'any' }, parts: spiral() });
  const faults: readonly (readonly [keyof typeof LAWS, string, CutJob, CutAnswer])[] = [
    ['inside', 'a part over the edge', job, withPart(good, (part) => ({ ...part, x: -1 }))],
    [
      'inside',
      'a part on a knot',
      { ...job, stock: job.stock.map((s) => ({ ...s, noGo: [{ x: 0, y: 0, length: 600, width: 600 }] })) },
      good,
    ],
    ['kerfBetween', 'a part a millimetre too near', job, withPart(good, (part) => ({ ...part, y: part.y + 1 }))],
    ['kerfBetween', 'a wider saw than planned', { ...job, kerf: 3.2 }, good],
    ['grainKept', 'a part cut small', job, withPart(good, (part) => ({ ...part, width: part.width - 0.5 }))],
    [
      'grainKept',
      'a sheet with its grain across',
      { ...job, stock: job.stock.map((s) => ({ ...s, grain: 'width' })) },
      good,
    ],
    [
      'allThere',
      'one part more asked for',
      { ...job, parts: job.parts.map((p) => ({ ...p, quantity: p.quantity + 1 })) },
      good,
    ],
    [
      'cutsGiveParts',
      'a cut forgotten',
      job,
      { ...good, sheets: good.sheets.map((s) => ({ ...s, cuts: s.cuts.slice(0, -1) })) },
    ],
    ['cutsGiveParts', 'a fence set wrong', job, withCut(good, (cut) => ({ ...cut, setting: cut.setting + 1 }))],
    [
      'cutsGiveParts',
      'a blade beside its place',
      job,
      withCut(good, (cut) => ({ ...cut, kerf: { ...cut.kerf, x: cut.kerf.x + 1, y: cut.kerf.y + 1 } })),
    ],
    [
      'cutsGiveParts',
      'cuts in another order',
      job,
      { ...good, sheets: good.sheets.map((s) => ({ ...s, cuts: s.cuts.toReversed() })) },
    ],
    ['stagesKept', 'a layout of many rounds', { ...job, parts: spiral() }, deep],
    ['materialAddsUp', 'an offcut not told', job, { ...good, sheets: good.sheets.map((s) => ({ ...s, offcuts: [] })) }],
    [
      'boundsHold',
      'a bound above what was found',
      job,
      { ...good, bounds: good.bounds.map((b) => ({ ...b, bound: b.found + 1 })) },
    ],
    ['boundsHold', 'a sliver kept', { ...job, keep: 2000 }, good],
    ['stockKept', 'one sheet in hand, more used', { ...job, stock: job.stock.map((s) => ({ ...s, count: 0 })) }, good],
    [
      'shortOnSled',
      'a short piece at the fence',
      job,
      {
        ...good,
        sheets: good.sheets.map((s) => ({
          ...s,
          cuts: s.cuts.map((cut) => ({
            ...cut,
            ...{ kind: 'rip', from: { ...cut.from, length: 70.8 }, cautions: ['narrow-rip'] },
          })),
        })),
      },
    ],
    ['numbers', 'no number', job, withPart(good, (part) => ({ ...part, x: Number.NaN }))],
  ];

  it.each(faults)('%s: %s', (name, _, faulty, answer) => {
    expect(sheet?.parts.length).toBeGreaterThan(1);
    expect(LAWS[name](job, good)).toEqual([]);
    expect(LAWS[name](faulty, answer).length).toBeGreaterThan(0);
  });
});

const nothing: CutAnswer = { sheets: [], bounds: [], unplaced: [], work: 0 };

/** Parts that fill a sheet only in four rounds of cuts. */
function spiral(): CutJob['parts'] {
  const sizes = [
    [2420, 400],
    [1500, 797.6],
    [917.6, 300],
    [500, 495.2],
    [415.2, 240],
    [415.2, 252.8],
  ] as const;
  return sizes.map(([length, width], i) => ({ id: `s${i}`, length, width, quantity: 1, grain: 'length' }));
}

function sample(): { readonly jobs: readonly CutJob[]; readonly answers: readonly CutAnswer[] } {
  const jobs = fc.sample(anyJob(), { numRuns: JOBS, seed: SEED });
  return { jobs, answers: jobs.map(layOut) };
}

/** Lengths as they come: tenths of a millimetre, or sixty-fourths of an inch. */
function anyLength(from: number, to: number): fc.Arbitrary<number> {
  return fc.oneof(
    fc.integer({ min: from * 10, max: to * 10 }).map((n) => n / 10),
    fc.integer({ min: Math.ceil((from * 64) / 25.4), max: Math.floor((to * 64) / 25.4) }).map((n) => (n * 25.4) / 64),
  );
}

function anyJob(): fc.Arbitrary<CutJob> {
  const grain = fc.constantFrom('length', 'width', 'any');
  const spot = fc.record({
    x: anyLength(0, 1500),
    y: anyLength(0, 900),
    length: anyLength(1, 200),
    width: anyLength(1, 200),
  });
  const stock = fc.record({
    ...{
      id: fc.constant(''),
      length: anyLength(900, 2500),
      width: anyLength(500, 1300),
      grain,
      price: fc.integer({ min: 0, max: 90 }),
    },
    ...{ count: fc.constantFrom(null, null, null, 1, 3), offcut: fc.constantFrom(false, false, true) },
    noGo: fc.oneof(
      { weight: 4, arbitrary: fc.constant([]) },
      { weight: 1, arbitrary: fc.array(spot, { maxLength: 2 }) },
    ),
  });
  const part = fc.record({
    id: fc.constant(''),
    length: anyLength(20, 800),
    width: anyLength(20, 420),
    quantity: fc.integer({ min: 0, max: 6 }),
    grain,
  });
  const endless = { id: 'endless', length: 2440, width: 1220, price: 60, count: null, offcut: false, noGo: [] };
  return fc
    .record({
      stock: fc.tuple(grain, fc.array(stock, { maxLength: 2 })).map(([g, more]) => [{ ...endless, grain: g }, ...more]),
      parts: fc.array(part, { minLength: 1, maxLength: 9 }),
      ...{
        kerf: fc.constantFrom(0, 1.8, 2.4, 3.175),
        trim: fc.constantFrom(0, 0, 5, 10),
        keep: anyLength(50, 400),
        budget: fc.integer({ min: 0, max: 12 }),
      },
      style: fc.constantFrom(
        { kind: 'saw', stages: 2 } as const,
        { kind: 'saw', stages: 3 } as const,
        { kind: 'saw', stages: 'any' } as const,
        { kind: 'router', bit: 6.35 } as const,
      ),
    })
    .map((job) => ({
      ...job,
      stock: job.stock.map((one, i) => ({ ...one, id: `stock-${i}` })),
      parts: job.parts.map((one, i) => ({ ...one, id: `part-${i}` })),
    }));
}
