import { expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { testDesk } from './desk.ts';

test('without a command the usage is shown', async () => {
  const desk = testDesk();
  expect(await run(desk, [])).toBe(1);
  for (const name of ['build', 'serve', 'dev', 'check', 'export', 'new'])
    expect(desk.said()).toContain(`npm run ${name}`);
});

test.each([['--help'], ['check', '--help'], ['help']])('%s shows the usage and is no mistake', async (...line) => {
  const desk = testDesk();
  expect(await run(desk, line)).toBe(0);
  expect(desk.said()).toMatch(/^Usage\n/);
});

test.each([
  [['chekc'], 'There is no command "chekc". Did you mean check?'],
  [['constructor'], 'There is no command "constructor".'],
  [['check', '--fromat', 'json'], 'mend: did you mean --format?'],
  [['check', '--format'], '--format has no value.'],
  [['check', '--format', 'xml'], 'mend: write --format text or --format json'],
  [['check', '--format=json', '--format=text'], '--format is given twice.'],
  [['check', 'a', 'b'], '"b" is one word too many.'],
  [['build', '--fast'], 'There is no option --fast.'],
  [['check', 'window-shelf', '--', '--level', 'note'], 'A second -- stands on this line.'],
  [['export'], 'Something is missing on this line.'],
  [['export', 'window-shelf'], 'mend: npm run export -- window-shelf --out FOLDER'],
  [['new'], 'Something is missing on this line.'],
])('%j is told with what to type instead', async (line, told) => {
  const desk = testDesk();
  expect(await run(desk, line)).toBe(1);
  expect(desk.warned()).toContain(told);
  expect(desk.warned()).not.toContain('bug');
});

test('what we did wrong ends with 2 and its stack', async () => {
  const broken = async () => {
    throw new Error('the floor gave way');
  };
  const desk = testDesk({ makeSite: broken });
  expect(await run(desk, ['build'])).toBe(2);
  expect(desk.warned()).toMatch(/This is a bug of Fettlebook[^\n]*\nError: the floor gave way\n {4}at /);
});
