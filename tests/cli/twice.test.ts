import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, statSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import process from 'node:process';
import { expect, test } from 'vitest';
import { filesIn, freshFolder } from './desk.ts';

const sources = ['src', 'content', 'astro.config.mjs', 'package.json', 'tsconfig.json'];

/** Moves the clock of a process by 400 days, whoever asks. */
const laterClock = `
const now = Date.now.bind(Date);
const by = 400 * 24 * 3600 * 1000;
globalThis.Date = class extends Date {
  constructor(...given) { given.length === 0 ? super(now() + by) : super(...given); }
  static now() { return now() + by; }
};
`;

function filesBelow(path: string): string[] {
  if (statSync(path).isFile()) return [path];
  return readdirSync(path).flatMap((name) => filesBelow(join(path, name)));
}

/** The project's sources in another folder, written one by one in the order given, all with the same old date. */
function checkout(root: string, order: (files: string[]) => string[]): string {
  for (const file of order(sources.flatMap(filesBelow).sort())) {
    const to = join(root, relative('.', file));
    mkdirSync(dirname(to), { recursive: true });
    cpSync(file, to);
  }
  symlinkSync(resolve('node_modules'), join(root, 'node_modules'));
  return root;
}

function built(root: string, env: NodeJS.ProcessEnv): Record<string, string> {
  const { NOTEBOOK_CONTENT, FETTLEBOOK_OUT, ...around } = process.env;
  const main = join(root, 'src', 'cli', 'main.ts');
  const done = spawnSync(process.execPath, [main, 'build'], {
    cwd: root,
    env: { ...around, ...env },
    encoding: 'utf8',
  });
  expect({ status: done.status, said: done.status === 0 ? '' : done.stdout + done.stderr }).toEqual({
    status: 0,
    said: '',
  });
  return filesIn(join(root, 'dist'));
}

test('two builds under another folder, clock, time zone, language and file order are the same bytes', () => {
  const folder = freshFolder();
  const here = checkout(join(folder, 'a'), (files) => files);
  const there = checkout(join(folder, 'another', 'folder with spaces'), (files) => files.reverse());
  for (const file of filesBelow(join(there, 'content'))) utimesSync(file, 1e9, 1e9);
  const clock = join(folder, 'clock.mjs');
  writeFileSync(clock, laterClock);
  const first = built(here, { TZ: 'UTC', LANG: 'C', LC_ALL: 'C' });
  const elsewhere = { TZ: 'Pacific/Kiritimati', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' };
  const second = built(there, { ...elsewhere, NODE_OPTIONS: `--import file://${clock}` });
  expect(Object.keys(first).length).toBeGreaterThan(20);
  expect(Object.keys(second)).toEqual(Object.keys(first));
  expect(Object.keys(first).filter((name) => first[name] !== second[name])).toEqual([]);
  expect(Object.keys(first).filter((name) => first[name]?.includes(folder))).toEqual([]);
}, 300_000);
