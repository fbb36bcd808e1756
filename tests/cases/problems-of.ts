import { compute } from '../../src/core/notebook.ts';
import { problemAt } from '../../src/core/units/problem.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { printProblem } from '../../src/reading/print.ts';
import { readContent, sortedProblems } from '../../src/reading/read.ts';
import { withShipped } from '../../src/reading/shipped.ts';
import { survey } from '../../src/reading/survey.ts';

const SHIPPED = new URL('../../content', import.meta.url).pathname;

/** Everything wrong with a content folder, with the project's own stock and trains beside it, as it is printed. */
export async function problemsOf(folder: string): Promise<string> {
  const files = withShipped(await loadContent(folder), await loadContent(SHIPPED));
  const { plans, drafts, problems } = readContent(files);
  const places = new Set(problems.map(({ file, line, column }) => `${file}:${line}:${column}`));
  const more = [
    ...plans.flatMap((plan) => survey(plan, 'plan', compute).map((fault) => problemAt(plan.spots, fault))),
    ...drafts.flatMap((plan) => survey(plan, 'draft', compute).map((fault) => problemAt(plan.spots, fault))),
  ].filter(({ file, line, column }) => !places.has(`${file}:${line}:${column}`));
  return sortedProblems([...problems, ...more]).map((problem) => `${printProblem(problem)}\n`).join('');
}
