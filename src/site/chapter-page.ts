import { type ChapterProse, chapterProse } from './chapter-prose.ts';
import type { ChapterId } from './chapters.ts';
import { chapterDrawings } from './drawings.ts';
import type { Book } from './notebooks.ts';
import type { Stretch } from './prose/render.ts';

/** What a chapter's page shows: the author's order first, then what the author placed nowhere. */
export type ChapterPage = { readonly written: boolean; readonly stretches: readonly Stretch[] };

function block(name: string, attributes: Readonly<Record<string, string>> = {}): Stretch {
  return { kind: 'block', name, attributes };
}

function blocksIn(stretches: readonly Stretch[]): readonly Extract<Stretch, { kind: 'block' }>[] {
  return stretches.flatMap((stretch) => (stretch.kind === 'block' ? [stretch] : []));
}

/** Blocks the chapter has something to show in. */
function filled(book: Book, chapter: ChapterId): readonly string[] {
  const { findings, parts, steps } = book.notebook;
  const has = (list: readonly { readonly chapter: string }[]) => list.some((one) => one.chapter === chapter);
  return [
    ...(has(findings) ? ['findings'] : []),
    ...(has(steps) ? ['steps'] : []),
    ...(has(parts) ? ['parts', 'cut-list'] : []),
  ];
}

/** Drawings the author placed nowhere, in steps or out of them. */
function drawingsLeft(book: Book, chapter: ChapterId, prose: ChapterProse): readonly Stretch[] {
  const placed = [...blocksIn(prose.stretches), ...Object.values(prose.ofStep).flatMap(blocksIn)]
    .filter(({ name }) => name === 'drawing')
    .map(({ attributes }) => attributes.of ?? '');
  return chapterDrawings(book, chapter)
    .filter(({ id }) => !placed.some((of) => of === id || `${chapter}.${of}` === id))
    .map(({ id }) => block('drawing', { of: id }));
}

/** A chapter from its author's words and from the model; `written` is false while there is no such file. */
export async function chapterPage(book: Book, chapter: ChapterId): Promise<ChapterPage> {
  const prose = await chapterProse(book, chapter);
  const placed = new Set(blocksIn(prose.stretches).map(({ name }) => name));
  const shown = filled(book, chapter);
  const rest = shown.filter((name) => !placed.has(name)).map((name) => block(name));
  const drawings = drawingsLeft(book, chapter, prose);
  const more: readonly Stretch[] =
    drawings.length > 0 ? [{ kind: 'words', html: '<h2 id="more-drawings">More drawings</h2>' }] : [];
  const words = prose.stretches.filter(
    (one) =>
      one.kind !== 'block' ||
      !['findings', 'steps', 'parts', 'cut-list'].includes(one.name) ||
      shown.includes(one.name),
  );
  return { written: prose.written, stretches: [...words, ...rest, ...more, ...drawings] };
}
