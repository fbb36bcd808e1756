/** What an .mdx chapter places by itself, as its source names it. */
export type MdxPlaced = {
  /** names of the blocks, as directives name them */
  readonly blocks: readonly string[];
  readonly drawings: readonly string[];
  readonly steps: readonly string[];
  readonly photos: readonly string[];
};

const BLOCKS: Readonly<Record<string, string>> = {
  CutList: 'cut-list',
  Findings: 'findings',
  Joints: 'joints',
  Parts: 'parts',
  Sheets: 'sheets',
  Steps: 'steps',
  Tools: 'tools',
};

function attributesIn(source: string, element: string, attribute: string): readonly string[] {
  const pattern = new RegExp(`<${element}\\b[^>]*?\\b${attribute}=["']([^"']*)["']`, 'g');
  return [...source.matchAll(pattern)].map(([, value = '']) => value);
}

/** Read from the source, because an .mdx chapter tells nothing of itself before it runs. */
export function mdxPlaced(source: string): MdxPlaced {
  return {
    blocks: Object.entries(BLOCKS).flatMap(([element, name]) =>
      new RegExp(`<${element}\\b`).test(source) ? [name] : [],
    ),
    drawings: attributesIn(source, 'Drawing', 'of'),
    steps: attributesIn(source, 'Step', 'id'),
    photos: attributesIn(source, 'Photo', 'file'),
  };
}
