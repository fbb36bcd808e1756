import { describe, expect, test } from 'vitest';
import { compute, type Notebook } from '../../src/core/notebook.ts';
import { drawingSet } from '../../src/drawing/layout.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { complaints, unfixed, unlabelled, unplaced } from './checker.ts';

const papers = ['A4', 'A3', 'Letter', 'Tabloid'] as const;
const files = await loadContent(new URL('../../content', import.meta.url).pathname);
const notebooks = readContent(files).plans.flatMap((plan): readonly Notebook[] => {
  const result = compute(plan);
  return result.ok ? [result.value] : [];
});

function allComplaints(notebook: Notebook): readonly string[] {
  const options = papers.flatMap((paper) => (['mm', 'in'] as const).map((unit) => ({ paper, unit })));
  const { entries, layOut } = drawingSet(notebook);
  return entries.flatMap(({ id, kind, of }) =>
    options.flatMap((option) => {
      const drawing = layOut(id, option);
      // templates of the land are drawn true to scale and told by heights, not feature by feature
      const part =
        kind === 'part' ? notebook.parts.find((one) => one.id === of && one.chapter === 'benchwork') : undefined;
      return [
        ...complaints(drawing, option.paper),
        ...unlabelled(drawing, notebook),
        ...unplaced(drawing, notebook),
        ...(part === undefined ? [] : unfixed(drawing, part)),
      ];
    }),
  );
}

describe('the demo notebooks', () => {
  test('are all computed', () => {
    expect(notebooks.map(({ slug }) => slug)).toEqual(['bittern-basin', 'lantern-siding', 'window-shelf']);
  });

  for (const notebook of notebooks) {
    test(`every drawing of ${notebook.slug} is readable, closes, and fixes its features, on every paper in both units`, () => {
      expect(allComplaints(notebook)).toEqual([]);
    });
  }
});
