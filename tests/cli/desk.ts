import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Desk } from '../../src/cli/desk.ts';

/** A folder for one test, gone when the test is over. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'fettlebook-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Every file below a folder with its text. */
export function filesIn(folder: string): Record<string, string> {
  if (!existsSync(folder)) return {};
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = names.map((entry) => join(entry.parentPath, entry.name)).sort();
  return Object.fromEntries(
    paths.map((path) => [path.slice(folder.length + 1).replaceAll('\\', '/'), readFileSync(path, 'latin1')]),
  );
}

export type TestDesk = Desk & { readonly said: () => string; readonly warned: () => string };

/** A desk with the shipped content on it, in a folder of its own; the site is one page that names its content. */
export function testDesk(more: Partial<Desk> = {}): TestDesk {
  const folder = freshFolder();
  const [said, warned]: [string[], string[]] = [[], []];
  const content = join(folder, 'content');
  cpSync('content', content, { recursive: true });
  return {
    write: (text) => said.push(text),
    warn: (text) => warned.push(text),
    said: () => said.join(''),
    warned: () => warned.join(''),
    root: resolve('.'),
    content,
    dist: join(folder, 'dist'),
    makeSite: async (from, out) => {
      mkdirSync(out);
      writeFileSync(join(out, 'index.html'), readdirSync(join(from, 'notebooks')).sort().join(' '));
    },
    startSite: async () => ({ stop: async () => {} }),
    watch: () => () => {},
    today: () => '2026-11-25',
    untilStopped: async () => {},
    ...more,
  };
}

/** The content changed in one place of one file. */
export function spoil(desk: Desk, path: string, [before, after]: readonly [string | RegExp, string]): void {
  const file = join(desk.content, path);
  const text = readFileSync(file, 'utf8');
  const changed = text.replace(before, after);
  if (changed === text) throw new Error(`${path} does not hold ${before}`);
  writeFileSync(file, changed);
}
