import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/core/log/calendar.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { openContent } from '../../src/reading/open.ts';

const root = new URL('../..', import.meta.url).pathname;
const shipped = join(root, 'content');

setFlagsFromString('--expose-gc');
const collect: () => void = runInNewContext('gc');

/** One day of work, with a bit of everything. */
function entryOf(i: number, photo: string | null): string {
  const date = addDays('2024-01-01', i);
  return `---
date: ${date}
chapter: benchwork
people: ${1 + (i % 3)}
minutes: ${15 + (i % 90)}
made: [side.front]
measured: [ { what: frame.thickness, readings: [11.${i % 9} mm, 11.7 mm], with: caliper, within: 0.05 mm } ]
fix: [ { part: side.front, at: ${20 + (i % 100)} mm, from: left, what: split, mend: glue, leaves: nothing } ]
decided: [ { what: glue ${i}, because: it holds } ]
upkeep: [ { what: oil ${i % 20}, again-in: 6 months } ]
spent: ${(i % 40) + 0.5} EUR
${photo === null ? '' : `photos: [ { file: ${photo}, alt: a board } ]\n`}---

Words of day ${i}. ${'They go on for a while. '.repeat(20)}
`;
}

/** A content folder whose one notebook has so many entries, every so-many-th with a photo. */
async function contentOf(entries: number, photos: number): Promise<string> {
  const content = mkdtempSync(join(tmpdir(), 'fettlebook-log-'));
  const book = join(content, 'notebooks', 'long-log');
  mkdirSync(join(book, 'photos'), { recursive: true });
  for (const goods of ['stock', 'trains']) cpSync(join(shipped, goods), join(content, goods), { recursive: true });
  cpSync(join(shipped, 'notebooks', 'window-shelf'), book, { recursive: true });
  rmSync(join(book, 'log'), { recursive: true });
  mkdirSync(join(book, 'log'));
  for (let i = 0; i < photos; i++) {
    const noise = { type: 'gaussian', mean: 128, sigma: 20 } as const;
    const picture = sharp({ create: { width: 1600, height: 1200, channels: 3, background: '#777', noise } });
    await picture.jpeg().toFile(join(book, 'photos', `p${i}.jpg`));
  }
  const every = Math.floor(entries / Math.max(1, photos));
  for (let i = 0; i < entries; i++) {
    const photo = i % every === 0 && i / every < photos ? `p${i / every}.jpg` : null;
    writeFileSync(join(book, 'log', `${addDays('2024-01-01', i)}-day-${i}.md`), entryOf(i, photo));
  }
  return content;
}

/** Parent of each process and its peak memory, MB; empty where there is no /proc. */
function processes(): readonly { readonly pid: number; readonly parent: number; readonly peak: number }[] {
  try {
    return readdirSync('/proc').flatMap((name) => {
      try {
        const status = /^\d+$/.test(name) ? readFileSync(`/proc/${name}/status`, 'utf8') : '';
        const value = (key: string) => Number(new RegExp(`^${key}:\\s*(\\d+)`, 'm').exec(status)?.[1] ?? 0);
        return status === '' ? [] : [{ pid: Number(name), parent: value('PPid'), peak: value('VmHWM') / 1024 }];
      } catch {
        return [];
      }
    });
  } catch {
    return [];
  }
}

function peakBelow(pid: number): number {
  const all = processes();
  const under = (one: number): number =>
    Math.max(
      0,
      ...all.filter((p) => p.pid === one).map((p) => p.peak),
      ...all.filter((p) => p.parent === one).map((p) => under(p.pid)),
    );
  return under(pid);
}

/** Seconds and peak memory, MB, of building a content folder in processes of their own. */
async function buildOf(content: string): Promise<{ readonly seconds: number; readonly peak: number }> {
  const out = mkdtempSync(join(root, 'dist-bench-'));
  rmSync(out, { recursive: true });
  const start = performance.now();
  const child = spawn(process.execPath, [join(root, 'src', 'cli', 'main.ts'), 'build'], {
    cwd: root,
    env: { ...process.env, NOTEBOOK_CONTENT: content, FETTLEBOOK_OUT: out },
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let said = '';
  child.stderr.on('data', (text: Buffer) => (said += text));
  let peak = 0;
  const watch = setInterval(() => (peak = Math.max(peak, peakBelow(child.pid ?? 0))), 200);
  const code = await new Promise((resolve) => child.on('close', resolve));
  clearInterval(watch);
  const seconds = (performance.now() - start) / 1000;
  rmSync(out, { recursive: true, force: true });
  if (code !== 0) throw new Error(said);
  return { seconds, peak };
}

const ratios = (values: readonly number[]) => values.slice(1).map((value, i) => value / (values[i] ?? value));
const told = (values: readonly number[]) => values.map((value) => value.toFixed(2)).join(', ');

describe('a long log', () => {
  it('is read and computed in time and memory that grow as it does', async () => {
    const counts = [125, 250, 500, 1000];
    const runs: { readonly ms: number; readonly mb: number }[] = [];
    for (const count of counts) {
      const content = await contentOf(count, 0);
      const files = await loadWithShipped(content, shipped);
      const times: number[] = [];
      let kept: unknown = null;
      collect();
      const before = process.memoryUsage().heapUsed;
      for (let i = 0; i < 3; i++) {
        const start = performance.now();
        kept = openContent(files, (notebook) => listDrawings(notebook).map(({ id }) => id));
        times.push(performance.now() - start);
      }
      collect();
      const { notebooks, problems } = kept as ReturnType<typeof openContent>;
      expect(problems).toEqual([]);
      expect(notebooks[0]?.notebook.log).toHaveLength(count);
      runs.push({ ms: Math.min(...times), mb: (process.memoryUsage().heapUsed - before) / 1e6 });
      rmSync(content, { recursive: true });
    }
    const [time, memory] = [ratios(runs.map(({ ms }) => ms)), ratios(runs.map(({ mb }) => mb))];
    console.log(`entries ${counts.join(', ')}: ${told(runs.map(({ ms }) => ms))} ms; ratios ${told(time)}`);
    console.log(`entries ${counts.join(', ')}: ${told(runs.map(({ mb }) => mb))} MB kept; ratios ${told(memory)}`);
    // Twice as many entries: linear is 2 at most, beside what the notebook costs without any.
    for (const ratio of [...time, ...memory]) expect(ratio).toBeLessThan(3);
  });

  it('of 500 entries and 60 photos builds in time and memory that grow as it does', async () => {
    const sizes = [
      [125, 15],
      [250, 30],
      [500, 60],
    ] as const;
    const runs: { readonly seconds: number; readonly peak: number }[] = [];
    for (const [entries, photos] of sizes) {
      const content = await contentOf(entries, photos);
      runs.push(await buildOf(content));
      rmSync(content, { recursive: true });
    }
    const [time, memory] = [ratios(runs.map(({ seconds }) => seconds)), ratios(runs.map(({ peak }) => peak))];
    const names = sizes.map(([entries, photos]) => `${entries} + ${photos}`).join(', ');
    console.log(`entries + photos ${names}: ${told(runs.map(({ seconds }) => seconds))} s; ratios ${told(time)}`);
    console.log(`entries + photos ${names}: ${told(runs.map(({ peak }) => peak))} MB at most; ratios ${told(memory)}`);
    for (const ratio of [...time, ...memory]) expect(ratio).toBeLessThan(3);
  });
});
