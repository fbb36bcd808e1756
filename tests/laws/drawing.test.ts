import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { DrawingBook } from '../../src/drawing/book.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import type { PaperName } from '../../src/drawing/paper.ts';
import { complaints, unfixed, unlabelled, unplaced } from '../drawing/checker.ts';
import { bitternAsk, gridNotebook } from '../drawing/fixtures.ts';
import { anyGrid, anyPart, anyTitle } from '../drawing/random-parts.ts';

const paper = fc.constantFrom<PaperName>('A4', 'A3', 'Letter', 'Tabloid');
const unit = fc.constantFrom<'mm' | 'in'>('mm', 'in');
const runs = { seed: 20260314, numRuns: 300 };

function everyComplaint(
  notebook: DrawingBook,
  options: { readonly unit: 'mm' | 'in'; readonly paper: PaperName },
): readonly string[] {
  return listDrawings(notebook).flatMap(({ id, kind, of }) => {
    const drawing = layOutDrawing(notebook, id, options);
    const part = kind === 'part' ? notebook.parts.find((one) => one.id === of) : undefined;
    return [
      ...complaints(drawing, options.paper),
      ...unlabelled(drawing, notebook),
      ...unplaced(drawing, notebook),
      ...(part === undefined ? [] : unfixed(drawing, part)),
    ];
  });
}

test('any part can be marked out from its printed figures, and no label touches anything', () => {
  fc.assert(
    fc.property(anyPart, anyTitle, unit, paper, (part, title, inUnit, onPaper) => {
      const notebook: DrawingBook = {
        ...gridNotebook(bitternAsk),
        title,
        parts: [part],
        benches: [],
        sheets: [],
        seams: [],
        joints: [],
      };
      expect(everyComplaint(notebook, { unit: inUnit, paper: onPaper })).toEqual([]);
    }),
    runs,
  );
});

test('every drawing of any table is readable and its chains close', () => {
  fc.assert(
    fc.property(anyGrid, unit, paper, (ask, inUnit, onPaper) => {
      expect(everyComplaint(gridNotebook(ask), { unit: inUnit, paper: onPaper })).toEqual([]);
    }),
    runs,
  );
});
