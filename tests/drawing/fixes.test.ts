import { describe, expect, test } from 'vitest';
import type { FixLine } from '../../src/core/log/fixes.ts';
import type { DrawingBook } from '../../src/drawing/book.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import type { Mark } from '../../src/drawing/mark.ts';
import { onPaper } from '../../src/drawing/view.ts';
import { complaints } from './checker.ts';
import { bitternAsk, gridNotebook } from './fixtures.ts';

const papers = ['A4', 'A3', 'Letter', 'Tabloid'] as const;
const grid = gridNotebook(bitternAsk);

function fix(part: string, at: number | null, from: string | null): FixLine {
  const told = { what: 'split', cause: null, mend: 'glue', leaves: 'half', date: '2026-05-16', entry: 'x' } as const;
  return { part, at, from, ...told, stands: true };
}

function bookWith(...fixes: readonly FixLine[]): DrawingBook {
  return { ...grid, state: { fixes } };
}

function mapsOf(book: DrawingBook): readonly string[] {
  return listDrawings(book)
    .filter(({ kind }) => kind === 'fixes')
    .map(({ id }) => id);
}

const labels = (marks: readonly Mark[]) =>
  marks.flatMap((mark) =>
    mark.kind === 'text' && mark.role === 'label' && /^\d+$/.test(mark.text) ? [mark.text] : [],
  );
const dots = (marks: readonly Mark[]) =>
  marks.flatMap((mark) => (mark.kind === 'circle' && mark.fill === 'ink' ? [mark.centre] : []));

describe('fix maps', () => {
  test('are not listed for a notebook without fixes, or with fixes nobody can place', () => {
    expect(mapsOf(grid)).toEqual([]);
    expect(mapsOf(bookWith(fix('side.front', null, null), fix('gone', 10, 'left')))).toEqual([]);
    expect(mapsOf(bookWith({ ...fix('side.front', 400, 'left'), stands: false }))).toEqual([]);
  });

  test('flag each fix by its number at its place', () => {
    const book = bookWith(fix('gone', 10, 'left'), fix('side.front', 400, 'left'));
    const drawing = layOutDrawing(book, 'log.fixes.table.plan', { unit: 'mm', paper: 'A4' });
    expect(labels(drawing.marks)).toEqual(['2']);
    const [view] = drawing.views;
    const [dot] = dots(drawing.marks);
    const spot = view === undefined ? undefined : onPaper(view, [400, bitternAsk.thickness / 2]);
    expect(dot?.[0]).toBeCloseTo(spot?.[0] ?? -1, 6);
    expect(dot?.[1]).toBeCloseTo(spot?.[1] ?? -1, 6);
    expect(drawing.desc).toContain('2: side.front, split.');
  });

  test('show from a side what is in the half nearer to it', () => {
    const book = bookWith(fix('side.front', 1500, 'left'), fix('side.back', 100, 'left'));
    expect(mapsOf(book)).toEqual(['plan', 'front', 'left'].map((view) => `log.fixes.table.${view}`));
    const from = (view: string) =>
      labels(layOutDrawing(book, `log.fixes.table.${view}`, { unit: 'mm', paper: 'A4' }).marks);
    expect([from('plan'), from('front'), from('left')]).toEqual([['1', '2'], ['1'], ['2']]);
  });

  test('stay readable with many fixes at one spot, on every paper in both units', () => {
    const crowd = Array.from({ length: 12 }, (_, i) => fix('side.front', 700 + 12 * i, 'left'));
    const book = bookWith(...crowd);
    const found = mapsOf(book).flatMap((id) =>
      papers.flatMap((paper) =>
        (['mm', 'in'] as const).flatMap((unit) => complaints(layOutDrawing(book, id, { unit, paper }), paper)),
      ),
    );
    expect(found).toEqual([]);
  });
});

test('a part drawing notes the fixes of its pieces by number, label and place', () => {
  const book = bookWith(fix('end.left', 100, 'front'), fix('side.front', 400, 'left'));
  const part = book.parts.find(({ places }) => places.some(({ id }) => id === 'side.front'));
  const marks = layOutDrawing(book, `part.${part?.id}`, { unit: 'mm', paper: 'A4' }).sheets.flatMap(
    (sheet) => sheet.marks,
  );
  const text = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ');
  expect(text).toContain('Fixes');
  expect(text).toContain('400 mm from left: split; glue');
  expect(text).not.toContain('100 mm from front');
});
