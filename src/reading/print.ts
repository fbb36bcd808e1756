import type { Problem } from '../core/units/problem.ts';

/** Characters that could move a terminal's cursor or break the list's lines are shown by their code. */
function harmless(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/g, (character) => {
    return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
  });
}

/** One problem as check, build and dev print it: place and what on the first line, the mend below. */
export function printProblem(problem: Problem): string {
  const place = `${harmless(problem.file)}:${problem.line}:${problem.column}`;
  return `${place}  ${harmless(problem.what)}\n    mend: ${harmless(problem.mend)}`;
}
