import { describe, expect, it } from 'vitest';
import type { DrawingBook } from '../../src/drawing/book.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import { renderDrawing } from '../../src/drawing/render.ts';
import { plainDocument } from '../../src/drawing/window.ts';
import { bitternAsk, gridNotebook } from '../drawing/fixtures.ts';

/** Lays out and renders every drawing in both units, all sheets. */
function drawAll(book: DrawingBook): number {
  return listDrawings(book).reduce((bytes, { id }) => {
    const both = (['mm', 'in'] as const).flatMap((unit) => layOutDrawing(book, id, { unit, paper: 'A4' }).sheets);
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

describe('drawing', () => {
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
