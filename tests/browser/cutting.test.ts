import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { CutJob } from '../../src/core/cutting/job.ts';
import { layOut } from '../../src/core/cutting/layout.ts';
import { instances2d, jobOf } from '../bench/instances.ts';
import { launchChromium } from './chromium.ts';
import { sourcePage } from './sources.ts';

const html = `<!doctype html><script type="module">
import { layOut } from '/src/core/cutting/layout.ts';
globalThis.laid = (jobs) => jobs.map((job) => JSON.stringify(layOut(job)));
</script>`;

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await launchChromium();
  page = await sourcePage(browser, html, 'laid');
});

afterAll(async () => {
  await browser?.close();
});

/** A frame's sheets: kerf, trim, grain, a knot, an offcut in hand, two sizes; sizes that are no whole numbers of anything. */
const frame: CutJob = {
  stock: [
    { ...{ id: 'kept', length: 917.3, width: 402.7, grain: 'length', price: 0, count: 1, offcut: true }, noGo: [] },
    {
      ...{ id: 'ply', length: 2440, width: 1220, grain: 'length', price: 98, count: null, offcut: false },
      noGo: [{ x: 700.1, y: 300.2, length: 40.3, width: 30.4 }],
    },
    { ...{ id: 'half', length: 1220, width: 1220, grain: 'length', price: 55, count: 2, offcut: false }, noGo: [] },
  ],
  parts: [
    { id: 'side', length: 1600, width: 170, quantity: 2, grain: 'length' },
    { id: 'end', length: 1076.4333333, width: 170, quantity: 2, grain: 'length' },
    { id: 'strut', length: 1076.4333333, width: 135, quantity: 3, grain: 'length' },
    { id: 'flange', length: 502.3, width: 60.1, quantity: 8, grain: 'length' },
    { id: 'face', length: 311.7, width: 110.8, quantity: 9, grain: 'any' },
  ],
  ...{ kerf: 2.4, trim: 5, style: { kind: 'saw', stages: 3 }, keep: 120, budget: 100 },
};

const jobs: readonly CutJob[] = [
  frame,
  { ...frame, style: { kind: 'saw', stages: 'any' } },
  { ...frame, style: { kind: 'router', bit: 6.35 }, stock: frame.stock.slice(1) },
  ...instances2d()
    .filter((_, i) => i % 50 === 7)
    .flatMap((one) => [jobOf(one, 'oriented', 20), jobOf(one, 'rotated', 20)]),
];

test('the browser lays sheets out as Node does, to the byte', async () => {
  const here = jobs.map((job) => JSON.stringify(layOut(job)));
  const there = await page.evaluate<string[]>(`laid(${JSON.stringify(jobs)})`);
  expect(there).toEqual(here);
  expect(here.length).toBeGreaterThan(20);
  // a layout of nothing would be the same everywhere
  for (const answer of here) expect(answer.length).toBeGreaterThan(500);
});
