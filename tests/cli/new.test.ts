import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { filesIn, freshFolder, spoil, testDesk } from './desk.ts';

test('a new notebook is a copy of window-shelf under its own title, without its log, and it passes', async () => {
  const desk = testDesk();
  expect(await run(desk, ['new', 'my-table'])).toBe(0);
  const [pattern, copy] = ['window-shelf', 'my-table'].map((slug) => filesIn(join(desk.content, 'notebooks', slug)));
  const chapters = Object.keys(pattern ?? {}).filter((name) => !name.startsWith('log/'));
  expect(Object.keys(copy ?? {})).toEqual(chapters);
  expect(chapters.length).toBeLessThan(Object.keys(pattern ?? {}).length);
  expect(copy?.['benchwork.md']).toBe(pattern?.['benchwork.md']);
  expect(copy?.['notebook.md']).toContain('title: "My Table"');
  expect(await run(desk, ['check', 'my-table'])).toBe(0);
});

test.each([
  ['../outside'],
  ['..'],
  ['.'],
  ['/elsewhere/x'],
  ['a/b'],
  ['a\\b'],
  ['C:x'],
  ['.hidden'],
  ['My-Table'],
  ['my_table'],
  ['-x'],
  ['my table'],
  ['tisch-ü'],
  ['a\u0000b'],
  ['x'.repeat(300)],
])('%j is refused and nothing is made', async (slug) => {
  const desk = testDesk();
  const before = [filesIn(desk.content), readdirSync(join(desk.content, '..'))];
  expect(await run(desk, ['new', slug])).toBe(1);
  expect([filesIn(desk.content), readdirSync(join(desk.content, '..'))]).toEqual(before);
  expect(desk.warned()).toContain('mend: ');
});

test('a notebook that is there already is left alone', async () => {
  const desk = testDesk();
  spoil(desk, 'notebooks/window-shelf/notebook.md', ['Window Shelf', 'Mine']);
  const before = filesIn(desk.content);
  expect(await run(desk, ['new', 'window-shelf'])).toBe(1);
  expect(desk.warned()).toContain('There is a notebook called window-shelf already.');
  expect(filesIn(desk.content)).toEqual(before);
});

test('a content folder of your own gets the stock it needs once', async () => {
  const content = join(freshFolder(), 'mine');
  const desk = testDesk({ content });
  expect(await run(desk, ['new', 'my-table'])).toBe(0);
  expect(existsSync(join(content, 'stock'))).toBe(true);
  expect(await run(desk, ['check'])).toBe(0);
});
