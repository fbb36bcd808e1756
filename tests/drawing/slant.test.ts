import { describe, expect, test } from 'vitest';
import { BAR } from '../../src/core/benchwork/drawers/face-parts.ts';
import { area } from '../../src/core/geometry/polygon.ts';
import { pilotNotes } from '../../src/drawing/part-pilots.ts';
import { cutBy, fromFront, fromLeft, seen } from '../../src/drawing/scene.ts';
import { instance, model } from '../core/benchwork/example.ts';
import { fittedTable } from '../core/benchwork/fitted.ts';

describe('a bevelled pull', () => {
  const pull = instance(model(fittedTable()), 'drawer.front-2.pull');
  const { thickness, width } = pull.part.blank;
  const bevel = (thickness * (thickness / Math.tan(BAR.slope))) / 2;
  const [low, high] = BAR.finger;
  const groove = pull.part.features.flatMap((one) => (one.kind === 'groove' ? [one.depth] : []))[0] ?? 0;

  test('is seen from its end without the triangle its mitre takes off (half base times height)', () => {
    const sum = seen(pull, fromLeft).areas.reduce((all, one) => all + area(one), 0);
    expect(sum).toBeCloseTo(thickness * width - bevel - groove * (high - low), 3);
  });

  test('is cut across as it is seen from its end', () => {
    const cut = cutBy(pull, fromLeft, -(pull.place.pose.origin[0] - 20));
    const sum = cut?.areas.reduce((all, one) => all + area(one), 0);
    expect(sum).toBeCloseTo(thickness * width - bevel - groove * (high - low), 3);
  });

  test('planted fault: the same bar without its mitre is larger by just that triangle', () => {
    const square = { ...pull.part, features: pull.part.features.filter(({ kind }) => kind !== 'mitre') };
    const sum = seen({ ...pull, part: square }, fromLeft).areas.reduce((all, one) => all + area(one), 0);
    expect(sum - bevel).toBeCloseTo(thickness * width - bevel - groove * (high - low), 3);
    expect(seen(pull, fromFront).areas).toHaveLength(1);
  });
});

describe('pilots for screws', () => {
  const table = model(fittedTable());
  const { part, place } = instance(table, 'drawer.front-2.pull');
  const book = {
    ...{ slug: '', title: '', makers: [], benches: [], joints: [], seams: [], sheets: [] },
    parts: [part],
  };
  const words = (fasteners: typeof table.fasteners) =>
    pilotNotes({ ...book, fasteners }, part, 'mm')
      .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
      .join(' ')
      .replaceAll('\u00a0', ' ');

  test('stand in the list of a pull where its screws come from the face, counted from its left end', () => {
    const ends = table.fasteners.filter(({ through }) => through.at(-1) === place.id);
    expect(ends).toHaveLength(2);
    for (const { head } of ends) {
      const along = Math.abs(head[0] - place.pose.origin[0]);
      expect(words(table.fasteners)).toContain(`(${Math.round(along * 10) / 10}; `);
    }
    expect(words(table.fasteners)).toContain('in the bottom edge');
  });

  test('planted fault: without its screws the pull has no pilots', () => {
    expect(words([])).toBe('');
  });
});
