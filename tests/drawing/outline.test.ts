import { describe, expect, test } from 'vitest';
import { isAskew, loopSize } from '../../src/core/geometry/polygon.ts';
import type { Point } from '../../src/core/geometry/shapes.ts';
import type { Part } from '../../src/core/stock/part.ts';
import { detailBlock } from '../../src/drawing/part-detail.ts';
import { featureGroups } from '../../src/drawing/part-groups.ts';
import { groupNotes } from '../../src/drawing/part-notes.ts';
import { hasListedCorners, sizingOf } from '../../src/drawing/part-sizing.ts';
import { featureRows } from '../../src/site/feature-words.ts';

/** A rectangle of 5 by 10 whose first side rises 3 in 4 (Euclid I.47: 3, 4 and 5). */
const askew: readonly Point[] = [
  [100, 50],
  [104, 53],
  [98, 61],
  [94, 58],
];
const square: readonly Point[] = [
  [10, 20],
  [30, 20],
  [30, 70],
  [10, 70],
];

function deck(outline: readonly Point[]): Part {
  return {
    ...{ id: 'deck', label: 'D1', role: 'deck', chapter: 'benchwork', bench: 'table', stock: 'ply' },
    blank: { length: 1200, width: 800, thickness: 9, grain: 'length' },
    features: [{ id: 'slot', kind: 'cut-out', outline }],
    places: [],
    cutAfterMeasuring: false,
    phase: 'now',
  };
}

function textsOf(outline: readonly Point[]): readonly string[] {
  const part = deck(outline);
  const [group] = featureGroups(part);
  if (group === undefined) throw new Error('no group');
  const sizing = sizingOf(group, part.blank, 20);
  const detail = detailBlock({ part, sizing, unit: 'mm', room: { width: 62, height: 52 } });
  const notes = groupNotes(part, [group], { unit: 'mm', drawn: new Set() });
  return [...(detail?.marks ?? []), ...notes.flatMap(({ marks }) => marks)].flatMap((mark) =>
    mark.kind === 'text' ? [mark.text.replaceAll('\u00a0', ' ')] : [],
  );
}

describe('a small cut-out that stands askew', () => {
  test('is as large as its sides, however it is turned', () => {
    expect(loopSize(askew)).toEqual([5, 10]);
    expect(loopSize(square)).toEqual([20, 50]);
    expect([isAskew(askew), isAskew(square)]).toEqual([true, false]);
  });

  test('planted fault: a lozenge with the same first sides has no such size', () => {
    expect(loopSize([...askew.slice(0, 2), [99, 61], [95, 58]])).not.toEqual([5, 10]);
  });

  test('is drawn enlarged with its corners named, each with both its figures', () => {
    const texts = textsOf(askew);
    expect(texts).toEqual(expect.arrayContaining(['a', 'b', 'c', 'd']));
    expect(texts.join(' ')).toContain('a (100; 50) b (104; 53)');
    expect(texts.join(' ')).toContain('5 by 10');
    expect([hasListedCorners(askew), hasListedCorners(square)]).toEqual([true, false]);
    expect(textsOf(square)).not.toContain('a');
  });

  test('has the same size on the page of its part', () => {
    expect(featureRows(deck(askew).features)[0]).toMatchObject({
      side: 'face, askew',
      at: { mm: '100, 50' },
      size: { mm: '5 × 10' },
    });
    expect(featureRows(deck(square).features)[0]).toMatchObject({ at: { mm: '10, 20' }, size: { mm: '20 × 50' } });
  });
});
