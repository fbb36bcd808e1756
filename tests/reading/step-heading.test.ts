import { expect, test } from 'vitest';
import { loadContent } from '../../src/reading/disk.ts';
import { openContent } from '../../src/reading/open.ts';

const files = await loadContent(new URL('../../content', import.meta.url).pathname);

/** Rules and mends of the shelf's problems, its heading `## measure-sheets` changed. */
function told(heading: string): readonly string[] {
  const changed = files.map((file) => {
    if (!file.path.endsWith('window-shelf/benchwork.md')) return file;
    const text = new TextDecoder().decode(file.bytes);
    expect(text).toContain('## measure-sheets');
    const bytes = new TextEncoder().encode(text.replace('## measure-sheets', heading));
    return { ...file, bytes, size: bytes.length };
  });
  return openContent(changed, () => [])
    .problems.filter(({ rule }) => rule === 'step-heading')
    .map(({ line, mend }) => `${line} ${mend}`);
}

test('a heading that is nearly the name of a step without words is told, with the step', () => {
  expect(told('## measure-sheet')).toEqual([expect.stringMatching(/^\d+ did you mean `measure-sheets`\?/)]);
});

test('a heading in words, and the step itself, are left alone', () => {
  expect(told('## Measure sheet')).toEqual([]);
  expect(told('## measure-sheets')).toEqual([]);
});
