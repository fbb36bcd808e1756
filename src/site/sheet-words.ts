import type { CutBound, CutSheet } from '../core/cutting/job.ts';
import type { YardAsk } from '../core/cutting/lots.ts';
import type { LotSaving } from '../core/cutting/savings.ts';
import { both, type Html, line, partLink, text } from './html.ts';
import { lengthPair, sizePair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { partName, partNamed } from './parts.ts';
import { counted, plainName } from './words.ts';

/** Whether a stock comes in sheets or in boards. */
export function sheetOrBoard(book: Book, stock: string): 'sheet' | 'board' {
  return book.notebook.stock.find(({ id }) => id === stock)?.kind === 'board' ? 'board' : 'sheet';
}

/** A stock by the name in its file. */
export function stockName(book: Book, stock: string): string {
  return book.notebook.stock.find(({ id }) => id === stock)?.name ?? plainName(stock);
}

/** How many of a stock, and whether fewer could do. */
export function boundWords(book: Book, { bound, found, proved, stock }: CutBound): string {
  const kind = sheetOrBoard(book, stock);
  if (found === 0) return `nothing to buy: what is in hand is enough`;
  const count = counted(found, kind);
  if (bound === 0) return `${count} beside what is in hand; whether none could do is not known`;
  if (proved && found === 1) return count;
  if (proved) return `${count}, and ${found - 1} cannot do: proved`;
  return `${count} found; at least ${bound} needed. Whether ${found - 1} can do is not known`;
}

/** The change that saves a sheet. */
export function savingWords(book: Book, { fewer, from, part, side, stock, to }: LotSaving): Html {
  const found = partNamed(book, part);
  const smaller = side === 'length' ? 'shorter' : 'narrower';
  const name = found === null ? text('') : text(` (${partName(found)})`);
  return line(
    text(`${counted(fewer, sheetOrBoard(book, stock))} would do if `),
    partLink(book, part, found?.label),
    name,
    text(' were '),
    both(lengthPair(from - to)),
    text(` ${smaller}: `),
    both(lengthPair(to)),
    text(' instead of '),
    both(lengthPair(from)),
    text('. It is the smallest change of one part that saves one; any less does not.'),
  );
}

/** What to ask of the yard. */
export function yardWords(book: Book, { cut, sheets, stock }: YardAsk): Html {
  const edge = cut.kind === 'crosscut' ? 'left end' : 'lower edge';
  const [near, far] = cut.pieces;
  return line(
    text(`${stockName(book, stock)}, ${counted(sheets.length, sheetOrBoard(book, stock))}: one ${cut.kind} at `),
    both(lengthPair(cut.at)),
    text(` from the ${edge}. It gives `),
    both(sizePair([near.length, near.width])),
    text(' and '),
    both(sizePair([far.length, far.width])),
    text('. Both sawn edges are cut again at home; the factory edges stay the ones to measure from.'),
  );
}

/** What a sheet is: new, an offcut of an earlier one, or a piece in hand. */
export function pieceWords(book: Book, sheet: CutSheet): string {
  if (sheet.piece === undefined) return `a new ${sheetOrBoard(book, sheet.stock)}`;
  const offcut = book.notebook.offcuts.find(({ label }) => label === sheet.piece);
  return offcut === undefined ? `${sheet.piece}, in hand` : `offcut ${sheet.piece} of sheet ${offcut.from}`;
}
