import { describe, expect, test } from 'vitest';
import { bareSheet } from '../../src/drawing/bare.ts';
import { extentOf } from '../../src/drawing/block.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import type { Mark } from '../../src/drawing/mark.ts';
import { complaints, falseFigures, unfixed } from './checker.ts';
import { bitternAsk, gridNotebook } from './fixtures.ts';

const notebook = gridNotebook(bitternAsk);
const papers = ['A4', 'A3', 'Letter', 'Tabloid'] as const;

describe('every drawing of a table', () => {
  for (const { id, kind, of } of listDrawings(notebook)) {
    test(`${id} is readable and closes on every paper in both units`, () => {
      for (const paper of papers) {
        for (const unit of ['mm', 'in'] as const) {
          const drawing = layOutDrawing(notebook, id, { unit, paper });
          expect(complaints(drawing, paper)).toEqual([]);
          const part = notebook.parts.find((one) => kind === 'part' && one.id === of);
          if (part !== undefined) expect(unfixed(drawing, part)).toEqual([]);
        }
      }
    });
  }
});

describe('a drawing without its sheet', () => {
  const options = { unit: 'mm', paper: 'A4' } as const;

  test.each(listDrawings(notebook).filter(({ kind }) => kind === 'joint'))(
    '$id keeps its own words and sizes, and fits the paper cut round it',
    ({ id }) => {
      const [sheet] = layOutDrawing(notebook, id, options).sheets;
      expect.assert(sheet !== undefined);
      const bare = bareSheet(sheet);
      const words = (marks: readonly Mark[]) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
      expect(words(bare.marks)).toEqual(words(sheet.own));
      expect(words(sheet.marks)).toContain('Owner');
      expect(words(bare.marks)).not.toContain('Owner');
      expect(bare.marks.length).toBe(sheet.own.length);
      const [whole, cut] = [extentOf(sheet.own), extentOf(bare.marks)];
      expect(cut.x1 - cut.x0).toBeCloseTo(whole.x1 - whole.x0, 9);
      expect([cut.x0, cut.y0].map((at) => Math.round(at * 1e6) / 1e6)).toEqual([4, 4]);
      expect(bare.width).toBeGreaterThanOrEqual(cut.x1 + 4);
      expect(bare.height).toBeGreaterThanOrEqual(cut.y1 + 4);
      expect(falseFigures(bare)).toEqual([]);
    },
  );
});

test('a title block gives an owner of many words two lines, and cuts none of them', () => {
  const makers = ['a library’s Saturday club of nine'];
  const { marks } = layOutDrawing({ ...gridNotebook(bitternAsk), makers }, 'benchwork.plan', {
    unit: 'mm',
    paper: 'A4',
  });
  const words = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
  expect(words).toEqual(expect.arrayContaining(['a library’s Saturday', 'club of nine']));
  expect(words.filter((text) => text.endsWith('…'))).toEqual([]);
});
