import type { CutSheet } from '../core/cutting/job.ts';
import { type Pair, sizePair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { partName, partNamed, pieceLabel } from './parts.ts';
import { plainName } from './words.ts';

/** The book as the drawings of its left-over cutting need it: only pieces to make, on their own sheets. */
export function leftBook(book: Book): Book {
  const { left, notebook } = book;
  return { ...book, notebook: { ...notebook, sheets: left?.sheets ?? [] } };
}

/** A sheet of the rest of the work by what is written on it, or as a new one. */
export function leftSheetWords({ piece, stock }: CutSheet): string {
  return piece === undefined ? `A new sheet of ${plainName(stock)}` : `In hand: ${piece}, ${plainName(stock)}`;
}

export type Label = { readonly label: string; readonly name: string; readonly size: Pair };

/** One label a piece: what is written on the wood, what it is, and its blank. */
export function leftLabels(book: Book): readonly Label[] {
  return book.notebook.state.leftToMake.flatMap(({ instances, length, part, thickness, width }) => {
    const found = partNamed(book, part);
    return instances.map((id) => ({
      label: pieceLabel(book, id),
      name: found === null ? plainName(part) : partName(found),
      size: sizePair([length, width, thickness]),
    }));
  });
}
