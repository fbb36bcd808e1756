import { describe, expect, test } from 'vitest';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import { complaints, unfixed } from './checker.ts';
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
