import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { filesIn, spoil, type TestDesk, testDesk } from './desk.ts';

const day = '2026-11-25';

function logOf(desk: TestDesk, slug: string): Record<string, string> {
  return filesIn(join(desk.content, 'notebooks', slug, 'log'));
}

function written(desk: TestDesk, slug: string): readonly string[] {
  return Object.keys(logOf(desk, slug)).filter((name) => name.startsWith(day));
}

test('an entry holds what is next, and check accepts it', async () => {
  const desk = testDesk();
  expect(await run(desk, ['log', 'bittern-basin'])).toBe(0);
  const [name = ''] = written(desk, 'bittern-basin');
  const text = logOf(desk, 'bittern-basin')[name] ?? '';
  expect(text).toMatch(/^---\ndate: 2026-11-25\nchapter: benchwork\ndone: \[[a-z][a-z-]*\]\n/);
  expect(text).toContain('# take out what is not done');
  // What was planned is no record: nobody's time is made up.
  expect(text).not.toMatch(/^(?:minutes|people):/m);
  expect(await run(desk, ['check', 'bittern-basin', '--format', 'json'])).toBe(0);
});

test('for a measuring step it holds a line for each sheet nobody has measured', async () => {
  const desk = testDesk();
  expect(await run(desk, ['log', 'window-shelf'])).toBe(0);
  expect(desk.said()).toContain('for benchwork.measure-sheets.');
  const [name = ''] = written(desk, 'window-shelf');
  const text = logOf(desk, 'window-shelf')[name] ?? '';
  expect(text).toContain(
    '# measured:\n# - { what: frame.thickness, readings: [... mm, ... mm, ... mm], with: caliper }',
  );
  // Filled in and uncommented it is what check wants.
  const filled = text.replaceAll('# measured', 'measured').replace(/^# - /gm, '  - ');
  const readings = filled.replaceAll(
    'frame.thickness, readings: [... mm, ... mm, ... mm]',
    'frame.thickness, readings: [11.9 mm]',
  );
  const both = readings.replaceAll(
    'deck.thickness, readings: [... mm, ... mm, ... mm]',
    'deck.thickness, readings: [6.4 mm]',
  );
  writeFileSync(join(desk.content, 'notebooks', 'window-shelf', 'log', name), both);
  expect(await run(desk, ['check', 'window-shelf', '--level', 'note'])).toBe(0);
  expect(desk.said().slice(desk.said().indexOf('Wrote'))).not.toContain('nobody has measured');
});

test('a named step brings its chapter and the pieces it still makes', async () => {
  const desk = testDesk();
  expect(await run(desk, ['log', 'bittern-basin', '--step', 'table-drawers-box', '--words', 'Boxes at last'])).toBe(0);
  const text = logOf(desk, 'bittern-basin')[`${day}-boxes-at-last.md`] ?? '';
  expect(text).toContain('done: [table-drawers-box]');
  expect(await run(desk, ['check', 'bittern-basin'])).toBe(0);
});

test('two entries of one day stand beside each other; nothing is written over', async () => {
  const desk = testDesk();
  await run(desk, ['log', 'window-shelf', '--words', 'Evening']);
  const first = join(desk.content, 'notebooks', 'window-shelf', 'log', `${day}-evening.md`);
  writeFileSync(first, `${readFileSync(first, 'utf8')}My own words.\n`);
  const kept = readFileSync(first, 'utf8');
  expect(await run(desk, ['log', 'window-shelf', '--words', 'Evening'])).toBe(0);
  expect(await run(desk, ['log', 'window-shelf', '--words', 'Evening'])).toBe(0);
  expect(written(desk, 'window-shelf')).toEqual([`${day}-evening-2.md`, `${day}-evening-3.md`, `${day}-evening.md`]);
  expect(readFileSync(first, 'utf8')).toBe(kept);
  expect(await run(desk, ['check', 'window-shelf'])).toBe(0);
});

test('words of any kind name a file and stay inside the folder', async () => {
  const desk = testDesk();
  const before = Object.keys(filesIn(desk.content));
  for (const words of ['../../x', 'ÉTÉ: 1/2"', '漢字', '-- -- --', 'x'.repeat(400), 'a\u0000b'])
    expect(await run(desk, ['log', 'window-shelf', '--words', words]), words).toBe(0);
  const added = Object.keys(filesIn(desk.content)).filter((name) => !before.includes(name));
  expect(added).toHaveLength(6);
  for (const name of added) expect(name).toMatch(/^notebooks\/window-shelf\/log\/2026-11-25(?:-[a-z0-9]+)+\.md$/);
  expect(await run(desk, ['check', 'window-shelf'])).toBe(0);
});

test.each([
  [['log', 'bittern-bassin'], 'did you mean bittern-basin?'],
  [['log', 'bittern-basin', '--step', 'sand-hand'], 'did you mean'],
  [['log'], 'Usage: npm run log'],
])('%j is refused with what to type instead, and nothing is written', async (line, told) => {
  const desk = testDesk();
  const before = filesIn(desk.content);
  expect(await run(desk, line)).toBe(1);
  expect(desk.warned()).toContain(told);
  expect(filesIn(desk.content)).toEqual(before);
});

test('a notebook with mistakes is told of them first', async () => {
  const desk = testDesk();
  spoil(desk, 'notebooks/window-shelf/benchwork.md', ['width: 300 mm', 'width: 300']);
  expect(await run(desk, ['log', 'window-shelf'])).toBe(1);
  expect(desk.warned()).toMatch(/benchwork\.md:4:10[\s\S]*Nothing was written: \d+ to mend first\.\n$/);
  expect(existsSync(join(desk.content, 'notebooks', 'window-shelf', 'log', `${day}-entry.md`))).toBe(false);
});
