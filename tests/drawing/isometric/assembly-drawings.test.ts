import { describe, expect, test } from 'vitest';
import { bareSheet } from '../../../src/drawing/bare.ts';
import { extentOf } from '../../../src/drawing/block.ts';
import { layOutDrawing } from '../../../src/drawing/layout.ts';
import { listDrawings } from '../../../src/drawing/list.ts';
import type { Mark } from '../../../src/drawing/mark.ts';
import { proved } from '../../core/assembly/proved.ts';
import { model, table } from '../../core/benchwork/example.ts';
import { complaints } from '../checker.ts';

const input = table([17.7]);
const built = model(input);
const book = {
  ...built,
  slug: 'demo',
  title: 'Demo',
  makers: ['an aunt'],
  sheets: [],
  assembly: [proved(input, built)],
};
const listed = listDrawings(book).filter(({ kind }) => kind === 'assembly');

function labelsOn(marks: readonly Mark[]): readonly string[] {
  return marks.flatMap((mark) => (mark.kind === 'text' && mark.role === 'label' ? [mark.text] : [])).sort();
}

describe('pictures of the assembly', () => {
  test('are an exploded view and one a step', () => {
    expect(listed.map(({ id }) => id)).toEqual([
      'assembly.exploded',
      ...[1, 2, 3, 4, 5, 6].map((n) => `assembly.step-${n}`),
    ]);
    expect(listed[2]?.title).toBe('Step 2 of 6: C1, C2, C3');
  });

  for (const { id } of listed) {
    test(`${id} is readable on every paper`, () => {
      for (const paper of ['A4', 'A3', 'Letter', 'Tabloid'] as const) {
        expect(complaints(layOutDrawing(book, id, { unit: 'mm', paper }), paper)).toEqual([]);
      }
    });
  }

  test('keep to the room of a page, all their labels on, and stand in its middle', () => {
    const room = { width: 122, height: 110 };
    for (const { id } of listed.slice(1)) {
      const [whole, small] = [{}, { room }].map((more) =>
        layOutDrawing(book, id, { unit: 'mm', paper: 'A4', ...more }),
      );
      const sheet = small?.sheets[0];
      if (sheet === undefined || whole === undefined) throw new Error('a picture without a sheet');
      const box = extentOf(sheet.own);
      expect(box.x1 - box.x0).toBeLessThanOrEqual(room.width);
      expect(box.y1 - box.y0).toBeLessThanOrEqual(room.height);
      expect(labelsOn(sheet.own)).toEqual(labelsOn(whole.sheets[0]?.own ?? []));
      const bare = bareSheet(sheet, 150);
      const cut = extentOf(bare.own);
      expect(bare.width).toBe(150);
      expect(cut.x0 + cut.x1).toBeCloseTo(150, -0.5);
    }
  });

  test('name the bench’s front: before the reader, and behind what is turned over', () => {
    const sides = listed.flatMap(({ id }) => {
      const own = layOutDrawing(book, id, { unit: 'mm', paper: 'A4' }).sheets[0]?.own ?? [];
      const texts = own.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
      const front = texts.find(({ text }) => text === 'bench’s front');
      const { x0, x1, y0, y1 } = extentOf(own.filter(({ kind }) => kind === 'polygon'));
      const over = texts.some(({ text }) => text.includes('upside down'));
      return [{ id, over, before: front !== undefined && front.at[0] < (x0 + x1) / 2 && front.at[1] > (y0 + y1) / 2 }];
    });
    expect(new Set(sides.map(({ over }) => over)).size).toBe(2);
    for (const { id, over, before } of sides) expect([id, before]).toEqual([id, !over]);
  });

  test('draw the new pieces strong, one arrow each, and name them', () => {
    const { marks, desc } = layOutDrawing(book, 'assembly.step-2', { unit: 'mm', paper: 'A4' });
    const areas = marks.filter((mark) => mark.kind === 'polygon' && mark.role === 'outline');
    expect(areas.some((mark) => mark.kind === 'polygon' && mark.pen === 'edge')).toBe(true);
    expect(areas.some((mark) => mark.kind === 'polygon' && mark.pen === 'hatch')).toBe(true);
    expect(marks.filter((mark) => mark.kind === 'line' && mark.role === 'arrow')).toHaveLength(3);
    const labels = marks.flatMap((mark) => (mark.kind === 'text' && mark.role === 'label' ? [mark.text] : []));
    expect(labels).toEqual(expect.arrayContaining(['C1', 'C2', 'C3']));
    expect(desc).toContain('brought to strut.along-1');
  });
});
