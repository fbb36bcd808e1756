import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Books } from '../../src/cli/books.ts';
import { asText, verdict } from '../../src/cli/check.ts';
import { run } from '../../src/cli/run.ts';
import { loadWithShipped } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { shelf } from '../writing/shelf.ts';
import { spoil, testDesk } from './desk.ts';

const shipped = join(import.meta.dirname, '../../content');
const { plans } = readContent(await loadWithShipped(shipped, shipped));
const plan = plans.find(({ slug }) => slug === 'window-shelf');
if (plan === undefined) throw new Error('the small demo is there');
const books: Books = { slugs: ['shelf'], notebooks: [shelf], plans: [{ ...plan, slug: 'shelf' }], problems: [] };
const halted: Books = {
  ...books,
  notebooks: [{ ...shelf, findings: shelf.findings.map((one) => ({ ...one, level: 'halt' })) }],
};
const mistaken: Books = {
  ...books,
  problems: [
    {
      rule: 'unit',
      file: 'notebooks/shelf/benchwork.md',
      line: 3,
      column: 11,
      path: 'dimensions.side',
      what: 'x',
      mend: 'y',
    },
  ],
};

test('a care is clean; an open halt or a problem is not', () => {
  expect([books, halted, mistaken].map(verdict)).toEqual([0, 1, 1]);
});

test('a finding is told with what it says and how to mend it, and the counts come last', () => {
  expect(asText(books)).toBe(
    'care  notebooks/window-shelf/benchwork.md:17:11  deck.seam-1  The seam bears on 5.9 mm a side.\n    mend: Screw a batten of 30 mm beside it.\n' +
      '1 notebook, 0 problems, 0 halts, 1 care, 0 notes\n',
  );
});

test('notes that only inform are counted, and told when asked for; one finding is told once', () => {
  const [care] = shelf.findings;
  if (care === undefined) throw new Error('the shelf has a finding');
  const note = {
    ...care,
    level: 'note',
    what: ['The sheet is not measured.'],
    source: 'common practice, no source',
  } as const;
  const gone = { ...note, what: ['The log names a part that is gone.'], source: 'this notebook' } as const;
  const noted: Books = { ...books, notebooks: [{ ...shelf, findings: [care, note, gone, gone] }] };
  const told = asText(noted);
  expect(told).not.toContain('not measured');
  expect(told.match(/part that is gone/g)).toHaveLength(1);
  expect(told).toContain(
    '1 note more: npm run check -- --level note\n1 notebook, 0 problems, 0 halts, 1 care, 3 notes',
  );
  expect(asText(noted, 'note')).toContain(
    'note  notebooks/window-shelf/benchwork.md:17:11  deck.seam-1  The sheet is not measured.',
  );
  expect(asText(noted, 'halt')).not.toContain('care  ');
});

test('a notebook that could not be computed is named, so that no count passes for its verdict', () => {
  expect(asText({ ...mistaken, notebooks: [] })).toContain(
    'not computed until the problems are mended: shelf\n1 notebook, 1 problem',
  );
});

test('the shipped notebooks pass', async () => {
  const desk = testDesk();
  expect(await run(desk, ['check'])).toBe(0);
  expect(desk.said()).toMatch(/3 notebooks, 0 problems, 0 halts, \d+ cares?, \d+ notes?\n$/);
});

test('a mistake is told with file, line, column and mend', async () => {
  const desk = testDesk();
  spoil(desk, 'notebooks/window-shelf/benchwork.md', ['width: 300 mm', 'width: 300']);
  expect(await run(desk, ['check'])).toBe(1);
  expect(desk.said()).toMatch(/^notebooks\/window-shelf\/benchwork\.md:4:10 {2}\S.*\n {4}mend: \S/);
  expect(desk.said()).not.toMatch(/\bat .*\.ts:\d+/);
});

test('a mistake in one notebook is not told of another, one in the shared stock is', async () => {
  const desk = testDesk();
  spoil(desk, 'notebooks/window-shelf/benchwork.md', ['width: 300 mm', 'width: 300']);
  expect(await run(desk, ['check', 'lantern-siding'])).toBe(0);
  expect(await run(desk, ['check', 'window-shelf'])).toBe(1);
  writeFileSync(join(desk.content, 'stock', 'mine.yaml'), 'not: [closed\n');
  expect(await run(desk, ['check', 'lantern-siding'])).toBe(1);
});

test('as JSON, problems and findings are plain data', async () => {
  const desk = testDesk();
  spoil(desk, 'notebooks/window-shelf/benchwork.md', ['width: 300 mm', 'widht: 300 mm']);
  expect(await run(desk, ['check', 'window-shelf', '--format', 'json'])).toBe(1);
  const { problems, findings } = JSON.parse(desk.said());
  expect(findings).toBeInstanceOf(Array);
  expect(problems.length).toBeGreaterThan(0);
  const [first] = problems;
  expect(Object.keys(first)).toEqual(['rule', 'file', 'line', 'column', 'path', 'what', 'mend']);
  expect(first).toMatchObject({ file: 'notebooks/window-shelf/benchwork.md' });
  expect(JSON.stringify(problems)).toContain('width');
});

test('an unknown notebook gets the nearest name', async () => {
  const desk = testDesk();
  expect(await run(desk, ['check', 'window-shelv'])).toBe(1);
  expect(desk.warned()).toBe('No notebook is called "window-shelv".\n    mend: did you mean window-shelf?\n');
});

test('a folder without notebooks is told, not passed', async () => {
  const desk = testDesk();
  rmSync(join(desk.content, 'notebooks'), { recursive: true });
  expect(await run(desk, ['check'])).toBe(1);
  expect(desk.said()).toContain('there is no notebook in this folder');
});

test('what depends on the day is told by check alone: upkeep that is due, an entry of days to come', async () => {
  const upkeep = (today: string) => {
    const desk = testDesk({ today: () => today });
    writeFileSync(
      join(desk.content, 'notebooks', 'window-shelf', 'log', '2026-05-03-oiled.md'),
      '---\ndate: 2026-05-03\nchapter: benchwork\nupkeep: [ { what: hinges oiled, again-in: 6 months } ]\n---\n\nOiled.\n',
    );
    return desk;
  };
  const rules = async (today: string) => {
    const desk = upkeep(today);
    expect(await run(desk, ['check', 'window-shelf', '--format', 'json'])).toBe(0);
    const { findings } = JSON.parse(desk.said()) as { findings: { rule: string; figure: number | null }[] };
    return findings.filter(({ rule }) => ['upkeep-due', 'entry-in-future'].includes(rule));
  };
  expect(await rules('2026-11-02')).toEqual([]);
  expect(await rules('2026-11-03')).toMatchObject([{ rule: 'upkeep-due', figure: 0 }]);
  expect(await rules('2026-05-02')).toMatchObject([{ rule: 'entry-in-future' }]);
  const desk = upkeep('2026-11-03');
  await run(desk, ['check', 'window-shelf']);
  expect(desk.said()).toContain('hinges oiled: due since 2026-11-03, last done 2026-05-03.');
});

test('before anything goes public, check says what would', async () => {
  const desk = testDesk();
  expect(await run(desk, ['check', 'bittern-basin'])).toBe(0);
  expect(desk.said()).toMatch(
    /note {2}notebooks\/bittern-basin\/notebook\.md:2:1 {2}notebook {2}If this notebook is published, everyone can see the room's outline/,
  );
  expect(desk.said()).toContain("mark photos 'private: true'");
});

test('a key of a line that is misspelt is told, and no other mistake of the run is lost', async () => {
  const desk = testDesk();
  spoil(desk, 'notebooks/bittern-basin/track.md', ['200 mm } ]\n    ends: open', '200 mm } ]\n    end: open']);
  spoil(desk, 'notebooks/bittern-basin/scenery.md', ['height: 150 mm', 'heigth: 150 mm']);
  expect(await run(desk, ['check', 'bittern-basin'])).toBe(1);
  expect(desk.said()).toMatch(/track\.md:\d+:\d+ {2}\S.*end/);
  expect(desk.said()).toMatch(/scenery\.md:\d+:\d+ {2}\S.*heigth/);
});

test('what nobody can build is told: rails that resist nothing, turnouts on no line', async () => {
  const desk = testDesk();
  spoil(desk, 'notebooks/bittern-basin/wiring.md', ['\nbus:', '\nrails: { ohm-per-metre: 0 ohm }\nbus:']);
  spoil(desk, 'notebooks/bittern-basin/track.md', [
    'turnouts:\n',
    'turnouts:\n  W9: { straight: 95 mm, radius: 400 mm, angle: 12°, hand: left }\n',
  ]);
  await run(desk, ['check', 'bittern-basin', '--format', 'json']);
  const { problems, findings } = JSON.parse(desk.said()) as { problems: unknown[]; findings: { rule: string }[] };
  expect(problems).toEqual([]);
  const rules = findings.map(({ rule }) => rule);
  expect(rules).toEqual(expect.arrayContaining(['rail-resists-nothing', 'turnout-not-laid']));
});
