import { expect, test } from 'vitest';
import type { Feature } from '../../src/core/stock/part.ts';
import { groupName } from '../../src/drawing/part-words.ts';
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
