import { describe, expect, it } from 'vitest';
import { compute, type Notebook } from '../../src/core/notebook.ts';
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

/** The demo notebook as it is on its site. */
async function demo(slug: string): Promise<Notebook> {
  const plan = readContent(await loadWithShipped('content', 'content')).plans.find((one) => one.slug === slug);
  const result = plan === undefined ? null : compute(plan);
  if (result === null || !result.ok) throw new Error(`${slug} does not compute`);
  return result.value;
}

type Share = 'dimensioned sheets' | 'pictures of steps and fixes';

/** Milliseconds to lay out every sheet of a notebook once, from nothing, in millimetres on A4. */
function laidOut(notebook: Notebook): Readonly<Record<Share, number>> & { readonly sheets: number } {
  const spent = { 'dimensioned sheets': 0, 'pictures of steps and fixes': 0, sheets: 0 };
  const { entries, layOut } = drawingSet(notebook);
  for (const { id, kind } of entries) {
    const start = performance.now();
    spent.sheets += layOut(id, { unit: 'mm', paper: 'A4' }).sheets.length;
    const share: Share = kind === 'assembly' || kind === 'fixes' ? 'pictures of steps and fixes' : 'dimensioned sheets';
    spent[share] += performance.now() - start;
  }
  return spent;
}

describe('drawing', () => {
  it('all sheets of the demo table with its track, wires and land', async () => {
    const notebook = await demo('bittern-basin');
    const runs = Array.from({ length: 6 }, () => laidOut(notebook));
    const best = (share: Share) => Math.min(...runs.map((run) => run[share]));
    const [first, sized, pictured] = [runs[0], best('dimensioned sheets'), best('pictures of steps and fixes')];
    console.log(
      `bittern-basin, ${first?.sheets} sheets: dimensioned ${Math.round(sized)} ms, pictures ${Math.round(pictured)} ms; ` +
        `the first time ${Math.round(first?.['dimensioned sheets'] ?? 0)} and ${Math.round(first?.['pictures of steps and fixes'] ?? 0)} ms`,
    );
    expect(first?.sheets).toBeGreaterThan(80);
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
