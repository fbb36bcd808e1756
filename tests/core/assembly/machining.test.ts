import { describe, expect, it } from 'vitest';
import { machiningOf } from '../../../src/core/assembly/machining/machining.ts';
import { type Machines, USUAL_MACHINES } from '../../../src/core/assembly/machining/operation.ts';
import { operationsOf } from '../../../src/core/assembly/machining/operations.ts';
import { lostTo, sequenced } from '../../../src/core/assembly/machining/sequence.ts';
import { checkWrittenOrder } from '../../../src/core/assembly/machining/written-order.ts';
import type { Feature, Part } from '../../../src/core/stock/part.ts';
import { spoken } from '../../../src/core/units/say.ts';
import { model, table } from '../benchwork/example.ts';

const DADO: Feature = {
  id: 'dado-1',
  kind: 'dado',
  side: 'face',
  patch: { x0: 300, x1: 318, y0: 0, y1: 100 },
  depth: 6,
  corner: 0,
};
const TAPER: Feature = { id: 'taper-1', kind: 'taper', edge: 'bottom', from: [0, 40], to: [600, 0] };
const MITRE: Feature = { id: 'mitre-1', kind: 'mitre', edge: 'right', angle: Math.PI / 4, long: 'face' };
const TRIM: Feature = { id: 'trim-1', kind: 'trim', edge: 'top', by: 3 };

/** A leg with a taper, made for the test. */
function leg(features: readonly Feature[]): Part {
  return {
    id: 'leg.left',
    label: 'G1',
    role: 'leg',
    chapter: 'benchwork',
    bench: 'table',
    stock: 'birch-ply-18',
    blank: { length: 600, width: 100, thickness: 18, grain: 'length' },
    features,
    places: [
      { id: 'leg.left', label: 'G1', pose: { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] }, marks: [] },
    ],
    cutAfterMeasuring: false,
    phase: 'now',
  };
}

const text = (sentence: Parameters<typeof spoken>[0]) => spoken(sentence, (mm) => `${mm} mm`);

describe('the order of machining', () => {
  it('puts mitres and dados before a taper, and trims last (common practice)', () => {
    const kinds = sequenced(operationsOf(leg([TRIM, TAPER, MITRE, DADO]), USUAL_MACHINES)).map(({ kind }) => kind);
    expect(kinds).toEqual(['rip', 'crosscut', 'dado', 'mitre', 'taper', 'trim']);
  });

  it('counterbores before the hole takes its centre away', () => {
    const hole: Feature = { id: 'hole-1', kind: 'hole', at: [50, 50], diameter: 6, side: 'face', depth: 'through' };
    const bore: Feature = { id: 'bore-1', kind: 'counterbore', at: [50, 50], diameter: 14, side: 'face', depth: 5 };
    const ids = sequenced(operationsOf(leg([hole, bore]), USUAL_MACHINES)).map(({ id }) => id);
    expect(ids).toEqual(['rip', 'crosscut', 'bore-1', 'hole-1']);
  });

  it('needs nothing that an earlier operation took, for every part of the demo table', () => {
    for (const { operations } of machiningOf(model(table([17.7])).parts, USUAL_MACHINES)) {
      operations.forEach((later, i) => {
        for (const earlier of operations.slice(0, i)) expect(lostTo(later, earlier)).toEqual([]);
      });
    }
  });

  it('tells a written order that tapers first, why, and the right one', () => {
    const part = leg([DADO, TAPER]);
    const [told, ...more] = checkWrittenOrder(part, ['taper-1', 'dado-1']);
    expect(more).toEqual([]);
    expect(told?.level).toBe('halt');
    expect(told?.where).toBe('leg.left');
    expect(text(told?.what ?? [])).toBe(
      'taper-1 is written before dado-1, and it takes away the straight edge at the bottom that dado-1 is set against',
    );
    expect(text(told?.mend ?? [])).toBe('cut in this order: dado-1, taper-1');
    expect(checkWrittenOrder(part, ['dado', 'taper'])).toEqual([]);
    expect(checkWrittenOrder(part, ['dado', 'planing']).map(({ rule }) => rule)).toEqual(['operation-unknown']);
  });
});

describe('set-ups', () => {
  const machines: Machines = { bits: [6.35, 12.7, 19.05], base: 75, perPass: null };

  it('set the guide so that the bit reaches both edges of the cut, in passes of half the bit', () => {
    const dado = operationsOf(leg([DADO]), machines).find(({ kind }) => kind === 'dado');
    // base 75, bit 12.7: its middle runs at 306.35 and at 311.65
    expect(dado?.setUp.bit).toBe(12.7);
    expect(dado?.setUp.straightedge).toEqual([expect.closeTo(231.35, 9), expect.closeTo(236.65, 9)]);
    expect(dado?.setUp.stop).toBe(300);
    expect(dado?.setUp.passes).toBe(1);
    const thin = operationsOf(leg([DADO]), USUAL_MACHINES).find(({ kind }) => kind === 'dado');
    expect(thin?.setUp.passes).toBe(2);
    // nearer to the left end than the base is wide: the guide lies beyond the cut, on the part
    const near = { ...DADO, patch: { ...DADO.patch, x0: 10, x1: 28 } };
    const early = operationsOf(leg([near]), machines).find(({ kind }) => kind === 'dado');
    expect(early?.setUp.straightedge).toEqual([expect.closeTo(91.35, 9), expect.closeTo(96.65, 9)]);
  });

  it('gang what is cut alike and try each setting in scrap once', () => {
    const machined = machiningOf(model(table([17.7])).parts, machines);
    const slots = machined.flatMap(({ operations }) => operations.filter(({ kind }) => kind === 'slot'));
    expect(slots.find(({ setUp }) => setUp.together.includes('strut.across-1'))?.setUp.together).toEqual([
      'strut.across-1',
      'strut.across-2',
      'strut.across-3',
    ]);
    expect(slots.filter(({ setUp }) => setUp.scrapFirst)).toHaveLength(1);
    const dados = machined.flatMap(({ operations }) => operations.filter(({ kind }) => kind === 'dado'));
    expect(
      dados.some(({ setUp }) => setUp.together.includes('side.front') && setUp.together.includes('side.back')),
    ).toBe(true);
  });
});
