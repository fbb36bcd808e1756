import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadContent } from '../../src/reading/disk.ts';
import { printProblem } from '../../src/reading/print.ts';
import { readContent } from '../../src/reading/read.ts';
import { withShipped } from '../../src/reading/shipped.ts';
import { contentFile } from './read-one.ts';

const content = readContent(await loadContent('content'));
const stock = new Map(content.plans[0]?.stock.map((item) => [item.id, item]));
type Table<Row> = { readonly rows: readonly Row[] };
type Published = {
  readonly ps1: Table<[category: string, low: number, high: number, label: number]>;
  readonly birch: Table<[nominal: number, listed: number, low: number | null, high: number | null, density: number]>;
  readonly ps20: Table<[name: string, thickness: number, width: number]>;
  readonly awg: Table<[gauge: number, ohms: number]>;
};
const published: Published = JSON.parse(readFileSync('tests/published/sheet-goods.json', 'utf8'));

test('the content that comes with the project has no problems', () => {
  expect(content.problems.map(printProblem)).toEqual([]);
  expect(content.plans.map((plan) => plan.slug)).toEqual(['bittern-basin', 'lantern-siding', 'window-shelf']);
});

test('every item of stock and every train names its source', () => {
  expect(stock.size).toBeGreaterThan(60);
  for (const item of [...stock.values(), ...(content.plans[0]?.trains ?? [])])
    expect(item.source.length, item.id).toBeGreaterThan(8);
});

test.each(published.ps1.rows)('PS 1 category %s as read from the stock files', (category, low, high, label) => {
  const item = stock.get(`softwood-ply-${category.replace(/[ /]/g, '-')}`);
  expect(item?.kind).toBe('sheet');
  if (item?.kind !== 'sheet') return;
  expect(item.thickness.low).toBeCloseTo(low * 25.4, 9);
  expect(item.thickness.high).toBeCloseTo(high * 25.4, 9);
  expect(item.thickness.listed).toBeCloseTo(label * 25.4, 9);
});

test.each(published.birch.rows)('birch plywood %s mm as its maker lists it', (nominal, listed, low, high, density) => {
  const item = stock.get(`birch-ply-${nominal}`);
  if (item?.kind !== 'sheet') throw new Error('no such sheet');
  expect([item.thickness.nominal, item.thickness.listed, item.density]).toEqual([nominal, listed, density]);
  if (low !== null) expect([item.thickness.low, item.thickness.high]).toEqual([low, high]);
});

test.each(published.ps20.rows)('PS 20 %s', (name, thickness, width) => {
  const item = stock.get(`lumber-${name}`);
  if (item?.kind !== 'board') throw new Error('no such board');
  expect(item.thickness.listed).toBeCloseTo(thickness * 25.4, 9);
  expect(item.width).toBeCloseTo(width * 25.4, 9);
});

test.each(published.awg.rows)('AWG %s: area by the formula of ASTM B258, resistance as tabled', (gauge, ohms) => {
  const item = stock.get(`wire-awg-${gauge}`);
  if (item?.kind !== 'wire') throw new Error('no such wire');
  const diameter = 0.005 * 25.4 * 92 ** ((36 - gauge) / 39);
  expect(item.area / ((Math.PI * diameter ** 2) / 4)).toBeCloseTo(1, 3);
  expect(item.ohmPerMetre * 304.8).toBeCloseTo(ohms, 6);
  // the table agrees with the resistivity of annealed copper (IEC 60028: 0.017241 ohm mm2/m) to 1 %
  expect((item.ohmPerMetre * item.area) / 0.017241).toBeCloseTo(1, 1);
});

test("shipped stock joins an author's own, and the author's file of the same name wins", () => {
  const own = [contentFile('stock/wire.yaml', 'stock: []\n'), contentFile('notebooks/a/notebook.md', 'x')];
  const shipped = [
    contentFile('stock/wire.yaml', 'y'),
    contentFile('stock/foam.yaml', 'z'),
    contentFile('notebooks/b/notebook.md', 'x'),
  ];
  const all = withShipped(own, shipped);
  expect(all.map((file) => file.path)).toEqual(['notebooks/a/notebook.md', 'stock/foam.yaml', 'stock/wire.yaml']);
  expect(new TextDecoder().decode(all[2]?.bytes)).toBe('stock: []\n');
});
