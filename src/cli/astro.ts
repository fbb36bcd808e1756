import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { env, execPath } from 'node:process';
import type { RunningSite } from './desk.ts';

/** Astro in a process of its own: its settings come by the environment, and it can't leave anything behind in ours. */
function astro(root: string, words: readonly string[], more: Readonly<Record<string, string>>) {
  const program = join(root, 'node_modules', 'astro', 'bin', 'astro.mjs');
  return spawn(execPath, [program, ...words], {
    cwd: root,
    env: { ...env, ...more, ASTRO_TELEMETRY_DISABLED: '1', NO_COLOR: '1', FORCE_COLOR: undefined },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

/** Builds the site of a content folder into a fresh folder. Errors: what Astro said when it could not. */
export function makeSite(root: string): (content: string, out: string) => Promise<void> {
  return (content, out) => {
    return new Promise((resolve, reject) => {
      const child = astro(root, ['build', '--force'], {
        NOTEBOOK_CONTENT: content,
        FETTLEBOOK_OUT: out,
        NODE_ENV: 'production',
      });
      let said = '';
      for (const stream of [child.stdout, child.stderr]) stream.on('data', (text: Buffer) => (said += text));
      child.on('error', reject);
      child.on('close', (code) =>
        code === 0 ? resolve() : reject(new Error(`the site could not be built (${code})\n${said}`)),
      );
    });
  };
}

async function answers(address: string): Promise<boolean> {
  try {
    await fetch(address);
    return true;
  } catch {
    return false;
  }
}

/** Starts Astro on a port and waits until it answers. */
export function startSite(root: string): (content: string, port: number) => Promise<RunningSite> {
  return async (content, port) => {
    const words = ['dev', '--host', '127.0.0.1', '--port', String(port)];
    const child = astro(root, words, { NOTEBOOK_CONTENT: content, NODE_ENV: 'development' });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (text: Buffer) => (said += text));
    const ended = new Promise<void>((resolve) => child.on('close', () => resolve()));
    while (!(await answers(`http://127.0.0.1:${port}/`))) {
      if (child.exitCode !== null) throw new Error(`the site could not be started (${child.exitCode})\n${said}`);
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    return {
      stop: () => {
        child.kill();
        return ended;
      },
    };
  };
}
