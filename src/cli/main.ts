import { watch } from 'node:fs';
import { join, resolve } from 'node:path';
import process, { argv, env, stderr, stdout } from 'node:process';
import { fileURLToPath } from 'node:url';
import { makeSite, startSite } from './astro.ts';
import type { Desk } from './desk.ts';
import { run } from './run.ts';

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

/** Several changes within a moment count as one: editors write a file in more than one go. */
function watchFolder(folder: string, changed: () => unknown): () => void {
  let timer: NodeJS.Timeout | undefined;
  const watcher = watch(folder, { recursive: true }, () => {
    clearTimeout(timer);
    timer = setTimeout(changed, 150);
  });
  return () => {
    clearTimeout(timer);
    watcher.close();
  };
}

function untilStopped(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
}

/** The local day as ISO writes it. */
function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const desk: Desk = {
  write: (text) => stdout.write(text),
  warn: (text) => stderr.write(text),
  root,
  content: resolve(env.NOTEBOOK_CONTENT ?? join(root, 'content')),
  dist: resolve(env.FETTLEBOOK_OUT ?? join(root, 'dist')),
  makeSite: makeSite(root),
  startSite: startSite(root),
  watch: watchFolder,
  today,
  untilStopped,
};

// A reader that stops early, as `check | head` does, is no error.
stdout.on('error', () => process.exit(0));
process.exitCode = await run(desk, argv.slice(2));
