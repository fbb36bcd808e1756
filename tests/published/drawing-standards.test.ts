import { describe, expect, test } from 'vitest';
import { extentOf } from '../../src/drawing/block.ts';
import type { DrawingSheet } from '../../src/drawing/drawing.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import type { Mark } from '../../src/drawing/mark.ts';
import { frameOf, papers, scales } from '../../src/drawing/paper.ts';
import { pens } from '../../src/drawing/pens.ts';
import { titleBlockSize } from '../../src/drawing/title-block.ts';
import { bitternAsk, gridNotebook } from '../drawing/fixtures.ts';
import published from './drawing-standards.json' with { type: 'json' };

const notebook = gridNotebook(bitternAsk);
const sheets = listDrawings(notebook).flatMap(({ id }) => layOutDrawing(notebook, id, { unit: 'mm', paper: 'A4' }).sheets);

function marksOf(sheet: DrawingSheet, keep: (mark: Mark) => boolean): readonly Mark[] {
  return sheet.marks.filter(keep);
}

describe('drawings keep to the published figures', () => {
  test('line widths are of the series, and wide lines twice the narrow ones', () => {
    for (const [name, { width }] of Object.entries(pens)) {
      if (name !== 'none') expect(published.lineWidths, name).toContain(width);
    }
    expect(pens.edge.width / pens.hidden.width).toBe(published.wideToNarrow);
    expect(pens.edge.width / pens.dimension.width).toBeGreaterThan(published.wideToNarrow);
  });

  test('scales are those of the series, largest drawing first', () => {
    const all = [...published.enlargements.map((n) => 1 / n), ...published.reductions].toSorted((a, b) => a - b);
    expect(scales).toEqual(all);
    for (const sheet of sheets) expect(all).toContain(sheet.scale);
  });

  test('papers and their borders', () => {
    for (const [name, [width, height]] of Object.entries(published.papersInMm)) {
      expect(papers[name as 'A4' | 'A3']).toEqual({ width, height });
    }
    for (const [name, [width = 0, height = 0]] of Object.entries(published.papersInInches)) {
      const paper = papers[name as 'Letter' | 'Tabloid'];
      expect(paper.width).toBeCloseTo(width * 25.4, 9);
      expect(paper.height).toBeCloseTo(height * 25.4, 9);
      const frame = frameOf(name as 'Letter' | 'Tabloid');
      expect(frame.x0).toBe(published.borders.filing);
      expect(paper.width - frame.x1).toBeCloseTo(published.borders.other, 9);
    }
  });

  test('the title block is as wide as published and has every mandatory field', () => {
    expect(titleBlockSize.width).toBe(published.titleBlockWidth);
    for (const sheet of sheets) {
      const words = sheet.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
      for (const field of published.mandatoryFields) expect(words).toContain(field);
    }
  });

  test('all lettering has a published height', () => {
    for (const sheet of sheets) {
      for (const mark of sheet.marks) if (mark.kind === 'text') expect(published.letteringHeights).toContain(mark.size);
    }
  });

  test('the first dimension line stands off as published, the next no nearer to it than published', () => {
    const section = sheets.find(({ id }) => id === 'benchwork.section');
    expect.assert(section !== undefined);
    const outline = extentOf(marksOf(section, ({ role }) => role === 'outline'));
    const levels = marksOf(section, ({ role, kind }) => role === 'dimension' && kind === 'line').flatMap((mark) => {
      const isLevel = mark.kind === 'line' && mark.from[1] === mark.to[1] && mark.from[0] !== mark.to[0];
      return isLevel ? [mark.from[1]] : [];
    });
    const [first = 0, next = 0] = [...new Set(levels)].toSorted((a, b) => a - b);
    expect(first - outline.y1).toBeCloseTo(published.firstLine, 6);
    expect(next - first).toBeGreaterThanOrEqual(published.nextLine[0] ?? Number.NaN);
  });
});
