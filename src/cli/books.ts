import type { Notebook } from '../core/notebook.ts';
import type { Plan } from '../core/plan.ts';
import { nearest } from '../core/units/nearest.ts';
import type { Problem } from '../core/units/problem.ts';
import { listDrawings } from '../drawing/list.ts';
import { loadWithShipped } from '../reading/disk.ts';
import { openContent } from '../reading/open.ts';
import { concerns, type Refusal } from './desk.ts';

/** A content folder, read and computed: what is right, and every mistake in it. */
export type Books = {
  /** every notebook's folder, whether it can be computed or not */
  readonly slugs: readonly string[];
  readonly notebooks: readonly Notebook[];
  readonly problems: readonly Problem[];
  /** what their authors wrote */
  readonly plans: readonly Plan[];
};

function nothingThere(): Problem {
  const what = 'there is no notebook in this folder';
  return {
    file: 'notebooks',
    line: 1,
    column: 1,
    path: '',
    rule: 'no-notebook',
    what,
    mend: 'start one: npm run new -- my-table',
  };
}

/** Reads and computes every notebook of a content folder, with the stock and trains that come with the project. */
export async function openBooks(content: string, shipped: string): Promise<Books> {
  const files = await loadWithShipped(content, shipped);
  const { slugs, notebooks, problems } = openContent(files, (notebook) => listDrawings(notebook).map(({ id }) => id));
  return {
    slugs,
    notebooks: notebooks.map(({ notebook }) => notebook),
    problems: slugs.length === 0 && problems.length === 0 ? [nothingThere()] : problems,
    plans: notebooks.map(({ plan }) => plan),
  };
}

/** The books as if only this notebook were there, beside what all of them share. */
export function onlyOne(books: Books, slug: string): Books {
  return {
    ...books,
    slugs: books.slugs.filter((one) => one === slug),
    notebooks: books.notebooks.filter((notebook) => notebook.slug === slug),
    problems: books.problems.filter((problem) => concerns(slug, problem)),
  };
}

/** Said of a slug that names no notebook. */
export function noSuchBook(books: Books, slug: string): Refusal {
  const near = nearest(slug, books.slugs);
  const there = books.slugs.length === 0 ? 'there is none yet' : `there are: ${books.slugs.join(', ')}`;
  return { what: `No notebook is called ${JSON.stringify(slug)}.`, mend: near ? `did you mean ${near}?` : there };
}
