import { describe, expect, test } from 'vitest';
import { compute, type Notebook } from '../../src/core/notebook.ts';
import type { Step } from '../../src/core/steps/step.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { picturedSteps } from '../../src/site/assembly-words.ts';
import { picturesFor, shownOnce } from '../../src/site/child-picture.ts';
import type { Book } from '../../src/site/notebooks.ts';
import { prose } from './fixture.ts';

const content = readContent(await loadContent(new URL('../../content', import.meta.url).pathname));
const books = content.plans.flatMap((plan): readonly Book[] => {
  const computed = compute(plan);
  return computed.ok ? [{ notebook: computed.value, prose, photos: '' }] : [];
});

/** Pieces that a drawing is about: those drawn strong, all of the bench in its exploded view, or the part's own. */
function about(book: Book, drawing: string): readonly string[] {
  const { assembly, parts } = book.notebook;
  const pictured = assembly.flatMap((one) => {
    const { exploded, steps } = picturedSteps(book, one);
    const all = steps.flatMap(({ step }) => step.parts);
    const [found] = steps.filter((step) => step.drawing === drawing);
    return exploded === drawing ? all : (found?.step.parts ?? []);
  });
  const part = parts.find(({ id }) => drawing === `part.${id}`);
  return [...pictured, ...(part?.places ?? []).map(({ id }) => id)];
}

function childSteps({ steps }: Notebook): readonly Step[] {
  return steps.filter(({ child }) => child.startsWith('does'));
}

/** Pictures of a step that are about pieces of which the step says nothing. */
function foreign(book: Book, step: Step, pictures = picturesFor(book, step)): readonly string[] {
  const own = new Set([...(step.fits ?? []), ...step.makes]);
  return pictures.map(({ id }) => id).filter((id) => own.size > 0 && about(book, id).some((piece) => !own.has(piece)));
}

describe('the pictures beside a child’s steps', () => {
  for (const book of books) {
    test(`are of the step’s own pieces in ${book.notebook.slug}`, () => {
      const steps = childSteps(book.notebook);
      expect(steps.length).toBeGreaterThan(4);
      expect(steps.flatMap((step) => foreign(book, step))).toEqual([]);
      const fitting = steps.filter(({ fits = [] }) => fits.length > 0);
      // the assembly has pictures of the benchwork alone
      const pictured = new Set(
        book.notebook.parts
          .filter(({ chapter }) => chapter === 'benchwork')
          .flatMap(({ places }) => places.map(({ id }) => id)),
      );
      for (const step of fitting) {
        const shown = new Set(picturesFor(book, step).flatMap(({ id }) => about(book, id)));
        expect((step.fits ?? []).filter((id) => pictured.has(id) && !shown.has(id))).toEqual([]);
      }
    });
  }

  test('of a bench that stands beside another are its own', () => {
    const book =
      books.find(({ notebook }) => notebook.assembly.length > 1) ?? expect.fail('no notebook of two benches');
    const square = book.notebook.steps.find(({ id }) => id === 'benchwork.east-square') ?? expect.fail('no such step');
    const ids = picturesFor(book, square).map(({ id }) => id);
    expect(ids.flatMap((id) => about(book, id)).every((id) => id.startsWith('east.'))).toBe(true);
    expect(ids).toHaveLength(1);
  });

  test('would be told from another step’s: the fault that shows this can fail', () => {
    const [book] = books;
    if (book === undefined) throw new Error('no demo');
    const deck = book.notebook.steps.find(({ id }) => id === 'benchwork.table-deck') ?? expect.fail('no such step');
    expect(foreign(book, deck, [{ id: 'assembly.step-1', assembly: true }])).toEqual(['assembly.step-1']);
  });
});

describe('a drawing that several steps need', () => {
  const plan = { id: 'track.plan', assembly: false };
  const other = { id: 'track.heights', assembly: false };

  test('stands at the first of them, and the others name that step', () => {
    expect(shownOnce([[], [plan], [other, plan], [plan]])).toEqual([
      [],
      [{ ...plan, at: 'child-2-1', before: null }],
      [
        { ...other, at: 'child-3-1', before: null },
        { ...plan, at: 'child-2-1', before: 2 },
      ],
      [{ ...plan, at: 'child-2-1', before: 2 }],
    ]);
  });
});
