import { describe, expect, it } from 'vitest';
import { compute, type Notebook } from '../../src/core/notebook.ts';
import type { Plan } from '../../src/core/plan.ts';
import type { DrawingBook } from '../../src/drawing/book.ts';
import { drawingSet } from '../../src/drawing/layout.ts';
import { renderDrawing } from '../../src/drawing/render.ts';
import { plainDocument } from '../../src/drawing/window.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { bitternAsk, gridNotebook } from '../drawing/fixtures.ts';

/** Lays out and renders every drawing in both units, all sheets. */
function drawAll(book: DrawingBook): number {
  const { entries, layOut } = drawingSet(book);
  return entries.reduce((bytes, { id }) => {
    const both = (['mm', 'in'] as const).flatMap((unit) => layOut(id, { unit, paper: 'A4' }).sheets);
    return bytes + both.reduce((sum, sheet) => sum + renderDrawing(sheet, plainDocument()).length, 0);
  }, 0);
}

/** Milliseconds of the quickest of several runs. */
function quickest(run: () => unknown, runs: number): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return Math.min(...times);
}

/** A strut with so many slots, alone in its notebook. */
function comb(count: number): DrawingBook {
  const book = gridNotebook({ ...bitternAsk, length: 4800, across: count });
  return { ...book, benches: [], joints: [], sheets: [], parts: book.parts.filter(({ id }) => id === 'strut.along') };
}

/** A demo's plan, to be computed anew for every run, so that nothing kept with a notebook is there already. */
async function demoPlan(slug: string): Promise<Plan> {
  const plan = readContent(await loadWithShipped('content', 'content')).plans.find((one) => one.slug === slug);
  if (plan === undefined) throw new Error(`no demo ${slug}`);
  return plan;
}

function computed(plan: Plan): Notebook {
  const result = compute(plan);
  if (!result.ok) throw new Error(`${plan.slug} does not compute`);
  return result.value;
}

type Spent = { readonly sheets: number; readonly all: number; readonly pictures: number };

/** Milliseconds to lay out every sheet of a fresh notebook once, in millimetres on A4: all, and the pictures of steps and fixes among them. */
function laidOut(notebook: Notebook): Spent {
  const begun = performance.now();
  const { entries, layOut } = drawingSet(notebook);
  let [sheets, pictures] = [0, 0];
  for (const { id, kind } of entries) {
    const start = performance.now();
    sheets += layOut(id, { unit: 'mm', paper: 'A4' }).sheets.length;
    if (kind === 'assembly' || kind === 'fixes') pictures += performance.now() - start;
  }
  return { sheets, all: performance.now() - begun, pictures };
}

describe('drawing', () => {
  it('all sheets of the demo table, dimensioned ones and pictures, each run from a notebook just computed', async () => {
    const plan = await demoPlan('bittern-basin');
    const [cold, ...warm] = Array.from({ length: 9 }, () => laidOut(computed(plan)));
    const best = warm.reduce((least, one) => (one.all < least.all ? one : least));
    console.log(
      `bittern-basin, ALL ${best.sheets} sheets: ${Math.round(best.all)} ms warm ` +
        `(dimensioned ${Math.round(best.all - best.pictures)}, pictures of steps and fixes ${Math.round(best.pictures)}); ` +
        `the first time ${Math.round(cold?.all ?? 0)} ms`,
    );
    expect(best.sheets).toBeGreaterThan(80);
  });

  it('all drawings of a table in both units', () => {
    const book = gridNotebook(bitternAsk);
    drawAll(book);
    const all = quickest(() => drawAll(book), 5);
    console.log(`all drawings of a table, both units: ${Math.round(all)} ms, ${Math.round(drawAll(book) / 1024)} KB`);
    expect(all).toBeGreaterThan(0);
  });

  it('grows about as the number of features', () => {
    const counts = [8, 16, 32, 64];
    counts.forEach((count) => void drawAll(comb(count)));
    const times = counts.map((count) => quickest(() => drawAll(comb(count)), 5));
    const ratios = times.slice(1).map((time, i) => time / (times[i] ?? time));
    console.log(
      `slots ${counts.join(', ')}: ${times.map((time) => time.toFixed(1)).join(', ')} ms; ratios ${ratios.map((ratio) => ratio.toFixed(2)).join(', ')}`,
    );
    // Eight times the slots; a quadratic layout would take 64 times as long. The longest combs are parted in two views.
    expect((times.at(-1) ?? 0) / (times[0] ?? 1)).toBeLessThan(32);
  });
});
