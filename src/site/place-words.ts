import type { Request } from '../core/stock/part.ts';
import { both, type Html, line, partLink, text } from './html.ts';
import { lengthPair, sizePair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { pieceLabel } from './parts.ts';
import { plainName } from './words.ts';

/** A hole, notch or cut-out that a chapter asks of a piece: what, in what, and how large. */
export function cutWords(book: Book, { by, kind, part, size: [along, across] }: Request): Html {
  const size = kind === 'hole' ? line(both(lengthPair(along)), text(' across')) : both(sizePair([along, across]));
  return line(text(`${kind} for ${plainName(by)} in `), partLink(book, part, pieceLabel(book, part)), text(', '), size);
}
