import { expect, test } from 'vitest';
import { compute } from '../../src/core/notebook.ts';
import { joinsPieces } from '../../src/core/stock/fastener.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { takingOff } from '../../src/site/apart-words.ts';
import { picturedSteps } from '../../src/site/assembly-words.ts';
import { fasteningTable } from '../../src/site/fastening-words.ts';
import { machiningTable } from '../../src/site/machining-words.ts';
import type { Book } from '../../src/site/notebooks.ts';
import { prose } from './fixture.ts';

const content = readContent(await loadContent(new URL('../../content', import.meta.url).pathname));
const plan = content.plans.find(({ slug }) => slug === 'bittern-basin');
const computed = plan === undefined ? null : compute(plan);
if (computed === null || !computed.ok) throw new Error('the demo is not computed');
const notebook = computed.value;
const book: Book = { notebook, prose, photos: '' };
const [assembly] = notebook.assembly;
if (assembly === undefined) throw new Error('the demo has no bench');

function plain(html: string): string {
  return html
    .replace(/<span class="in">.*?<\/span>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
}

test('every screw and bolt is driven after the picture in which the last of its pieces goes in', () => {
  const { steps } = picturedSteps(book, assembly);
  const table = fasteningTable(book, assembly, steps);
  const rows = (table?.rows ?? []).map((row) => row.map(plain));
  expect(rows.reduce((sum, row) => sum + Number(row[1]), 0)).toBe(notebook.fasteners.filter(joinsPieces).length);
  const leg = rows.find((row) => row[3]?.startsWith('S1 , P1A'));
  const on = steps.find(({ step }) => step.within === null && step.parts.includes('leg.front-left.layer-1'));
  expect(leg?.slice(0, 2)).toEqual([String(on?.number), '2']);
  const after = rows.map((row) => Number(row[0]));
  expect(after).toEqual([...after].sort((a, b) => a - b));
});

test('drawers come off before the frame is turned over for its legs, bolts first', () => {
  const lines = takingOff(book, assembly).map(plain);
  expect(lines).toHaveLength(6);
  expect(lines[0]).toMatch(/^drawer, front 3 .*: drawn out to the front\.$/);
  expect(lines[2]).toMatch(/^Turn the frame over, two adults, .* Draw 2 bolts: leg, back right .*: lifted off\.$/);
});

test('a side is ripped first and drilled after its dados, the first dado tried in scrap', () => {
  const side = notebook.parts.find(({ id }) => id === 'side.front');
  const rows = (side === undefined ? [] : (machiningTable(book, side)?.rows ?? [])).map((row) => row.map(plain));
  expect(rows[0]?.slice(0, 3)).toEqual(['rip', 'table saw', 'fence 170']);
  expect(rows[1]?.slice(0, 3)).toEqual(['crosscut', 'table saw', 'stop 1600']);
  // a bit of 12.7 in a base of 75: the dado from 395.375 to 413.375 is guided at 326.7 and 332.1
  expect(rows[2]).toEqual([
    'dado try it in scrap and log the fit first clamped together, left ends flush: S1 , S2',
    'router',
    'begins at 395.4',
    '326.7 , 332.1',
    '12.7',
    '5.9',
  ]);
  expect(rows.findIndex((row) => row[0] === 'hole')).toBeGreaterThan(
    rows.findLastIndex((row) => row[0]?.startsWith('rabbet')),
  );
});
