import type { PartEvent } from '../core/log/history.ts';
import type { Part } from '../core/stock/part.ts';
import { type Html, line, link, text } from './html.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
import { at } from './paths.ts';

const WHAT: Readonly<Record<PartEvent['kind'], string>> = {
  made: 'made',
  measured: 'measured',
  mended: 'mended',
  scrapped: 'lost',
  placed: 'put in its place',
  apart: 'taken out',
};

/** What the log says about a part and its pieces, oldest first, each with its entry. */
export function historyOf(book: Book, part: Part): readonly Html[] {
  const pieces = book.notebook.state.parts.filter(({ id }) => id === part.id);
  const events = pieces.flatMap(({ history }) => history);
  const inOrder = [...events].sort((a, b) => (a.date === b.date ? 0 : a.date < b.date ? -1 : 1));
  return inOrder.map(({ date, entry, instance, kind, words }) => {
    const told = words === '' ? '' : `: ${words}`;
    return line(
      link(at(book.notebook.slug, 'log', entry), date),
      text(` ${pieceLabel(book, instance)} ${WHAT[kind]}${told}`),
    );
  });
}
