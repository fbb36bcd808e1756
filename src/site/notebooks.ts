import { join } from 'node:path';
import { compute, type Notebook } from '../core/notebook.ts';
import type { Plan, Prose } from '../core/plan.ts';
import { inReadingOrder, type Problem, problemAt } from '../core/units/problem.ts';
import { loadContent } from '../reading/disk.ts';
import { printProblem } from '../reading/print.ts';
import { readContent } from '../reading/read.ts';
import { contentFolder } from './chapter-files.ts';

/** One notebook as the pages need it: what was computed, the author's words, and where photos lie. */
export type Book = { readonly notebook: Notebook; readonly prose: readonly Prose[]; readonly photos: string };

type Opened = { readonly book: Book | null; readonly problems: readonly Problem[] };

function opened(plan: Plan, content: string): Opened {
  const result = compute(plan);
  if (!result.ok) return { book: null, problems: result.faults.map((fault) => problemAt(plan.spots, fault)) };
  const photos = join(content, 'notebooks', plan.slug, 'photos');
  return { book: { notebook: result.value, prose: plan.prose, photos }, problems: [] };
}

/** Reads and computes the whole content folder. Errors: all its problems as text; there is no half a site. */
async function load(): Promise<readonly Book[]> {
  const content = contentFolder();
  const { plans, problems } = readContent(await loadContent(content));
  const all = plans.map((plan) => opened(plan, content));
  const found = [...problems, ...all.flatMap((one) => one.problems)].sort(inReadingOrder);
  if (found.length > 0) throw new Error(`the content has problems\n${found.map(printProblem).join('\n')}`);
  return all.flatMap(({ book }) => (book === null ? [] : [book]));
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
