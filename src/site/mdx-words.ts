import { BLOCKS } from './blocks.ts';

/** What an .mdx chapter places by itself, as its source names it. */
export type MdxPlaced = {
  /** names of the blocks, as directives name them */
  readonly blocks: readonly string[];
  readonly drawings: readonly string[];
  readonly steps: readonly string[];
  readonly photos: readonly string[];
};

function attributesIn(source: string, element: string, attribute: string): readonly string[] {
  const pattern = new RegExp(`<${element}\\b[^>]*?\\b${attribute}=["']([^"']*)["']`, 'g');
  return [...source.matchAll(pattern)].map(([, value = '']) => value);
}

/** Read from the source, because an .mdx chapter tells nothing of itself before it runs. */
export function mdxPlaced(source: string): MdxPlaced {
  return {
    blocks: BLOCKS.filter(({ element }) => new RegExp(`<${element}\\b`).test(source)).map(({ name }) => name),
    drawings: attributesIn(source, 'Drawing', 'of'),
    steps: attributesIn(source, 'Step', 'id'),
    photos: attributesIn(source, 'Photo', 'file'),
  };
}
