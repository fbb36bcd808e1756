import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { filesIn, spoil, testDesk } from './desk.ts';

const allThree = { 'index.html': 'bittern-basin lantern-siding window-shelf' };

test('a site is built where there was none', async () => {
  const desk = testDesk();
  expect(await run(desk, ['build'])).toBe(0);
  expect(filesIn(desk.dist)).toEqual(allThree);
});

test('the new site replaces the whole old one and nothing is left beside it', async () => {
  const desk = testDesk();
  mkdirSync(desk.dist);
  writeFileSync(join(desk.dist, 'index.html'), 'old');
  writeFileSync(join(desk.dist, 'gone.html'), 'old');
  expect(await run(desk, ['build'])).toBe(0);
  expect(filesIn(desk.dist)).toEqual(allThree);
  expect(readdirSync(dirname(desk.dist)).sort()).toEqual(['content', 'dist']);
});

test('a mistake in the content leaves the last site as it was and makes none', async () => {
  const made: string[] = [];
  const desk = testDesk({ makeSite: async (_, out) => void made.push(out) });
  mkdirSync(desk.dist);
  writeFileSync(join(desk.dist, 'index.html'), 'last good');
  spoil(desk, 'notebooks/window-shelf/benchwork.md', ['width: 300 mm', 'width: 300']);
  expect(await run(desk, ['build'])).toBe(1);
  expect(made).toEqual([]);
  expect(filesIn(desk.dist)).toEqual({ 'index.html': 'last good' });
  expect(desk.warned()).toContain('notebooks/window-shelf/benchwork.md:4:10');
});

test('build tells a mistake in the words of check', async () => {
  const desk = testDesk();
  spoil(desk, 'notebooks/window-shelf/benchwork.md', ['width: 300 mm', 'width: 300']);
  await run(desk, ['build']);
  const told = desk.warned().split('Nothing was built')[0] ?? '';
  expect(told.length).toBeGreaterThan(40);
  await run(desk, ['check']);
  expect(desk.said()).toContain(told);
});

test('a site that fails half way leaves the last one as it was', async () => {
  const desk = testDesk({
    makeSite: async (_, out) => {
      mkdirSync(out);
      writeFileSync(join(out, 'index.html'), 'half');
      throw new Error('out of disk');
    },
  });
  mkdirSync(desk.dist);
  writeFileSync(join(desk.dist, 'index.html'), 'last good');
  expect(await run(desk, ['build'])).toBe(2);
  expect(filesIn(desk.dist)).toEqual({ 'index.html': 'last good' });
  expect(readdirSync(dirname(desk.dist)).sort()).toEqual(['content', 'dist']);
});

test('a folder that is no site is not replaced', async () => {
  const desk = testDesk();
  mkdirSync(desk.dist);
  writeFileSync(join(desk.dist, 'letters.txt'), 'mine');
  expect(await run(desk, ['build'])).toBe(1);
  expect(filesIn(desk.dist)).toEqual({ 'letters.txt': 'mine' });
  for (const dist of [desk.content, dirname(desk.content), desk.root])
    expect(await run({ ...desk, dist }, ['build'])).toBe(1);
  expect(filesIn(desk.content)).toEqual(filesIn(testDesk().content));
});
