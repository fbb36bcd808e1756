import type { Step } from '../core/steps/step.ts';
import type { Part } from '../core/stock/part.ts';
import { proseNamed } from './chapter-prose.ts';
import type { Book } from './notebooks.ts';

/** Steps the log says are done. */
export function stepsDone(book: Book): ReadonlySet<string> {
  return new Set(book.notebook.log.flatMap((entry) => entry.done));
}

/** Pieces the log says are made. */
export function piecesMade(book: Book): ReadonlySet<string> {
  return new Set(book.notebook.log.flatMap((entry) => entry.made));
}

/** Steps whose turn it is: not done, and everything they wait for is. */
export function stepsNext(book: Book): readonly Step[] {
  const done = stepsDone(book);
  return book.notebook.steps.filter((step) => !done.has(step.id) && step.after.every((id) => done.has(id)));
}

/** Where a part stands: still to be measured for, to be cut, or made, all of it or so many. */
export function partState(book: Book, part: Part): string {
  const made = piecesMade(book);
  const count = part.places.filter((place) => made.has(place.id)).length;
  if (count === part.places.length) return 'made';
  const rest = part.phase === 'later' ? 'later' : part.cutAfterMeasuring ? 'cut after measuring' : 'ready to cut';
  return count === 0 ? rest : `${count} of ${part.places.length} made`;
}

/** How far a chapter is, in a few words. */
export function chapterState(book: Book, chapter: string): string {
  if (proseNamed(book, chapter) === null) return 'not begun';
  const steps = book.notebook.steps.filter((step) => step.chapter === chapter);
  if (steps.length === 0) return 'written, no steps yet';
  const done = stepsDone(book);
  const count = steps.filter((step) => done.has(step.id)).length;
  return count === steps.length ? 'all steps done' : `${count} of ${steps.length} steps done`;
}
