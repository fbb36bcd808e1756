import type { ChapterProse } from './chapter-prose.ts';

export type Heading = { readonly id: string; readonly html: string };

const OF_BLOCK: Readonly<Record<string, Heading>> = {
  steps: { id: 'the-steps', html: 'Steps' },
  parts: { id: 'the-parts', html: 'Parts' },
  'cut-list': { id: 'the-cut-list', html: 'Cut list' },
  joints: { id: 'the-joints', html: 'Joints' },
  sheets: { id: 'the-sheets', html: 'Sheets' },
  tools: { id: 'the-tools', html: 'Tools' },
  findings: { id: 'the-findings', html: 'What the checks found' },
};

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
    const own = stretch.kind === 'block' ? OF_BLOCK[stretch.name] : undefined;
    return own === undefined ? [] : [own];
  });
}
