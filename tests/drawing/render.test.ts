import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import { colourSets, drawingStyles, pens } from '../../src/drawing/pens.ts';
import { renderDrawing, standaloneDrawing } from '../../src/drawing/render.ts';
import { plainDocument } from '../../src/drawing/window.ts';
import { bitternAsk, gridNotebook } from './fixtures.ts';

const notebook = gridNotebook(bitternAsk);
const ids = listDrawings(notebook).map(({ id }) => id);

function svgOf(id: string, unit: 'mm' | 'in' = 'mm'): string {
  return renderDrawing(layOutDrawing(notebook, id, { unit, paper: 'A4' }), plainDocument());
}

describe('a rendered drawing', () => {
  test('is the same bytes each time, whatever was drawn before', () => {
    const alone = svgOf('part.end');
    for (const id of ids) svgOf(id, 'in');
    expect(svgOf('part.end')).toBe(alone);
  });

  test('is a true size image with a title and a description', () => {
    const svg = svgOf('benchwork.plan');
    expect(svg).toMatch(/^<svg [^>]*role="img"[^>]*width="297mm" height="210mm" viewBox="0 0 297 210"/);
    expect(svg).toContain('<title id="drawing-benchwork-plan-mm-1-title">Plan of table</title>');
    expect(svg).toContain('The frame is 1600 mm long and 1100 mm wide');
  });

  test('carries no style attribute, no script and nothing of the machine that drew it', () => {
    for (const id of ids) {
      const svg = svgOf(id);
      expect(svg).not.toMatch(/ style=|<script|data-svgjs|NaN|Infinity|undefined|file:/);
    }
  });

  test('has ids of its own in each unit', () => {
    const all = ids
      .flatMap((id) => [svgOf(id, 'mm'), svgOf(id, 'in')])
      .flatMap((svg) => [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id));
    expect(new Set(all).size).toBe(all.length);
    expect(all.length).toBe(ids.length * 2 * 3);
  });

  test('writes the words of a hostile title as words', () => {
    const hostile = { ...notebook, title: '</title><script>alert(1)</script>&"' };
    const svg = renderDrawing(layOutDrawing(hostile, 'part.end', { unit: 'mm', paper: 'A4' }), plainDocument());
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&lt;/title&gt;&lt;script&gt;');
  });

  test('rounds to a hundredth of a millimetre', () => {
    const longer = svgOf('benchwork.section').match(/\d\.\d{3,}/g) ?? [];
    expect(longer).toEqual([]);
  });

  test('stands alone with its styles inside', () => {
    const alone = standaloneDrawing(svgOf('part.end'));
    expect(alone).toContain('<style>/* Written by make-styles.ts');
    expect(alone.match(/<style>/g)).toHaveLength(1);
  });
});

/** Relative luminance and contrast, WCAG 2.2, "relative luminance" and "contrast ratio". */
function luminance(colour: string): number {
  const channel = (at: number) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].toSorted((x, y) => y - x);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}

describe('the styles', () => {
  test('are the same in the file for the site as in the code', () => {
    const file = readFileSync(new URL('../../src/drawing/drawing.css', import.meta.url), 'utf8');
    const bare = (css: string) => css.replaceAll(/\s/g, '');
    expect(bare(file)).toBe(bare(drawingStyles));
  });

  test('name every pen that draws', () => {
    for (const name of Object.keys(pens)) if (name !== 'none') expect(drawingStyles).toContain(`.pen-${name} {`);
  });

  for (const [name, set] of Object.entries(colourSets)) {
    test(`of the ${name} set reach 4.5:1 for lettering and 3:1 for lines`, () => {
      for (const ground of [set.paper, set.wood, set.shade]) {
        expect(contrast(set.ink, ground)).toBeGreaterThanOrEqual(4.5);
        expect(contrast(set.quiet, ground)).toBeGreaterThanOrEqual(4.5);
      }
    });
  }

  test('the contrast formula knows black on white and a grey', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });
});
