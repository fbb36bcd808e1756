import { compute, type Notebook } from '../core/notebook.ts';
import type { Plan } from '../core/plan.ts';
import { nearest } from '../core/units/nearest.ts';
import { type Problem, problemAt } from '../core/units/problem.ts';
import { loadContent } from '../reading/disk.ts';
import { readContent, sortedProblems } from '../reading/read.ts';
import { concerns, type Refusal } from './desk.ts';
import { proseProblems } from './prose-names.ts';

/** A content folder, read and computed: what is right, and every mistake in it. */
export type Books = {
  /** every notebook's folder, whether it can be computed or not */
  readonly slugs: readonly string[];
  readonly notebooks: readonly Notebook[];
  readonly problems: readonly Problem[];
};

type Computed = { readonly notebook: Notebook | null; readonly problems: readonly Problem[] };

function computed(plan: Plan): Computed {
  const result = compute(plan);
  if (result.ok) return { notebook: result.value, problems: proseProblems(plan, result.value) };
  return { notebook: null, problems: result.faults.map((fault) => problemAt(plan.spots, fault)) };
}

/**
 * What can be used of notebooks with mistakes is computed too: it may show more of them in the same run. Where one was
 * told already, a second one would only be its consequence.
 */
function moreIn(drafts: readonly Plan[], told: readonly Problem[]): readonly Problem[] {
  const place = ({ file, line, column }: Problem) => `${file}:${line}:${column}`;
  const places = new Set(told.map(place));
  return drafts.flatMap((draft) => computed(draft).problems).filter((problem) => !places.has(place(problem)));
}

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

/** Reads and computes every notebook of a content folder. */
export async function openBooks(content: string): Promise<Books> {
  const files = await loadContent(content);
  const slugs = new Set(
    files.map(({ path }) => /^notebooks\/([^/]+)\//.exec(path)?.[1]).filter((slug) => slug !== undefined),
  );
  const { plans, drafts, problems } = readContent(files);
  const all = plans.map(computed);
  const found = [...problems, ...all.flatMap((one) => one.problems), ...moreIn(drafts, problems)];
  return {
    slugs: [...slugs].sort(),
    notebooks: all.flatMap(({ notebook }) => (notebook === null ? [] : [notebook])),
    problems: slugs.size === 0 && found.length === 0 ? [nothingThere()] : sortedProblems(found),
  };
}

/** The books as if only this notebook were there, beside what all of them share. */
export function onlyOne(books: Books, slug: string): Books {
  return {
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
