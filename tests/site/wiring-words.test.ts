import { describe, expect, it } from 'vitest';
import { compute } from '../../src/core/notebook.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { holeTable } from '../../src/site/hole-words.ts';
import type { Book } from '../../src/site/notebooks.ts';
import { testGroups, testWords } from '../../src/site/test-words.ts';
import { wireTable } from '../../src/site/wire-words.ts';

const content = readContent(await loadWithShipped('content', 'content'));
const plan = content.plans.find(({ slug }) => slug === 'bittern-basin');
const answer = plan === undefined ? null : compute(plan);
if (answer === null || !answer.ok) throw new Error('the demo notebook does not compute');
const book: Book = { notebook: answer.value, prose: [], photos: '' };
const wires = answer.value.wiring?.wires ?? [];
const plain = (html: unknown) =>
  String(html)
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/\s+/g, ' ');

/** Wires of which no row says number, letter, colour and length in millimetres. */
function unsaid(rows: readonly string[]): readonly string[] {
  return wires
    .filter(({ colour, label, length }) => {
      const [, number = '', letter = ''] = /^(\d+)([a-z])$/.exec(label) ?? [];
      const mine = rows.filter((row) => row.trim().startsWith(`${number} `));
      return !mine.some((row) => row.includes(`${letter} ${colour}`) && row.includes(` ${length} `));
    })
    .map(({ label }) => label);
}

describe('the words of the wiring', () => {
  it('name every wire once with its number, letter, colour and length, a row for a number', () => {
    const rows = wireTable(book).rows.map((row) => row.map(plain).join(' '));
    expect(wires.length).toBeGreaterThan(60);
    expect(rows.length).toBe(new Set(wires.map(({ label }) => label.replace(/[a-z]$/, ''))).size);
    expect(unsaid(rows)).toEqual([]);
    // planted fault: one row lost
    expect(unsaid(rows.slice(1))).toEqual(['1a', '1b']);
  });

  it('hold every test once, those without power first', () => {
    const groups = testGroups(book);
    expect(groups.flatMap(({ tests }) => tests.map(({ tick }) => tick))).toEqual(
      testWords(book).map(({ tick }) => tick),
    );
    expect(groups.map(({ first }) => first)).toEqual([1, (groups[0]?.tests.length ?? 0) + 1]);
    for (const { content: row } of groups[0]?.tests ?? []) expect(plain(row.what)).toMatch(/^Supply off/);
  });

  it('place holes on boards by what is written on them, from an end that is marked', () => {
    const rows = holeTable(book).rows.map((row) => row.map(plain).join(' '));
    expect(rows.every((row) => / the (front|left|back|right) end /.test(row))).toBe(true);
    expect(rows.filter((row) => /strut\.|side\./.test(row))).toEqual([]);
  });
});
