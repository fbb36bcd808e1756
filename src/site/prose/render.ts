import { createMarkdownProcessor } from '@astrojs/markdown-remark';
import remarkDirective from 'remark-directive';
import remarkGfm from 'remark-gfm';
import { type Asked, MARK, type Mark, remarkNotebook } from './directives.ts';
import { rehypeSafe } from './safe.ts';

/** A stretch of a chapter: words, a block of the model, a photo, or a step with stretches of its own. */
export type Stretch =
  | { readonly kind: 'words'; readonly html: string }
  | Exclude<Mark, { kind: 'step' | 'step-ends' }>
  | { readonly kind: 'step'; readonly id: string; readonly stretches: readonly Stretch[] };

function stretchesOf(html: string, marks: readonly Mark[]): Stretch[] {
  const top: Stretch[] = [];
  let open: { readonly id: string; readonly stretches: Stretch[] } | null = null;
  const pieces = html.split(new RegExp(`<${MARK} n="(\\d+)"></${MARK}>`));
  pieces.forEach((piece, i) => {
    const into: Stretch[] = open?.stretches ?? top;
    const mark = i % 2 === 1 ? marks[Number(piece)] : undefined;
    if (mark === undefined) {
      if (piece.trim() !== '') into.push({ kind: 'words', html: piece.trim() });
    } else if (mark.kind === 'step') {
      open = { id: mark.id, stretches: [] };
      top.push({ kind: 'step', ...open });
    } else if (mark.kind === 'step-ends') open = null;
    else into.push(mark);
  });
  return top;
}

/**
 * A chapter's Markdown as stretches of safe HTML and blocks of the model.
 * Nothing in it runs: raw HTML is shown as text, addresses with a scheme that runs are dropped.
 */
export async function renderProse(body: string, ask: Omit<Asked, 'marks'>): Promise<readonly Stretch[]> {
  const marks: Mark[] = [];
  const processor = await createMarkdownProcessor({
    gfm: false,
    smartypants: false,
    syntaxHighlight: false,
    remarkPlugins: [remarkDirective, remarkGfm, [remarkNotebook, { ...ask, marks }]],
    rehypePlugins: [rehypeSafe],
  });
  const { code } = await processor.render(body);
  return stretchesOf(code, marks);
}
