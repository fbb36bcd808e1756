import { describe, expect, test } from 'vitest';
import type { Feature } from '../../src/core/stock/part.ts';
import { lengthText } from '../../src/drawing/figures.ts';
import { partTitle } from '../../src/drawing/list.ts';
import { boundsOf } from '../../src/drawing/part-groups.ts';
import { groupName, groupSentence } from '../../src/drawing/part-words.ts';
import { instance, model } from '../core/benchwork/example.ts';
import { fittedTable } from '../core/benchwork/fitted.ts';

test('corners rounded alike are named together: all four without their places, fewer with them', () => {
  const { part } = instance(model(fittedTable()), 'drawer.front-2.face');
  const corners = part.features.filter((one): one is Extract<Feature, { kind: 'rounded-corner' }> => {
    return one.kind === 'rounded-corner';
  });
  expect(corners).toHaveLength(4);
  expect(groupName(corners, part)).toBe('rounded corner');
  const left = corners.filter(({ corner }) => corner.startsWith('left'));
  expect(groupName(left, part)).toBe('rounded corner, left bottom, left top');
  expect(groupName(left.slice(0, 1), part)).toBe('rounded corner, left bottom');
});

describe('words of a part', () => {
  const { part: side } = instance(model(fittedTable()), 'side.front');

  test('tell where every cut of a group starts, those at the left end as well', () => {
    const rabbets = side.features.filter(({ kind }) => kind === 'rabbet');
    expect(rabbets).toHaveLength(2);
    const group = { letter: 'A', features: rabbets };
    const right = Math.max(...rabbets.map((one) => boundsOf(one, side.blank).x0));
    expect(groupSentence(group, side, 'mm')).toContain(
      `starting 0 and ${lengthText(right, 'mm')} mm from the left end`,
    );
    expect(groupSentence({ ...group, features: rabbets.slice(0, 1) }, side, 'mm')).not.toContain('0 and');
  });

  test('name one piece by where it stands, several by what they are', () => {
    expect(partTitle(side)).toBe('Part S1, side front');
    const ends = model(fittedTable()).parts.find(({ id }) => id === 'end.left');
    if (ends === undefined) throw new Error('no ends');
    expect(ends.places).toHaveLength(2);
    expect(partTitle(ends)).toBe(`Parts ${ends.label}, end`);
    expect(partTitle({ ...ends, places: ends.places.slice(0, 1) })).toContain('end left');
  });
});
