import { compute } from '../../src/core/notebook.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { printProblem } from '../../src/reading/print.ts';
import { readContent, sortedProblems } from '../../src/reading/read.ts';
import { withShipped } from '../../src/reading/shipped.ts';
import { moreProblems } from '../../src/reading/survey.ts';

const SHIPPED = new URL('../../content', import.meta.url).pathname;

/** Everything wrong with a content folder, with the project's own stock and trains beside it, as it is printed. */
export async function problemsOf(folder: string): Promise<string> {
  const files = withShipped(await loadContent(folder), await loadContent(SHIPPED));
  const content = readContent(files);
  const more = moreProblems(content, compute);
  return sortedProblems([...content.problems, ...more])
    .map((problem) => `${printProblem(problem)}\n`)
    .join('');
}
