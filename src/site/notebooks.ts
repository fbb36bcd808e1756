import { join } from 'node:path';
import type { Notebook } from '../core/notebook.ts';
import type { Prose } from '../core/plan.ts';
import { contentFolder } from './chapter-files.ts';

/** One notebook as the pages need it: what was computed, the author's words, and where photos lie. */
export type Book = { readonly notebook: Notebook; readonly prose: readonly Prose[]; readonly photos: string };

async function load(): Promise<readonly Book[]> {
  const { notebook, prose } = await import('../../tests/site/fixture.ts');
  return [{ notebook, prose, photos: join(contentFolder(), 'notebooks', notebook.slug, 'photos') }];
}

let loaded: Promise<readonly Book[]> | null = null;

/** All notebooks, computed once a build; by slug. */
export function notebooks(): Promise<readonly Book[]> {
  loaded ??= load();
  return loaded;
}

/** The notebook of that slug; pages only ask for those that exist. */
export async function bookOf(slug: string | undefined): Promise<Book> {
  const book = (await notebooks()).find(({ notebook }) => notebook.slug === slug);
  if (book === undefined) throw new Error(`no notebook is called '${slug}'`);
  return book;
}

/** One page for each notebook. */
export async function pageForEach() {
  return (await notebooks()).map(({ notebook }) => ({ params: { notebook: notebook.slug } }));
}
