import type { Part } from '../core/stock/part.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import { type Note, noteBlocks } from './notes.ts';
import { smallText, textWidth } from './text.ts';

/** The widest label that still stands beside what it names, mm of paper; common practice, no source. */
const WIDEST = 24;

/** A notebook whose long labels are numbers in brackets, and the list that says what each stands for. */
export type Keyed = { readonly book: DrawingBook; readonly names: readonly Note[] };

/** The notebook with its long labels replaced; the same notebook where none is long. */
export function nameKeys(book: DrawingBook): Keyed {
  const labels = book.parts.flatMap(({ label, places }) => [label, ...places.map((place) => place.label)]);
  const long = [...new Set(labels)].filter((label) => textWidth(label, smallText, 'bold') > WIDEST);
  if (long.length === 0) return { book, names: [] };
  const digits = String(long.length).length;
  const keys = new Map(long.toSorted().map((label, i) => [label, `(${String(i + 1).padStart(digits, '0')})`]));
  const short = (label: string) => keys.get(label) ?? label;
  const renamed = (part: Part): Part => ({
    ...part,
    label: short(part.label),
    places: part.places.map((place) => ({ ...place, label: short(place.label) })),
  });
  const names = [...keys].map(([words, letter]): Note => ({ letter, words, dimensions: [] }));
  return { book: { ...book, parts: book.parts.map(renamed) }, names };
}

/** The names of the numbers that stand on a drawing. */
export function keyedNames(names: readonly Note[], blocks: readonly Block[]): readonly Block[] {
  if (names.length === 0) return [];
  const texts = blocks.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));
  const used = names.filter(({ letter }) => texts.some((text) => text.includes(letter)));
  return noteBlocks('Names', used);
}
