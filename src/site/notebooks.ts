import { join, resolve } from 'node:path';
import type { Notebook } from '../core/notebook.ts';
import type { Prose } from '../core/plan.ts';
import { changeImpacts, type EntryImpact } from '../core/stages/impacts.ts';
import { type LeftWork, leftWork } from '../core/stages/left-work.ts';
import { listDrawings } from '../drawing/list.ts';
import { loadWithShipped } from '../reading/disk.ts';
import { openContent } from '../reading/open.ts';
import { printProblem } from '../reading/print.ts';
import { contentFolder } from './chapter-files.ts';

/** One notebook as the pages need it: what was computed, the author's words, and where photos lie. */
export type Book = {
  readonly notebook: Notebook;
  readonly prose: readonly Prose[];
  readonly photos: string;
  /** what each change in the log did to the benchwork */
  readonly impacts?: readonly EntryImpact[];
  /** sheets of what is left to make */
  readonly left?: LeftWork;
};

/** Reads and computes the whole content folder. Errors: all its problems as text; there is no half a site. */
async function load(): Promise<readonly Book[]> {
  const content = contentFolder();
  const files = await loadWithShipped(content, resolve('content'));
  const { notebooks, problems } = openContent(files, (notebook) => listDrawings(notebook).map(({ id }) => id));
  if (problems.length > 0) throw new Error(`the content has problems\n${problems.map(printProblem).join('\n')}`);
  return notebooks.map(({ plan, notebook }) => ({
    notebook,
    prose: plan.prose,
    photos: join(content, 'notebooks', plan.slug, 'photos'),
    impacts: changeImpacts(plan, notebook.steps),
    left: leftWork(plan, soFar(notebook)),
  }));
}

/** What was made, and of which sheets. */
function soFar({ offcuts, parts, sheets, state }: Notebook) {
  const cut = new Set(state.parts.filter((one) => one.pieces > 0).map(({ instance }) => instance));
  return { parts, sheets, offcuts, left: state.leftToMake, cut };
}

let loaded: Promise<readonly Book[]> | null = null;

/** All notebooks, by slug: computed once a build. */
export function notebooks(): Promise<readonly Book[]> {
  loaded ??= load();
  return loaded;
}

/** The notebook of that slug; pages only ask for those that exist. */
export async function bookOf(slug: string | undefined): Promise<Book> {
  const book = (await notebooks()).find(({ notebook }) => notebook.slug === slug);
  if (book === undefined) throw new Error(`no notebook is called '${slug}'`);
  return book;
}

/** One page for each notebook. */
export async function pageForEach() {
  return (await notebooks()).map(({ notebook }) => ({ params: { notebook: notebook.slug } }));
}
