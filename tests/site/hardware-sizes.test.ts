import { expect, test } from 'vitest';
import { compute } from '../../src/core/notebook.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { hardwareTable, soldLength } from '../../src/site/hardware-words.ts';
import { prose } from './fixture.ts';

test('hardware keeps the length that shops name, in either unit a page is read in', () => {
  const said = [16, 30, 110, 450].map(soldLength);
  expect(said).toEqual(['16\u00a0mm', '30\u00a0mm', '110\u00a0mm', '450\u00a0mm']);
  const inches = [7 / 16, 0.75, 1.25, 4.5, 16].map((inch) => soldLength(inch * 25.4));
  expect(inches).toEqual(['7/16\u00a0in', '3/4\u00a0in', '1\u00a01/4\u00a0in', '4\u00a01/2\u00a0in', '16\u00a0in']);
});

test('holes are those that each item asks for: none for bolts into inserts, pilots alone for what fixes metal', async () => {
  const content = readContent(await loadContent(new URL('../../content', import.meta.url).pathname));
  const plan = content.plans.find(({ slug }) => slug === 'bittern-basin');
  const computed = plan === undefined ? null : compute(plan);
  if (computed === null || !computed.ok) throw new Error('the demo is not computed');
  const plain = (html: string) => html.replace(/<span class="in">.*?<\/span>/g, '').replace(/<[^>]+>/g, '');
  const rows = hardwareTable({ notebook: computed.value, prose, photos: '' }).rows.map((row) => row.map(plain));
  const holes = Object.fromEntries(rows.map(([item = '', , , hole = '']) => [item, hole.replaceAll(/\s+/g, ' ')]));
  // an insert of M6 in 8 by its stock, ISO 273 for M8, the table of screw holes for numbers 6 and 8
  expect(holes['Bolt M6 x 16 mm']).toBe('–');
  expect(holes['Screw-in insert M6']).toBe('8');
  expect(holes['Bolt M8 x 110 mm']).toBe('through 8.4');
  expect(holes['Wood screw 3.5 x 12 mm']).toBe('pilot 2');
  expect(holes['Wood screw 4 x 16 mm']).toBe('pilot 2.4');
  expect(holes['Wood screw 4 x 30 mm']).toBe('clearance 4.4, pilot 2.4');
});
