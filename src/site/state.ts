import type { Step } from '../core/steps/step.ts';
import type { Part } from '../core/stock/part.ts';
import { proseNamed } from './chapter-prose.ts';
import type { Book } from './notebooks.ts';
import { stepFacts } from './words.ts';

/** Steps that can be started now, in the workshop first. */
export function stepsNext(book: Book): readonly Step[] {
  const { next } = book.notebook.state;
  const ids = [...next.workshop, ...next.room, ...next.outdoors];
  return ids.flatMap((id) => book.notebook.steps.filter((step) => step.id === id));
}

/** What is left of a step that others began, or null: `4 of 6 pieces made`. */
function begun(book: Book, step: Step): string | null {
  const missing = book.notebook.state.steps.find((one) => one.id === step.id)?.missing.length ?? 0;
  const of = step.makes.length;
  return missing === 0 || missing === of ? null : `${of - missing} of ${of} pieces made`;
}

/** What is said of a step in a few words each, and how far one is that others began. */
export function stepSaid(book: Book, step: Step): readonly string[] {
  const left = begun(book, step);
  return left === null ? stepFacts(step) : [...stepFacts(step), left];
}

/** The day a step was done, or null. */
export function dayDone(book: Book, step: Step): string | null {
  const found = book.notebook.state.steps.find((one) => one.id === step.id);
  return found?.state === 'done' ? found.date : null;
}

/** Where a part stands: still to be measured for, to be cut, or made, all of it or so many. */
export function partState(book: Book, part: Part): string {
  const count = book.notebook.state.counts.find(({ id }) => id === part.id);
  if (count !== undefined && count.asked > 0 && count.left === 0) return 'made';
  const rest = part.phase === 'later' ? 'later' : part.cutAfterMeasuring ? 'cut after measuring' : 'ready to cut';
  if (count === undefined || count.made === 0) return rest;
  return `${count.made} of ${count.asked} made`;
}

/** How far a chapter is, in a few words. */
export function chapterState(book: Book, chapter: string): string {
  if (proseNamed(book, chapter) === null) return 'not begun';
  const progress = book.notebook.state.progress.chapters.find((one) => one.chapter === chapter);
  if (progress === undefined || progress.of === 0) return 'written, no steps yet';
  return progress.done === progress.of ? 'all steps done' : `${progress.done} of ${progress.of} steps done`;
}
