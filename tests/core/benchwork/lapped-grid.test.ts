import { describe, expect, it } from 'vitest';
import type { BenchworkModel } from '../../../src/core/benchwork/input.ts';
import { placedBox } from '../../../src/core/geometry/solid.ts';
import type { Feature } from '../../../src/core/stock/part.ts';
import { partSolid } from '../../../src/core/stock/solid.ts';
import { instance, model, table } from './example.ts';

function size(built: BenchworkModel, id: string) {
  return instance(built, id).part.blank;
}

function features(built: BenchworkModel, id: string, kind: Feature['kind']): readonly Feature[] {
  return instance(built, id).part.features.filter((feature) => feature.kind === kind);
}

/** The box around placed parts of some roles, from their solids. */
function outside(built: BenchworkModel, roles: readonly string[]) {
  const boxes = built.parts
    .filter(({ role }) => roles.includes(role))
    .flatMap((part) => part.places.map(({ pose }) => placedBox(partSolid(part), pose)));
  const extent = (axis: 0 | 1 | 2) =>
    Math.max(...boxes.map(({ max }) => max[axis])) - Math.min(...boxes.map(({ min }) => min[axis]));
  return [extent(0), extent(1), extent(2)].map((mm) => Math.round(mm * 1e6) / 1e6);
}

const FRAME = ['side', 'end', 'strut'];

describe('the demo table in plywood measured 17.7', () => {
  const built = model(table([17.7]));

  it('cuts ends and struts to the outside less what is left behind the dados', () => {
    expect(size(built, 'end.left').length).toBe(1076.4);
    expect(size(built, 'strut.across-2').length).toBe(1076.4);
    expect(size(built, 'strut.along-1').length).toBe(1576.4);
    expect(size(built, 'side.front').length).toBe(1600);
  });

  it('sets rabbets and dados a third deep and slots wider than the thickest reading', () => {
    const side = instance(built, 'side.front').part.features;
    expect(side.map(({ kind }) => kind)).toEqual(['rabbet', 'stopped-dado', 'stopped-dado', 'stopped-dado', 'rabbet']);
    for (const feature of side) {
      if (feature.kind !== 'rabbet' && feature.kind !== 'stopped-dado') continue;
      expect(feature.depth).toBe(5.9);
      expect(feature.patch.x1 - feature.patch.x0).toBeCloseTo(18, 9);
    }
  });

  it('laps the struts half their depth and the relief, one family from above, the other from below', () => {
    const [above] = features(built, 'strut.across-1', 'notch');
    const below = features(built, 'strut.along-1', 'notch');
    expect(above).toMatchObject({ edge: 'top', patch: { y0: 67.1, y1: 135 } });
    expect(below).toHaveLength(3);
    for (const slot of below) expect(slot).toMatchObject({ edge: 'bottom', patch: { y0: 0, y1: 67.9 } });
  });

  it('hangs the struts 35.0 above the underside of the sides, the deck top at 700', () => {
    const [bench] = built.benches;
    expect((bench?.strutUnderside ?? 0) - (bench?.sideUnderside ?? 0)).toBeCloseTo(35, 9);
    const deck = instance(built, 'deck.1');
    expect(placedBox(partSolid(deck.part), deck.place.pose).max[2]).toBeCloseTo(700, 9);
  });

  it('keeps the outside of the frame, measured from the placed solids', () => {
    expect(outside(built, FRAME)).toEqual([1600, 1100, 170]);
  });

  it('leaves equal bays of 377.875 by 523.45', () => {
    const [first, second] = ['strut.across-1', 'strut.across-2'].map((id) => {
      const { part, place } = instance(built, id);
      return placedBox(partSolid(part), place.pose);
    });
    expect((second?.min[0] ?? 0) - (first?.max[0] ?? 0)).toBeCloseTo(377.875, 9);
    const along = instance(built, 'strut.along-1');
    expect(placedBox(partSolid(along.part), along.place.pose).min[1] - 17.7).toBeCloseTo(523.45, 9);
  });

  it('cuts the deck larger by its overhang and brings it to the frame by its trims', () => {
    expect(size(built, 'deck.1')).toMatchObject({ length: 1195.575, width: 1103 });
    expect(size(built, 'deck.2')).toMatchObject({ length: 407.425, width: 1103 });
    expect(outside(built, ['deck'])).toEqual([1600, 1100, 9.2]);
  });

  it('makes one part of pieces that are alike, with a place each', () => {
    expect(built.parts.map(({ id, places }) => [id, places.length])).toEqual([
      ['side.front', 2],
      ['end.left', 2],
      ['strut.across-1', 3],
      ['strut.along-1', 1],
      ['flange.along-1', 1],
      ['flange.across-1-1', 6],
      ['deck.1', 1],
      ['deck.2', 1],
    ]);
  });

  it('runs flange strips whole under the along struts, in pieces under the across struts', () => {
    expect(size(built, 'flange.along-1').length).toBe(1564.6);
    expect(size(built, 'flange.across-1-1').length).toBe(502.3);
    const strip = instance(built, 'flange.along-1');
    const box = placedBox(partSolid(strip.part), strip.place.pose);
    expect(box.max[2]).toBeCloseTo(built.benches[0]?.strutUnderside ?? 0, 9);
  });

  it('says that a seam on one strut bears on 8.85 a side, and what would do', () => {
    const seam = built.findings.find(({ rule }) => rule === 'deck-seam-bearing');
    expect(seam).toMatchObject({ level: 'care', where: 'deck.seam-1', figure: 8.85 });
    expect(seam?.mend).toContainEqual({ length: 17.7 });
  });

  it('writes a mate on both sides of every joint, and gives every place its own label', () => {
    const labels = new Map(built.parts.flatMap(({ places }) => places.map(({ id, label }) => [id, label] as const)));
    expect(new Set(labels.values()).size).toBe(labels.size);
    const marks = (id: string) =>
      instance(built, id)
        .place.marks.filter(({ kind }) => kind === 'mate')
        .map(({ text }) => text);
    for (const { kind, between } of built.joints) {
      if (kind !== 'lap' && kind !== 'dado' && kind !== 'rabbet') continue;
      expect(marks(between[0])).toContain(labels.get(between[1]));
      expect(marks(between[1])).toContain(labels.get(between[0]));
    }
    expect(instance(built, 'side.back').place.marks.map(({ kind }) => kind)).toContain('up');
  });
});

describe('other sheets', () => {
  it('17.5: dado 5.8, ends 1076.6', () => {
    const built = model(table([17.5]));
    expect(features(built, 'side.front', 'rabbet')[0]).toMatchObject({ depth: 5.8 });
    expect(size(built, 'end.left').length).toBe(1076.6);
    expect(outside(built, FRAME)).toEqual([1600, 1100, 170]);
  });

  it('18.3: care, slots 18.6, dado 6.1, outside unchanged', () => {
    const built = model(table([18.3]));
    const [rabbet] = features(built, 'side.front', 'rabbet');
    expect(rabbet).toMatchObject({ depth: 6.1, patch: { x1: 18.6 } });
    expect(built.findings.find(({ rule }) => rule === 'thickness-outside-range')).toMatchObject({
      level: 'care',
      figure: 18.3,
      limit: 18.1,
    });
    expect(outside(built, FRAME)).toEqual([1600, 1100, 170]);
  });

  it('the mean sets dados and lengths, the thickest reading sets slots', () => {
    const built = model(table([17.5, 17.7, 17.9]));
    expect(size(built, 'end.left').length).toBe(1076.4);
    expect(features(built, 'side.front', 'rabbet')[0]).toMatchObject({ depth: 5.9, patch: { x1: 18.2 } });
  });

  it('unmeasured: the listed mean, the range as a note, every part cut after measuring', () => {
    const built = model(table([]));
    expect(size(built, 'end.left').length).toBe(1076.4);
    expect(built.findings.find(({ rule }) => rule === 'thickness-not-measured')).toMatchObject({
      level: 'note',
      where: 'frame',
    });
    expect(
      built.parts.filter(({ stock }) => stock === 'birch-ply-18').every(({ cutAfterMeasuring }) => cutAfterMeasuring),
    ).toBe(true);
    expect(
      built.parts.filter(({ stock }) => stock === 'birch-ply-9').some(({ cutAfterMeasuring }) => cutAfterMeasuring),
    ).toBe(false);
  });
});

describe('pieces that are not alike', () => {
  it('keeps mirror images apart', () => {
    const struts = { along: { kind: 'even', count: 0 }, across: { kind: 'at', at: [300, 700] } } as const;
    const built = model(table([17.7], {}, { struts, deck: null, flangeStrips: null }));
    expect(built.parts.find(({ id }) => id === 'side.front')?.places).toHaveLength(1);
    expect(built.parts.find(({ id }) => id === 'side.back')?.places).toHaveLength(1);
  });

  it('sets ids and labels of several benches apart', () => {
    const input = table([17.7]);
    const [one] = input.benches;
    if (one === undefined) throw new Error('no bench');
    const built = model({
      ...input,
      benches: [one, { ...one, id: 'annexe', at: 'benchwork.benches.1', place: { x: 1600, y: 0, turn: 0 } }],
    });
    const ids = built.parts.flatMap(({ places }) => places.map(({ id }) => id));
    const labels = built.parts.flatMap(({ places }) => places.map(({ label }) => label));
    expect(ids).toContain('annexe.side.front');
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(labels).size).toBe(labels.length);
    expect(built.joints.every(({ between }) => between.every((id) => ids.includes(id)))).toBe(true);
  });
});
