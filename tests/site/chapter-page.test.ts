import { describe, expect, test } from 'vitest';
import type { Prose } from '../../src/core/plan.ts';
import { chapterPage } from '../../src/site/chapter-page.ts';
import { chapterProse, valueNamed } from '../../src/site/chapter-prose.ts';
import { contentsOf } from '../../src/site/contents.ts';
import type { Book } from '../../src/site/notebooks.ts';
import type { Stretch } from '../../src/site/prose/render.ts';
import { notebook, prose } from './fixture.ts';

const book: Book = { notebook, prose, photos: '' };

function written(body: string, file = 'benchwork.md'): Book {
  const one: Prose = { chapter: 'benchwork', file: `notebooks/bittern-basin/${file}`, firstLine: 1, body };
  return { notebook, prose: [one], photos: '' };
}

function names(stretches: readonly Stretch[]): readonly string[] {
  return stretches.map((one) => (one.kind === 'block' ? `${one.name} ${one.attributes.of ?? ''}`.trim() : one.kind));
}

describe('a chapter', () => {
  test('keeps its author’s order, gathers the steps where the first is written, and ends with the rest', async () => {
    const { stretches } = await chapterPage(book, 'benchwork');
    expect(names(stretches).slice(0, 7)).toEqual([
      'words',
      'drawing benchwork.plan',
      'steps',
      'parts',
      'cut-list',
      'words',
      'findings',
    ]);
    expect(names(stretches)).toContain('drawing benchwork.section');
    expect(names(stretches).filter((name) => name === 'drawing benchwork.plan')).toHaveLength(1);
  });

  test('shows each list and drawing once, however often it is placed', async () => {
    const { stretches } = await chapterPage(
      written('::parts\n\n::parts\n\n::drawing{of=plan}\n\n::drawing{of=plan}'),
      'benchwork',
    );
    expect(names(stretches).filter((name) => name === 'parts')).toHaveLength(1);
    expect(names(stretches).filter((name) => name.endsWith('plan'))).toHaveLength(1);
  });

  test('that nobody wrote says so', async () => {
    expect(await chapterPage(book, 'scenery')).toEqual({ written: false, runs: false, stretches: [] });
  });

  test('lists its headings for the contents, with those of its lists', async () => {
    const { stretches } = await chapterPage(book, 'benchwork');
    const ids = contentsOf(stretches).map((heading) => heading.id);
    expect(ids).toEqual([
      'the-steps',
      'the-parts',
      'the-cut-list',
      'still-open',
      'the-findings',
      'the-joints',
      'more-drawings',
    ]);
  });

  test('in .mdx tells what it places by itself, and the rest follows', async () => {
    const { runs, stretches } = await chapterPage(
      written('<Parts />\n\n<Drawing of="benchwork.plan" />', 'benchwork.mdx'),
      'benchwork',
    );
    expect(runs).toBe(true);
    expect(names(stretches)).not.toContain('parts');
    expect(names(stretches)).not.toContain('drawing benchwork.plan');
    expect(names(stretches)).toContain('cut-list');
  });
});

describe('the words of a step', () => {
  test('stand with the step, not in the chapter', async () => {
    const { ofStep, stretches } = await chapterProse(book, 'benchwork');
    expect(Object.keys(ofStep)).toEqual(['rip-strips']);
    expect(ofStep['rip-strips']).toEqual([{ kind: 'words', html: '<p>Full lengths first.</p>' }]);
    expect(JSON.stringify(stretches)).not.toContain('Full lengths first');
  });
});

describe('a value in prose', () => {
  test.each([
    ['side', '170\u00A0mm'],
    ['side.length', '1600\u00A0mm'],
    ['strut.across.count', '3'],
    ['strut.across-2.width', '135\u00A0mm'],
  ])('%s', (name, mm) => {
    expect(valueNamed(book, name)?.mm).toBe(mm);
  });

  test.each(['', 'nothing', 'side.colour', 'nothing.length', 'constructor', '__proto__'])('%j is none', (name) => {
    expect(valueNamed(book, name)).toBe(null);
  });
});
