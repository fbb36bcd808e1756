import { BLOCKS, blockAnchor } from './blocks.ts';
import type { ChapterProse } from './chapter-prose.ts';

export type Heading = { readonly id: string; readonly html: string };

/** The heading that a block brings along. */
function headingOf(name: string): readonly Heading[] {
  return BLOCKS.filter((block) => block.name === name).map(({ heading }) => ({ id: blockAnchor(name), html: heading }));
}

function headingsIn(html: string): readonly Heading[] {
  return [...html.matchAll(/<h2 id="([^"]+)">([\s\S]*?)<\/h2>/g)].map(([, id = '', inner = '']) => ({
    id,
    html: inner.replace(/<\/?a\b[^>]*>/g, ''),
  }));
}

/** The second-level headings of a chapter's page in order, for its list of contents. */
export function contentsOf(stretches: ChapterProse['stretches']): readonly Heading[] {
  return stretches.flatMap((stretch) => {
    if (stretch.kind === 'words') return headingsIn(stretch.html);
    return stretch.kind === 'block' ? headingOf(stretch.name) : [];
  });
}
