import { describe, expect, test } from 'vitest';
import { readContent } from '../../src/reading/read.ts';
import { BENCHWORK, contentFile, HEAD, notebookWith, readWith, STOCK } from './read-one.ts';

describe('plans', () => {
  test('a sound notebook gives a plan whose quantities know their places', () => {
    const { plans, drafts, problems } = readWith({});
    expect(problems).toEqual([]);
    expect(drafts).toEqual([]);
    const [plan] = plans;
    expect(plan?.benchwork.dimensions.side).toMatchObject({ text: '170 mm', at: 'benchwork.dimensions.side' });
    expect(plan?.spots['benchwork.dimensions.side']).toEqual({
      file: 'notebooks/test/benchwork.md',
      line: 2,
      column: 38,
      path: 'benchwork.dimensions.side',
    });
    expect(plan?.spots['']?.file).toBe('notebooks/test/notebook.md');
    expect(plan?.spots['notebook.title']).toMatchObject({ line: 2, column: 8 });
  });

  test('a bad notebook takes nothing from a good one', () => {
    const bad = notebookWith({ 'notebook.md': HEAD.replace('show: mm', 'show: cm') }, 'bad');
    const { plans, problems } = readContent([contentFile('stock/ply.yaml', STOCK), ...notebookWith({}), ...bad]);
    expect(plans.map((plan) => plan.slug)).toEqual(['test']);
    expect(problems.map((problem) => problem.file)).toEqual(['notebooks/bad/notebook.md']);
  });

  test('bare: mm changes the numbers of its own notebook alone', () => {
    const bare = BENCHWORK.replace('170 mm', '170');
    const head = HEAD.replace('show: mm', 'show: mm\nbare: mm');
    const files = [
      contentFile('stock/ply.yaml', STOCK),
      ...notebookWith({ 'notebook.md': head, 'benchwork.md': bare }, 'one'),
      ...notebookWith({ 'benchwork.md': bare }, 'two'),
    ];
    const { plans, problems } = readContent(files);
    expect(plans.map((plan) => plan.slug)).toEqual(['one']);
    expect(problems.map(({ file, line, column }) => [file, line, column])).toEqual([
      ['notebooks/two/benchwork.md', 2, 38],
    ]);
  });

  test('entries come by date, then by name, and prose knows its first line', () => {
    const entry = (day: string) => `---\ndate: ${day}\nchapter: benchwork\n---\nWords.\n`;
    const { plans } = readWith({
      'log/2026-03-02-b.md': entry('2026-03-02'),
      'log/2026-03-02-a.md': entry('2026-03-02'),
      'log/2026-02-28-z.md': entry('2026-02-28'),
    });
    expect(plans[0]?.log.map((one) => one.id)).toEqual(['2026-02-28-z', '2026-03-02-a', '2026-03-02-b']);
    expect(plans[0]?.prose.find((one) => one.chapter === 'log.2026-03-02-a')).toMatchObject({
      firstLine: 5,
      body: 'Words.\n',
    });
  });

  test('a byte order mark and the line ends of another machine are read as they are meant', () => {
    const { plans, problems } = readWith({ 'notebook.md': `\ufeff${HEAD.replaceAll('\n', '\r\n')}` });
    expect(problems).toEqual([]);
    expect(plans[0]?.head.title).toBe('Test');
  });

  test('a notebook without cover or benchwork says so', () => {
    expect(readWith({ 'notebook.md': '' }).problems.map((problem) => problem.rule)).toEqual(['missing-file']);
    expect(readWith({ 'benchwork.md': '' }).problems.map((problem) => problem.rule)).toEqual(['missing-file']);
  });
});

describe('goods', () => {
  test('stock is evaluated: mm, kg/m3', () => {
    expect(readWith({}).plans[0]?.stock[0]).toMatchObject({
      id: 'ply',
      thickness: { nominal: 18, listed: 17.7, low: 17.1, high: 18.1 },
      sizes: [{ length: 2440, width: 1220, grain: 'length', price: null }],
      density: 685,
      stiffness: null,
    });
  });

  test('an id taken in two files is told once, and stock with a mistake stops all plans but hides no other', () => {
    const twice = readContent([
      contentFile('stock/a.yaml', STOCK),
      contentFile('stock/b.yaml', STOCK),
      ...notebookWith({}),
    ]);
    expect(twice.problems.map(({ file, line, rule }) => [file, line, rule])).toEqual([
      ['stock/b.yaml', 3, 'duplicate-id'],
    ]);
    expect(twice.plans).toEqual([]);
    expect(twice.drafts).toHaveLength(1);
  });

  test('a broken stock file does not make each of its names unknown', () => {
    const { problems } = readContent([
      contentFile('stock/a.yaml', STOCK.replace('density: 685', '\tdensity: 685')),
      ...notebookWith({}),
    ]);
    expect(problems.map((problem) => problem.rule)).toEqual(['tab']);
  });
});

test('a syntax mistake hides only the rest of its own file', () => {
  const { problems } = readWith({ 'notebook.md': HEAD.replace('show: mm', 'show: cm').replace('[one]', '[one') });
  expect(problems.map(({ line, rule }) => [line, rule])).toEqual([
    [3, 'choice'],
    [5, 'unclosed-bracket'],
  ]);
});

test('one file never fills the list', () => {
  const keys = Array.from({ length: 400 }, (_, i) => `k${i}: 1`).join('\n');
  const { problems } = readWith({ 'notebook.md': HEAD.replace('show: mm', `show: mm\n${keys}`) });
  expect(problems).toHaveLength(101);
  expect(problems.at(-1)?.what).toBe('300 more problems in this file');
});
