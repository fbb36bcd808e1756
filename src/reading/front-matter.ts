import type { Problem } from '../core/units/problem.ts';
import { MOST_FRONT_MATTER } from './content-file.ts';
import { fileProblem } from './source.ts';

export type FrontMatter = {
  readonly yaml: string;
  readonly body: string;
  /** line of the file on which the body begins, from 1 */
  readonly bodyLine: number;
  readonly problems: readonly Problem[];
};

const NONE = { yaml: '', body: '', bodyLine: 1 };

function broken(file: string, what: string, mend: string): FrontMatter {
  return { ...NONE, problems: [fileProblem(file, { rule: 'front-matter', what, mend })] };
}

/** Parts a text into the front matter between two lines of three hyphens (it starts on line 2) and the body below. */
export function frontMatter(file: string, text: string): FrontMatter {
  if (text.trim() === '')
    return broken(file, 'the file is empty', 'begin with a line ---, then the keys, then a line ---');
  const opening = /^---[ \t]*\n/.exec(text);
  if (opening === null) {
    return broken(
      file,
      'the file does not begin with front matter',
      'make the first line --- and nothing else, then the keys, then a line ---',
    );
  }
  const start = opening[0].length;
  const closing = /^---[ \t]*$/m.exec(text.slice(start));
  if (closing === null) return broken(file, 'the front matter never ends', 'put a line --- after the last key');
  const yaml = text.slice(start, start + closing.index);
  if (yaml.length > MOST_FRONT_MATTER) {
    return broken(
      file,
      `the front matter is longer than ${MOST_FRONT_MATTER} characters`,
      'move words below it, and spread long lists over more files',
    );
  }
  const body = text.slice(start + closing.index + closing[0].length).replace(/^\n/, '');
  const lines = yaml.split('\n').length;
  return { yaml, body, bodyLine: lines + 2, problems: [] };
}
