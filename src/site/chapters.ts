import type { Book } from './notebooks.ts';
import { at } from './paths.ts';

/** The chapters in the order the work is done. */
export const CHAPTERS = [
  { id: 'benchwork', title: 'Benchwork' },
  { id: 'track', title: 'Track' },
  { id: 'wiring', title: 'Wiring' },
  { id: 'scenery', title: 'Scenery' },
] as const;

export type ChapterId = (typeof CHAPTERS)[number]['id'];

/** A stop on a notebook's line of pages. */
export type Stop = {
  readonly id: string;
  readonly title: string;
  readonly href: string;
  readonly list: 'line' | 'siding';
};

/** The pages of a notebook in reading order: cover and chapters on the line, lists on the siding. */
export function stops(book: Book): readonly Stop[] {
  const slug = book.notebook.slug;
  const page = (id: string, title: string, list: Stop['list']): Stop => ({ id, title, href: at(slug, id), list });
  return [
    { id: 'cover', title: 'Cover', href: at(slug), list: 'line' },
    ...CHAPTERS.map(({ id, title }) => page(id, title, 'line')),
    page('parts', 'Parts', 'siding'),
    page('assembly', 'Assembly', 'siding'),
    page('sheets', 'Sheets', 'siding'),
    page('shopping', 'Shopping', 'siding'),
    page('with-a-child', 'With a child', 'siding'),
    page('log', 'Log', 'siding'),
    page('fixes', 'Fixes', 'siding'),
    page('places', 'Places', 'siding'),
    page('upkeep', 'Upkeep', 'siding'),
    page('work', 'Work', 'siding'),
  ];
}
