import { join } from 'node:path';
import { expect, test } from 'vitest';
import { dev } from '../../src/cli/dev.ts';
import { filesIn, spoil, type TestDesk, testDesk } from './desk.ts';

const bench = 'notebooks/window-shelf/benchwork.md';

/** Runs dev with a hand on the watch: each change is made, seen, and looked at before the next. */
async function session(changes: (desk: TestDesk, seen: () => Promise<unknown>) => Promise<void>, width = '300 mm') {
  const shown: string[] = [];
  const running = new Set<number>();
  let look: () => unknown = () => {};
  const desk: TestDesk = testDesk({
    watch: (_, changed) => {
      look = changed;
      return () => {};
    },
    startSite: async (content) => {
      shown.push(filesIn(join(content, 'notebooks', 'window-shelf'))['benchwork.md'] ?? 'nothing');
      const site = shown.length;
      running.add(site);
      return { stop: async () => void running.delete(site) };
    },
    untilStopped: () => changes(desk, async () => look()),
  });
  if (width !== '300 mm') spoil(desk, bench, ['width: 300 mm', `width: ${width}`]);
  const code = await dev(desk);
  return { desk, shown, code, running: running.size };
}

test('each content without problems is shown, and everything ends', async () => {
  const { shown, code, running, desk } = await session(async (desk, seen) => {
    spoil(desk, bench, ['width: 300 mm', 'width: 310 mm']);
    await seen();
  });
  expect(shown.map((text) => /width: (.*)/.exec(text)?.[1])).toEqual(['300 mm', '310 mm']);
  expect([code, running]).toEqual([0, 0]);
  expect(filesIn(`${desk.dist}-dev`)).toEqual({});
});

test('problems are told as check tells them, and the last good content stays on the pages', async () => {
  let kept: string | undefined;
  const { shown, desk } = await session(async (desk, seen) => {
    spoil(desk, bench, ['width: 300 mm', 'width: 300']);
    await seen();
    kept = filesIn(`${desk.dist}-dev`)[bench];
  });
  expect(shown).toHaveLength(1);
  expect(kept).toContain('width: 300 mm');
  expect(desk.warned()).toMatch(/^notebooks\/window-shelf\/benchwork\.md:4:10 {2}.*\n {4}mend: /);
  expect(desk.warned()).toContain('1 to mend; pages show the last content without problems.');
});

test('a start with problems shows nothing until they are mended', async () => {
  const { shown, desk } = await session(async (desk, seen) => {
    spoil(desk, bench, ['width: 300\n', 'width: 320 mm\n']);
    await seen();
  }, '300');
  expect(desk.warned()).toContain('1 to mend; pages come when they are mended.');
  expect(shown.map((text) => /width: (.*)/.exec(text)?.[1])).toEqual(['320 mm']);
});
