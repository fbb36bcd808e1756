import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { listDrawings } from '../../src/drawing/list.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { openContent } from '../../src/reading/open.ts';
import { withShipped } from '../../src/reading/shipped.ts';

/** Fenced examples of a document that name their file: ```md file=notebooks/x/notebook.md */
function examples(document: string): readonly { readonly path: string; readonly text: string }[] {
  const found = document.matchAll(/^```md file=(\S+)\n([\s\S]*?)^```$/gm);
  return [...found].map(([, path = '', text = '']) => ({ path, text }));
}

async function opened(document: string) {
  const own = examples(document).map(({ path, text }) => {
    const bytes = new TextEncoder().encode(text);
    return { path, bytes, kind: 'file' as const, size: bytes.length };
  });
  const files = withShipped(own, await loadContent('content'));
  return openContent(files, (notebook) => listDrawings(notebook).map(({ id }) => id));
}

const readme = readFileSync('README.md', 'utf8');

test('the examples of the README are a notebook without a problem or a halt', async () => {
  expect(examples(readme).map(({ path }) => path)).toContain('notebooks/tea-tray/benchwork.md');
  const { notebooks, problems } = await opened(readme);
  expect(problems).toEqual([]);
  expect(notebooks.map(({ plan }) => plan.slug)).toEqual(['tea-tray']);
  const halts = notebooks.flatMap(({ notebook }) => notebook.findings).filter(({ level }) => level === 'halt');
  expect(halts.map(({ rule, where }) => `${rule} ${where}`)).toEqual([]);
});

test('a planted mistake in an example is told', async () => {
  const { problems } = await opened(readme.replace('length: 900 mm', 'length: 900'));
  expect(problems.map(({ rule }) => rule)).toContain('unit-missing');
});
