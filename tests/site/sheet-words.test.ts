import { describe, expect, test } from 'vitest';
import type { CutJob, CutSheet } from '../../src/core/cutting/job.ts';
import { layOut } from '../../src/core/cutting/layout.ts';
import { fallsOff, labelOn, trimmedEdge } from '../../src/site/cut-words.ts';
import type { Book } from '../../src/site/notebooks.ts';
import { settingRows } from '../../src/site/settings-table.ts';
import { boundWords, pieceWords, savingWords, yardWords } from '../../src/site/sheet-words.ts';
import { overWords, quantityWords } from '../../src/site/shopping-words.ts';
import { notebook, prose } from './fixture.ts';

const job: CutJob = {
  stock: [
    {
      ...{ id: 'birch-ply-18', length: 1000, width: 500, grain: 'length', price: 1 },
      ...{ count: null, offcut: false, noGo: [] },
    },
  ],
  parts: [{ id: 'side', length: 900, width: 120, quantity: 3, grain: 'length' }],
  ...{ kerf: 3, trim: 5, style: { kind: 'saw', stages: 3 }, keep: 80, budget: 20 },
};
const [bare] = layOut(job).sheets;
if (bare === undefined) throw new Error('nothing was laid out');
const sheet: CutSheet = { ...bare, offcuts: bare.offcuts.map((area, i) => ({ ...area, label: `K${i + 1}` })) };
const book: Book = { notebook: { ...notebook, sheets: [sheet] }, prose, photos: '' };

const plain = (html: string) =>
  html
    .replace(/<span class="in">.*?<\/span>/g, '')
    .replace(/<[^>]+>/g, '')
    .replaceAll('\u00a0', ' ');

describe('what falls off a cut', () => {
  test('every piece of the sheet falls off exactly once, and each later cut has its piece named before', () => {
    const fallen = sheet.cuts.flatMap((cut) => fallsOff(book, sheet, cut).map((one) => ({ ...one, at: cut.number })));
    expect(fallen.filter(({ kind }) => kind === 'part').length).toBe(sheet.parts.length);
    expect(fallen.filter(({ kind }) => kind === 'keep').map(({ words }) => words)).toEqual(
      sheet.offcuts.map((_, i) => `keep K${i + 1}`),
    );
    const next = fallen.flatMap(({ at, words }) => {
      const number = /for cut (\d+)/.exec(words)?.[1];
      return number === undefined ? [] : [{ at, next: Number(number) }];
    });
    expect(next.every((one) => one.next > one.at)).toBe(true);
    expect(next.map((one) => one.next).toSorted((a, b) => a - b)).toEqual(
      sheet.cuts.slice(1).map(({ number }) => number),
    );
  });

  test('the four trims take four edges', () => {
    const trims = sheet.cuts.filter(({ kind }) => kind === 'trim').map(trimmedEdge);
    expect(trims.toSorted()).toEqual(['left', 'lower', 'right', 'upper']);
  });

  test('a piece goes by its own label once pieces are dealt out', () => {
    const [place] = sheet.parts;
    const [side] = notebook.parts;
    expect.assert(place !== undefined && side !== undefined);
    expect(labelOn(book, { ...place, part: side.id, instance: side.places[1]?.id ?? '' })).toBe(side.places[1]?.label);
    expect(labelOn(book, { ...place, part: 'nothing' })).toBe('nothing');
  });
});

test('settings gather the cuts of a stock, with the strips a whole sheet gives', () => {
  const rows = settingRows(book, 'birch-ply-18');
  const rip = rows.find(({ kind, setting }) => kind === 'rip' && setting === 120);
  expect(rip?.count).toBe(3);
  expect(rip?.cuts.map(({ sheet: number }) => number)).toEqual([1]);
  // 490 of width after two trims of 5; n = floor((490 + 3) / (120 + 3)) = 4
  expect(rip?.whole).toBe(4);
  expect(rows.every(({ count, whole }) => whole === null || count > 1)).toBe(true);
});

describe('in words', () => {
  test.each([
    [{ found: 1, bound: 1, proved: true }, '1 sheet'],
    [{ found: 3, bound: 3, proved: true }, '3 sheets, and 2 cannot do: proved'],
    [{ found: 3, bound: 2, proved: false }, '3 sheets found; at least 2 needed. Whether 2 can do is not known'],
    [{ found: 0, bound: 0, proved: true }, 'nothing to buy: what is in hand is enough'],
    [{ found: 1, bound: 0, proved: false }, '1 sheet beside what is in hand; whether none could do is not known'],
  ])('%j', (bound, words) => {
    expect(boundWords(book, { stock: 'birch-ply-18', ...bound })).toBe(words);
  });

  test('the change that saves a sheet', () => {
    const saving = {
      stock: 'birch-ply-18',
      part: 'side',
      side: 'width',
      from: 253,
      to: 245,
      sheets: 2,
      fewer: 1,
    } as const;
    expect(plain(savingWords(book, saving))).toContain('were 8 mm narrower: 245 mm instead of 253 mm.');
  });

  test('the cut at the yard, from which edge, and what it gives', () => {
    const [ask] = notebook.yard;
    expect.assert(ask !== undefined);
    expect(plain(yardWords(book, ask))).toContain(
      '1 sheet: one crosscut at 1300 mm from the left end. It gives 1300 × 1220 mm and 1137 × 1220 mm.',
    );
  });

  test('what a sheet is', () => {
    expect(pieceWords(book, sheet)).toBe('a new sheet');
    expect(pieceWords(book, { ...sheet, piece: 'K1' })).toBe('offcut K1 of sheet 1');
    expect(pieceWords(book, { ...sheet, piece: 'attic-shelf' })).toBe('attic-shelf, in hand');
  });

  test('how many to buy', () => {
    const [line] = notebook.shopping.lines;
    expect.assert(line !== undefined);
    expect(quantityWords({ ...line, quantity: 2 })).toBe('2 sheets');
    expect(quantityWords({ ...line, quantity: 2, unit: 'pack of 100' })).toBe('2 packs of 100');
    expect(quantityWords({ ...line, quantity: null })).toBe('to be judged');
    expect(overWords({ ...line, counted: 95, over: 10, inHand: 5, waste: null })).toEqual([
      '95 used',
      '10 spare',
      '5 in hand taken off',
    ]);
  });
});
