import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process, { env, stdout } from 'node:process';
import { fileURLToPath } from 'node:url';
import { installedChromium, unpackedChromium } from '../src/cli/chromium.mjs';
import { type Outcome, outcomesOf, reportText, skippedIn, type VitestReport } from './report.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const browser = installedChromium(env) ?? unpackedChromium(root);
const around = {
  ...env,
  ...(browser === null ? {} : { CHROMIUM_PATH: browser }),
  NO_COLOR: '1',
  FORCE_COLOR: undefined,
};

type Run = { readonly code: number | null; readonly said: string };

/** Runs a program of node_modules on this Node, so that no other version gets hold of it. */
function program(path: string, ...words: readonly string[]): Promise<Run> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(root, 'node_modules', path), ...words], { cwd: root, env: around });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (text: Buffer) => (said += text));
    child.on('error', (error) => resolve({ code: null, said: String(error) }));
    child.on('close', (code) => resolve({ code, said }));
  });
}

function outcome(group: string, name: string, runs: readonly Run[]): Outcome {
  const bad = runs.filter(({ code }) => code !== 0);
  return { group, name, passed: bad.length === 0, said: bad.map(({ said }) => said).join('\n') };
}

/** Astro's check comes before the whole project's types, because it writes the types that pages have. */
async function types(): Promise<Outcome> {
  const core = await program('typescript/bin/tsc', '--noEmit', '-p', 'src/core/tsconfig.json');
  const pages = await program('astro/bin/astro.mjs', 'check', '--minimumFailingSeverity', 'warning');
  const all = await program('typescript/bin/tsc', '--noEmit', '-p', 'tsconfig.json');
  return outcome('types', 'types', [core, pages, all]);
}

async function lint(): Promise<Outcome> {
  const words = ['check', '--config-path=.biome', '--error-on-warnings', '--max-diagnostics=50', '.'];
  return outcome('lint', 'lint and format', [await program('@biomejs/biome/bin/biome', ...words)]);
}

function reportIn(file: string): VitestReport | null {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return null;
  }
}

async function tests(): Promise<{ readonly outcomes: readonly Outcome[]; readonly skipped: number }> {
  const folder = mkdtempSync(join(tmpdir(), 'fettlebook-tests-'));
  const file = join(folder, 'report.json');
  const { said } = await program(
    'vitest/vitest.mjs',
    'run',
    '--config',
    'tests/vitest.config.ts',
    '--reporter=json',
    `--outputFile=${file}`,
  );
  const report = reportIn(file);
  rmSync(folder, { recursive: true });
  return { outcomes: outcomesOf(report, said), skipped: report === null ? 0 : skippedIn(report) };
}

stdout.write('Types and lint ...\n');
const [typed, linted] = await Promise.all([types(), lint()]);
stdout.write('Tests ...\n');
const { outcomes, skipped } = await tests();
const all = [typed, linted, ...outcomes];
stdout.write(`${reportText(all, skipped)}\n`);
process.exitCode = all.every(({ passed }) => passed) ? 0 : 1;
