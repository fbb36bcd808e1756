import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { compute } from '../../src/core/notebook.ts';
import type { DrawingBook } from '../../src/drawing/book.ts';
import type { DrawingOptions } from '../../src/drawing/drawing.ts';
import { drawingSet } from '../../src/drawing/layout.ts';
import { renderDrawing } from '../../src/drawing/render.ts';
import { textWidth } from '../../src/drawing/text.ts';
import { plainDocument } from '../../src/drawing/window.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
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
import { drawingSet } from '/src/drawing/layout.ts';
import { renderDrawing } from '/src/drawing/render.ts';
globalThis.drawn = (book, options) => {
  const { entries, layOut } = drawingSet(book);
  return entries.flatMap(({ id }) => layOut(id, options).sheets.map((sheet) => renderDrawing(sheet, document)));
};
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

/** Every sheet of a notebook's drawings, drawn in Node. */
function sheetsOf(book: DrawingBook, options: DrawingOptions): readonly string[] {
  const { entries, layOut } = drawingSet(book);
  return entries.flatMap(({ id }) => layOut(id, options).sheets.map((sheet) => renderDrawing(sheet, plainDocument())));
}

async function expectSame(book: DrawingBook, options: DrawingOptions): Promise<number> {
  const here = sheetsOf(book, options);
  const there = await page.evaluate<string[]>(`drawn(${JSON.stringify(book)}, ${JSON.stringify(options)})`);
  expect(there.length).toBe(here.length);
  here.forEach((svg, i) => {
    const [ours, theirs] = [pulledApart(svg), pulledApart(there[i] ?? '')];
    expect(theirs.words).toBe(ours.words);
    const most = Math.max(...ours.numbers.map((number, k) => Math.abs(number - (theirs.numbers[k] ?? Number.NaN))));
    expect(most).toBeLessThanOrEqual(0.01);
  });
  return here.length;
}

test('the browser draws the same marks as Node, within 0.01 mm', async () => {
  expect(await expectSame(gridNotebook(bitternAsk), { unit: 'in', paper: 'Letter' })).toBeGreaterThan(10);
});

test('and so it does for every drawing of the demo with its track, wires, land and steps', async () => {
  const plan = readContent(await loadWithShipped('content', 'content')).plans.find(
    ({ slug }) => slug === 'bittern-basin',
  );
  const computed = plan === undefined ? null : compute(plan);
  expect.assert(computed?.ok);
  expect(await expectSame(computed.value, { unit: 'mm', paper: 'A4' })).toBeGreaterThan(90);
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
  const [sheet] = drawingSet(book).layOut('benchwork.plan', { unit: 'mm', paper: 'A4' }).sheets;
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
