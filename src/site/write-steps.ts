import type { Step } from '../core/steps/step.ts';
import { chapterProse, nameInChapter } from './chapter-prose.ts';
import type { Book } from './notebooks.ts';
import { contentMark } from './ticks.ts';

/** A step an entry can call done, with the mark of what is ticked on its own page. */
export type OpenStep = { readonly step: Step; readonly ready: boolean; readonly mark: string };

/** Steps not done yet, those that can be started first. */
export async function openSteps(book: Book): Promise<readonly OpenStep[]> {
  const { state, steps } = book.notebook;
  const open = await Promise.all(
    state.steps.map(async ({ id, state: now }): Promise<readonly OpenStep[]> => {
      const step = steps.find((one) => one.id === id);
      if (step === undefined || now === 'done') return [];
      const { ofStep } = await chapterProse(book, step.chapter);
      const content = { ...step, words: ofStep[nameInChapter(step)] ?? [] };
      return [{ step, ready: now === 'ready', mark: contentMark(content) }];
    }),
  );
  const all = open.flat();
  return [...all.filter(({ ready }) => ready), ...all.filter(({ ready }) => !ready)];
}

/** What can be made next, by the name the log uses and what is written on it. */
export function openPieces(book: Book): readonly { readonly id: string; readonly label: string }[] {
  const left = new Set(book.notebook.state.leftToMake.flatMap(({ instances }) => instances));
  return book.notebook.state.parts.flatMap(({ instance, label }) =>
    left.has(instance) ? [{ id: instance, label }] : [],
  );
}

/** The currency the notebook's money is in; EUR when nothing says. */
export function currencyOf(book: Book): string {
  const { budget, spent } = book.notebook.state.money;
  return budget?.currency ?? spent[0]?.currency ?? 'EUR';
}
