import { describe, expect, test } from 'vitest';
import { withoutFrontMatter } from '../../src/site/chapter-files.ts';
import { mdxPlaced } from '../../src/site/mdx-words.ts';

describe('an .mdx chapter', () => {
  test('tells what it places by itself', () => {
    const source =
      'Words <Value of="side" />\n\n<Drawing of="benchwork.plan" />\n\n<CutList />\n\n<Step id="rout">\n\nClamp.\n\n</Step>\n\n<Photo alt="w" file="wall.jpg" />';
    expect(mdxPlaced(source)).toEqual({
      blocks: ['cut-list'],
      drawings: ['benchwork.plan'],
      steps: ['rout'],
      photos: ['wall.jpg'],
    });
  });

  test('loses its front matter and keeps its lines', () => {
    expect(withoutFrontMatter('---\na: 1\nb: 2\n---\nWords')).toBe('\n\n\n\nWords');
    expect(withoutFrontMatter('Words\n---\nmore')).toBe('Words\n---\nmore');
  });
});
