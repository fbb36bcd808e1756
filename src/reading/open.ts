import { compute, type Notebook } from '../core/notebook.ts';
import type { Plan } from '../core/plan.ts';
import type { Problem } from '../core/units/problem.ts';
import type { ContentFile } from './content-file.ts';
import { proseProblems } from './prose-names.ts';
import { readContent, sortedProblems } from './read.ts';
import { moreProblems } from './survey.ts';

/** A plan with what was computed from it. */
export type OpenedNotebook = { readonly plan: Plan; readonly notebook: Notebook };

/** A content folder, read and computed: what is right, and every mistake in it. */
export type OpenedContent = {
  /** every notebook's folder, whether it can be computed or not */
  readonly slugs: readonly string[];
  readonly notebooks: readonly OpenedNotebook[];
  readonly problems: readonly Problem[];
};

/** Ids of the drawings a notebook has, so that prose can't ask for others. */
export type DrawingIds = (notebook: Notebook) => readonly string[];

/** Reads and computes every notebook among the files; all mistakes of all of them at once, in reading order. */
export function openContent(files: readonly ContentFile[], drawingIds: DrawingIds): OpenedContent {
  const content = readContent(files);
  const notebooks = content.plans.flatMap((plan): readonly OpenedNotebook[] => {
    const result = compute(plan);
    return result.ok ? [{ plan, notebook: result.value }] : [];
  });
  const words = notebooks.flatMap(({ plan, notebook }) => proseProblems(plan, notebook, drawingIds(notebook)));
  const problems = sortedProblems([...content.problems, ...moreProblems(content, compute), ...words]);
  return { slugs: slugsOf(files), notebooks, problems };
}

function slugsOf(files: readonly ContentFile[]): readonly string[] {
  const slugs = files.flatMap(({ path }) => /^notebooks\/([^/]+)\//.exec(path)?.[1] ?? []);
  return [...new Set(slugs)].sort();
}
