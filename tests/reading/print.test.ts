import { expect, test } from 'vitest';
import { printProblem } from '../../src/reading/print.ts';

const problem = { rule: 'x', file: 'a.md', line: 3, column: 7, path: 'a', what: 'this is wrong', mend: 'mend it' };

test('a problem is printed as place and what, and its mend below', () => {
  expect(printProblem(problem)).toBe('a.md:3:7  this is wrong\n    mend: mend it');
});

test('nothing an author wrote can move the cursor or add a line', () => {
  const printed = printProblem({ ...problem, file: 'a\nb.md', what: 'x\u001b[2Jy\u202e' });
  expect(printed).toBe('a\\u000ab.md:3:7  x\\u001b[2Jy\\u202e\n    mend: mend it');
});
