import { roomBlocks } from './blocks.ts';
import { type ChapterProse, chapterProse, nameInChapter } from './chapter-prose.ts';
import type { ChapterId } from './chapters.ts';
import { chapterDrawings } from './drawings.ts';
import { chapterJoints } from './joint-words.ts';
import type { Book } from './notebooks.ts';
import type { Stretch } from './prose/render.ts';

/** What a chapter's page shows: the author's order first, then what the author placed nowhere. */
export type ChapterPage = {
  readonly written: boolean;
  /** true for an .mdx chapter: its own module is shown before the stretches */
  readonly runs: boolean;
  readonly stretches: readonly Stretch[];
};

/** Lists that are left out when there is nothing in them; tables of a room say so in words where the author placed them. */
const RESTED: readonly string[] = ['findings', 'steps', 'parts', 'cut-list', 'joints'];

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
    ...(chapterJoints(book, chapter).length > 0 ? ['joints'] : []),
    ...roomBlocks(book, chapter),
  ];
}

/** Drawings the author placed nowhere, in steps or out of them. */
function drawingsLeft(book: Book, chapter: ChapterId, prose: ChapterProse): readonly Stretch[] {
  const placed = [...blocksIn(prose.stretches), ...Object.values(prose.ofStep).flatMap(blocksIn)]
    .filter(({ name }) => name === 'drawing')
    .map(({ attributes }) => attributes.of ?? '')
    .concat(prose.code?.drawings ?? []);
  return chapterDrawings(book, chapter)
    .filter(({ id }) => !placed.some((of) => of === id || `${chapter}.${of}` === id))
    .map(({ id }) => block('drawing', { of: id }));
}

/** Whether a list of steps has any to show: an .mdx chapter may have placed each of them by itself. */
function stepsLeft({ notebook }: Book, chapter: ChapterId, { code }: ChapterProse): boolean {
  const placed = code?.steps ?? [];
  return notebook.steps.some((step) => step.chapter === chapter && !placed.includes(nameInChapter(step)));
}

/** Each list and drawing once: its headings and marks have ids. Tools always come first on the page, by themselves. */
function once(stretches: readonly Stretch[]): readonly Stretch[] {
  const seen = new Set(['tools']);
  return stretches.filter((stretch) => {
    if (stretch.kind !== 'block') return true;
    const name = [stretch.name, stretch.attributes.of ?? ''].join(' ').trim();
    if (seen.has(name)) return false;
    seen.add(name);
    return true;
  });
}

/** A chapter from its author's words and from the model; `written` is false while there is no such file. */
export async function chapterPage(book: Book, chapter: ChapterId): Promise<ChapterPage> {
  const prose = await chapterProse(book, chapter);
  const placed = new Set([...blocksIn(prose.stretches).map(({ name }) => name), ...(prose.code?.blocks ?? [])]);
  const shown = filled(book, chapter).filter((name) => name !== 'steps' || stepsLeft(book, chapter, prose));
  const empty = RESTED.filter((name) => !shown.includes(name));
  const words = prose.stretches.filter((stretch) => stretch.kind !== 'block' || !empty.includes(stretch.name));
  const rest = shown.filter((name) => !placed.has(name)).map((name) => block(name));
  const drawings = drawingsLeft(book, chapter, prose);
  const more: Stretch = { kind: 'words', html: '<h2 id="more-drawings">More drawings</h2>' };
  const stretches = once([...words, ...rest, ...(drawings.length > 0 ? [more, ...drawings] : [])]);
  return { written: prose.written, runs: prose.code !== null, stretches };
}
