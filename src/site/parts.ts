import type { Part } from '../core/stock/part.ts';
import type { Book } from './notebooks.ts';
import { at } from './paths.ts';

/** The part of that id, or the part one of whose pieces has that id; null if there is none. */
export function partNamed(book: Book, id: string): Part | null {
  return book.notebook.parts.find((part) => part.id === id || part.places.some((place) => place.id === id)) ?? null;
}

/** Where a part or one of its pieces is described, or null. */
export function partAddress(book: Book, id: string): string | null {
  const part = partNamed(book, id);
  return part === null ? null : at(book.notebook.slug, 'parts', part.id);
}

/** A part's name as people say it: what it is; its label tells which. */
export function partName(part: Part): string {
  return part.role.replaceAll('-', ' ');
}

/** What is written on the wood of a piece, or of all pieces of a part; the id itself when it is neither. */
export function pieceLabel(book: Book, id: string): string {
  const part = partNamed(book, id);
  return part?.places.find((place) => place.id === id)?.label ?? part?.label ?? id;
}

/** What all ids begin with up to a point: `leg.front-left`; null when they are of no one thing. */
export function wholeName(parts: readonly string[]): string | null {
  const names = new Set(parts.map((id) => id.slice(0, Math.max(0, id.lastIndexOf('.')))));
  const [name = ''] = names;
  return names.size === 1 && name.includes('.') ? name : null;
}
