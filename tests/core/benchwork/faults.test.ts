import { describe, expect, it } from 'vitest';
import { frame } from '../../../src/core/benchwork/frame.ts';
import type { BenchInput, BenchworkInput, Struts } from '../../../src/core/benchwork/input.ts';
import { knownThickness } from '../../../src/core/stock/thickness-check.ts';
import { type DIMENSIONS, model, PLY_18, sheet, TABLE, table } from './example.ts';

function faults(input: BenchworkInput) {
  const result = frame(input);
  return result.ok ? [] : result.faults;
}

const sized = (dimensions: Partial<typeof DIMENSIONS>) => faults(table([17.7], dimensions));
const built = (bench: Partial<BenchInput>) => faults(table([17.7], {}, bench));
const spread = (across: Struts): Partial<BenchInput> => ({
  struts: { along: { kind: 'even', count: 1 }, across },
  deck: null,
});

describe('what cannot be laid out is a fault with what can be had', () => {
  it('a strut deeper than the side', () => {
    expect(sized({ strut: 180 })).toMatchObject([
      {
        rule: 'strut-deeper-than-side',
        at: 'benchwork.dimensions.strut',
        mend: 'make the struts at most 170 mm (6.693 in), or the sides at least 180 mm (7.087 in)',
      },
    ]);
  });

  it('nothing, less than nothing, and no number', () => {
    for (const bad of [0, -1600, Number.NaN, Number.POSITIVE_INFINITY, 1e12]) {
      expect(sized({ length: bad })).toMatchObject([
        { rule: 'dimension-impossible', at: 'benchwork.dimensions.length' },
      ]);
    }
    expect(sized({ clearance: -0.3 })).toMatchObject([{ at: 'benchwork.dimensions.clearance' }]);
    expect(sized({ clearance: 0, 'lap-relief': 0 })).toEqual([]);
  });

  it('a frame too small for its own boards', () => {
    expect(sized({ width: 35 })).toMatchObject([{ rule: 'no-room', at: 'benchwork.dimensions.width' }]);
  });

  it('a table that reaches below the floor', () => {
    expect(sized({ height: 150 })).toMatchObject([
      {
        rule: 'below-the-floor',
        mend: 'make the height at least 179.2 mm (7.055 in), or the sides at most 140.8 mm (5.543 in)',
      },
    ]);
  });

  it('ten thousand struts, half a strut, a negative one', () => {
    for (const count of [10_000, 2.5, -1]) {
      expect(built(spread({ kind: 'even', count }))).toMatchObject([
        { rule: 'strut-count', at: 'benchwork.benches.0.struts.across' },
      ]);
    }
  });

  it('more struts than the length holds: the most is named, and can be built', () => {
    const narrow = { ...table([17.7], { length: 400 }, spread({ kind: 'even', count: 30 })) };
    const [fault] = faults(narrow);
    expect(fault).toMatchObject({ rule: 'struts-too-many', at: 'benchwork.benches.0.struts.across' });
    const most = Number(/at most (\d+)/.exec(fault?.mend ?? '')?.[1]);
    const strips = { flangeStrips: null };
    expect(faults(table([17.7], { length: 400 }, { ...spread({ kind: 'even', count: most }), ...strips }))).toEqual([]);
    expect(most).toBe(9);
  });

  it('struts at places that meet, out of order or in the frame', () => {
    expect(built(spread({ kind: 'at', at: [400, 410] }))).toMatchObject([
      { rule: 'strut-place', at: 'benchwork.benches.0.struts.across.at.1' },
    ]);
    expect(built(spread({ kind: 'at', at: [800, 400] }))).toMatchObject([{ rule: 'strut-place' }]);
    expect(built(spread({ kind: 'at', at: [10] }))).toMatchObject([
      { mend: 'keep it between 27 mm (1.063 in) and 1573 mm (61.929 in), in rising order' },
    ]);
    expect(built(spread({ kind: 'at', at: [1600] }))).toHaveLength(1);
    expect(built(spread({ kind: 'at', at: [Number.NaN] }))).toHaveLength(1);
    expect(built({ ...spread({ kind: 'at', at: [200, 1400] }), flangeStrips: null })).toEqual([]);
  });

  it('a seam on no strut, or across its strut', () => {
    const seam = (on: string, parallelTo: 'x' | 'y' = 'y') =>
      built({ deck: { overhang: 3, flush: 'front-left', seams: [{ parallelTo, on }] } });
    expect(seam('strut.across-4')).toMatchObject([
      {
        rule: 'seam-without-strut',
        at: 'benchwork.benches.0.deck.seam.on',
        mend: 'lay it on one of strut.across-1, strut.across-2, strut.across-3',
      },
    ]);
    expect(seam('strut.across-1', 'x')).toHaveLength(1);
    expect(seam('strut.along-1', 'x')).toEqual([]);
  });

  it('flange strips that run into each other', () => {
    const [fault] = built({ flangeStrips: 800 });
    expect(fault).toMatchObject({ rule: 'flange-strip-width', mend: 'use at most 395.575 mm (15.574 in)' });
    expect(built({ flangeStrips: 395.575 })).toEqual([]);
  });

  it('a step of the machine so coarse that a dado goes through or away', () => {
    const coarse = { ...table([17.7]), machining: { step: 40, bit: 6.35 } };
    expect(faults(coarse)).toMatchObject([{ rule: 'setting-step', at: 'benchwork.machining.round-to' }]);
    expect(faults({ ...table([17.7]), machining: { step: 0, bit: null } })).toHaveLength(1);
    expect(faults({ ...table([17.7]), machining: { step: 0.1, bit: -1 } })).toHaveLength(1);
  });

  it('missing dimensions, materials and struts', () => {
    const { side: _gone, ...dimensions } = table([17.7]).dimensions;
    expect(faults({ ...table([17.7]), dimensions })).toMatchObject([
      { rule: 'dimension-missing', what: 'a lapped grid needs the dimension side' },
    ]);
    expect(faults({ ...table([17.7]), materials: {} })).toHaveLength(2);
    expect(built({ struts: null })).toMatchObject([{ rule: 'struts-missing' }]);
  });

  it('two benches of one name, and a construction nobody computes yet', () => {
    const input = table([17.7]);
    expect(faults({ ...input, benches: [TABLE, TABLE] })).toMatchObject([{ rule: 'bench-twice' }]);
    expect(built({ construction: 'girder' })).toMatchObject([
      { rule: 'construction-not-computed', at: 'benchwork.benches.0.construction' },
    ]);
  });
});

describe('what works at a cost is a finding', () => {
  const rules = (input: BenchworkInput) => model(input).findings.map(({ rule, level }) => `${rule} ${level}`);

  it('the demo table has its seam and nothing else', () => {
    expect(rules(table([17.7]))).toEqual(['deck-seam-bearing care']);
  });

  it('clearance and relief outside common practice, 1/64 in inside it', () => {
    expect(rules(table([17.7], { clearance: 0.6 }))).toContain('clearance-unusual care');
    expect(rules(table([17.7], { clearance: 0.05 }))).toContain('clearance-unusual care');
    expect(rules(table([17.7], { 'lap-relief': 1 }))).toContain('lap-relief-unusual care');
    expect(rules(table([17.7], { clearance: 25.4 / 64 }))).toEqual(['deck-seam-bearing care']);
  });

  it('a dado deeper than half the sheet', () => {
    const deep = model({ ...table([17.7]), machining: { step: 10, bit: 6.35 } }).findings.find(
      ({ rule }) => rule === 'dado-too-deep',
    );
    expect(deep).toMatchObject({ level: 'halt', figure: 10, limit: 8.85 });
  });

  it('laps and bays that leave too little wood', () => {
    const strips = { flangeStrips: null, deck: null };
    expect(rules(table([17.7], { strut: 30, side: 40 }, strips))).toEqual(['lap-leaves-little care']);
    expect(rules(table([17.7], { strut: 14, side: 40 }, strips))).toEqual(['lap-leaves-little halt']);
    const many = { ...strips, ...spread({ kind: 'even', count: 35 }), flangeStrips: null };
    expect(rules(table([17.7], {}, many))).toEqual(['struts-too-close care']);
  });

  it('flange strips that hang below the sides, a bit wider than the dado, a bit nobody named', () => {
    expect(rules(table([17.7], { strut: 160 }))).toContain('flange-strips-below-sides care');
    expect(rules({ ...table([17.7]), machining: { step: 0.1, bit: 19 } })).toContain('bit-too-wide halt');
    expect(rules({ ...table([17.7]), machining: { step: 0.1, bit: null } })).toContain('bit-not-named note');
  });

  it('a part no sheet holds: halt with the largest that fits', () => {
    const long = model(table([17.7], { length: 3000 })).findings.filter(({ rule }) => rule === 'larger-than-stock');
    expect(long.find(({ where }) => where === 'side.front')).toMatchObject({
      level: 'halt',
      figure: 3000,
      limit: 2440,
    });
    expect(long.find(({ where }) => where === 'side.front')?.mend).toContainEqual({ length: 2440, way: 'down' });
  });

  it('a part that fits only across the grain', () => {
    const short = sheet('short-grain', PLY_18.thickness, [2440, 1220]);
    const turned = { ...short, sizes: short.sizes.map((size) => ({ ...size, grain: 'width' as const })) };
    const input = table([17.7]);
    const findings = model({
      ...input,
      materials: { ...input.materials, frame: { stock: turned, thickness: knownThickness(turned, [17.7]) } },
    }).findings;
    expect(findings.filter(({ rule }) => rule === 'grain-across').map(({ where }) => where)).toEqual([
      'side.front',
      'strut.along-1',
      'flange.along-1',
    ]);
  });
});
