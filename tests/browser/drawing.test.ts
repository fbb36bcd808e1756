import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import { renderDrawing } from '../../src/drawing/render.ts';
import { textWidth } from '../../src/drawing/text.ts';
import { plainDocument } from '../../src/drawing/window.ts';
import { bitternAsk, gridNotebook } from '../drawing/fixtures.ts';
import { launchChromium } from './chromium.ts';
import { packageAddress, sourcePage } from './sources.ts';

/** Bare names as the browser finds them; the sources go over as they are, their types taken off. */
const importMap = {
  imports: {
    '@svgdotjs/svg.js': '/node_modules/@svgdotjs/svg.js/dist/svg.esm.js',
    'clipper2-ts': packageAddress('clipper2-ts'),
  },
};

const font = '/node_modules/@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible-latin-';

const html = `<!doctype html><script type="importmap">${JSON.stringify(importMap)}</script>
<script type="module">
import { layOutDrawing } from '/src/drawing/layout.ts';
import { renderDrawing } from '/src/drawing/render.ts';
globalThis.drawn = (book, id, options) => layOutDrawing(book, id, options).sheets.map((sheet) => renderDrawing(sheet, document));
</script>
<style>@font-face { font-family: shipped; src: url(${font}400-normal.woff2) } @font-face { font-family: shipped; font-weight: 700; src: url(${font}700-normal.woff2) }</style>`;

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await launchChromium();
  page = await sourcePage(browser, html, 'drawn');
});

afterAll(async () => {
  await browser?.close();
});

/** Everything of a drawing's markup that is no number, and its numbers. */
function pulledApart(svg: string): { readonly words: string; readonly numbers: readonly number[] } {
  const even = svg.replaceAll('\u00a0', '&nbsp;');
  const numbers = [...even.matchAll(/-?\d+(?:\.\d+)?/g)].map(([number]) => Number(number));
  return { words: even.replaceAll(/-?\d+(?:\.\d+)?/g, '#'), numbers };
}

test('the browser draws the same marks as Node, within 0.01 mm', async () => {
  const book = gridNotebook(bitternAsk);
  for (const { id } of listDrawings(book)) {
    const options = { unit: 'in', paper: 'Letter' } as const;
    const here = layOutDrawing(book, id, options).sheets.map((sheet) => renderDrawing(sheet, plainDocument()));
    const asked = [book, id, options].map((value) => JSON.stringify(value)).join(', ');
    const there = await page.evaluate<string[]>(`drawn(${asked})`);
    expect(there.length).toBe(here.length);
    here.forEach((svg, i) => {
      const [ours, theirs] = [pulledApart(svg), pulledApart(there[i] ?? '')];
      expect(theirs.words).toBe(ours.words);
      const most = Math.max(...ours.numbers.map((number, k) => Math.abs(number - (theirs.numbers[k] ?? Number.NaN))));
      expect(most).toBeLessThanOrEqual(0.01);
    });
  }
});

test('the width table agrees with the browser that sets the type', async () => {
  const samples = [
    '1576.4',
    '62 31/32+',
    'Seen on its face 1:10',
    'Çà et là, Größe ½ × Ø',
    'back',
    'Rabbet of S1 and E1',
  ];
  const measured = await page.evaluate(async (texts) => {
    await Promise.all([document.fonts.load('100px shipped'), document.fonts.load('bold 100px shipped')]);
    const context = document.createElement('canvas').getContext('2d');
    if (context === null) return [];
    context.fontKerning = 'none';
    return ['100px shipped', 'bold 100px shipped'].flatMap((style) => {
      context.font = style;
      return texts.map((text) => context.measureText(text).width);
    });
  }, samples);
  // 100 px of em; textWidth takes the height of capitals, 668 of 1000 units.
  const ours = (['regular', 'bold'] as const).flatMap((weight) => samples.map((text) => textWidth(text, 66.8, weight)));
  expect(measured.length).toBe(ours.length);
  ours.forEach((width, i) => {
    expect(Math.abs(width - (measured[i] ?? Number.NaN))).toBeLessThanOrEqual(0.005 * width);
  });
});

test('a drawing of 297 mm is 297 mm wide on the page', async () => {
  const book = gridNotebook(bitternAsk);
  const [sheet] = layOutDrawing(book, 'benchwork.plan', { unit: 'mm', paper: 'A4' }).sheets;
  expect.assert(sheet !== undefined);
  const pixels = await page.evaluate(
    (svg) => {
      document.body.innerHTML = svg;
      return document.querySelector('svg')?.getBoundingClientRect().width ?? 0;
    },
    renderDrawing(sheet, plainDocument()),
  );
  expect(pixels).toBeCloseTo((297 * 96) / 25.4, 2);
});
