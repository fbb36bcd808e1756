import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { run } from '../../src/cli/run.ts';
import { filesIn, freshFolder, spoil, testDesk } from './desk.ts';

const contract = z.fromJSONSchema(JSON.parse(readFileSync('src/writing/notebook.schema.json', 'utf8')));

test.each(['bittern-basin', 'lantern-siding', 'window-shelf'])('%s is exported by the contract', async (slug) => {
  const out = join(freshFolder(), 'export');
  expect(await run(testDesk(), ['export', slug, '--out', out])).toBe(0);
  const files = filesIn(out);
  const json = JSON.parse(files['notebook.json'] ?? '');
  expect(contract.safeParse(json).error?.issues ?? []).toEqual([]);
  expect(json.notebook.slug).toBe(slug);
  expect(json.parts.length).toBeGreaterThan(3);
  const rows = (files['cut-list.csv'] ?? '').split('\r\n');
  const now = json.parts.filter(({ phase }: { phase: string }) => phase === 'now');
  expect(rows).toHaveLength(now.length + 2);
  const drawings = Object.keys(files).filter((name) => name.startsWith('drawings/'));
  expect(drawings.length).toBeGreaterThan(json.parts.length);
  for (const name of drawings)
    expect(files[name]).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"[\s\S]*<\/svg>\n$/);
});

test('an export is the same bytes each time, and drawings of an earlier one go', async () => {
  const [first, second] = [freshFolder(), freshFolder()];
  mkdirSync(join(second, 'drawings'));
  writeFileSync(join(second, 'notebook.json'), '{}');
  writeFileSync(join(second, 'drawings', 'old.svg'), '<svg/>');
  await run(testDesk(), ['export', 'window-shelf', '--out', first]);
  await run(testDesk(), ['export', 'window-shelf', `--out=${second}`]);
  expect(Object.keys(filesIn(first)).length).toBeGreaterThan(5);
  expect(filesIn(second)).toEqual(filesIn(first));
});

test('a folder with other things in it is not written into, an unknown notebook gets the nearest name', async () => {
  const desk = testDesk();
  const out = freshFolder();
  writeFileSync(join(out, 'letters.txt'), 'mine');
  expect(await run(desk, ['export', 'window-shelf', '--out', out])).toBe(1);
  expect(filesIn(out)).toEqual({ 'letters.txt': 'mine' });
  expect(await run(desk, ['export', 'windowshelf', '--out', freshFolder()])).toBe(1);
  expect(desk.warned()).toContain('did you mean window-shelf?');
});

test('a notebook with a mistake is not exported, its neighbours are', async () => {
  const desk = testDesk();
  spoil(desk, 'notebooks/window-shelf/benchwork.md', ['width: 300 mm', 'width: 300']);
  const out = freshFolder();
  expect(await run(desk, ['export', 'window-shelf', '--out', out])).toBe(1);
  expect(filesIn(out)).toEqual({});
  expect(desk.warned()).toContain('notebooks/window-shelf/benchwork.md:4:10');
  expect(await run(desk, ['export', 'lantern-siding', '--out', out])).toBe(0);
});
