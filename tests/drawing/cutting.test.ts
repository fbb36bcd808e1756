import { describe, expect, test } from 'vitest';
import type { CutSheet } from '../../src/core/cutting/job.ts';
import { compute } from '../../src/core/notebook.ts';
import { cutBlocks } from '../../src/drawing/cutting-notes.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import type { Mark } from '../../src/drawing/mark.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';

const files = await loadContent(new URL('../../content', import.meta.url).pathname);
const plan = readContent(files).plans.find(({ slug }) => slug === 'bittern-basin');
if (plan === undefined) throw new Error('the demo was not read');
const result = compute(plan);
if (!result.ok) throw new Error(JSON.stringify(result.faults));
const notebook = result.value;

const texts = (marks: readonly Mark[]) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
const tenth = (mm: number) => String(Math.round(mm * 10) / 10);

/** Cuts of a sheet that somebody with its drawing in hand could not find: neither numbered on it nor placed in the list. */
function lost(sheet: CutSheet, marks: readonly Mark[]): readonly number[] {
  const discs = marks.flatMap((mark) => (mark.kind === 'circle' && mark.fill === 'paper' ? [mark.centre] : []));
  const onDisc = new Set(
    marks.flatMap((mark) =>
      mark.kind === 'text' && discs.some(([x, y]) => Math.hypot(mark.at[0] - x, mark.at[1] - y) < 3) ? [mark.text] : [],
    ),
  );
  const said = texts(marks).join('\n');
  return sheet.cuts
    .filter(({ number, kerf }) => {
      return !onDisc.has(String(number)) && !said.includes(`from ${tenth(kerf.x)}, ${tenth(kerf.y)} `);
    })
    .map(({ number }) => number);
}

describe('the cuts of a sheet', () => {
  test('are all numbered on it or placed in its list, on every sheet of the demo', () => {
    notebook.sheets.forEach((sheet, i) => {
      const { sheets } = layOutDrawing(notebook, `sheet.${i + 1}`, { unit: 'mm', paper: 'A4' });
      expect(
        lost(
          sheet,
          sheets.flatMap(({ marks }) => marks),
        ),
        `sheet ${i + 1}`,
      ).toEqual([]);
    });
  });

  test('are missed without their places where the sheet has no room for the number', () => {
    const crowded = notebook.sheets.filter((sheet, i) => {
      const { sheets } = layOutDrawing(notebook, `sheet.${i + 1}`, { unit: 'mm', paper: 'A4' });
      const bare = sheets.flatMap(({ marks }) =>
        marks.filter((one) => !(one.kind === 'text' && /from .* (?:up|along) to/.test(one.text))),
      );
      return lost(sheet, bare).length > 0;
    });
    expect(crowded.length).toBeGreaterThan(0);
  });

  test('need no places where all numbers are shown', () => {
    const [sheet] = notebook.sheets;
    if (sheet === undefined) throw new Error('the demo has sheets');
    const ask = { notebook, sheet, options: { unit: 'mm', paper: 'A4' }, scale: 10 } as const;
    const all = new Set(sheet.cuts.map(({ number }) => String(number)));
    expect(texts(cutBlocks(ask, all).flatMap(({ marks }) => marks)).join(' ')).not.toContain('from');
  });
});
