import { lengthPair, type Pair, sizePair } from './lengths.ts';
import type { Book } from './notebooks.ts';
import { counted, duration } from './words.ts';

export type KeyFigure = { readonly name: string; readonly value: Pair };

function plain(name: string, words: string): KeyFigure {
  return { name, value: { mm: words, in: words } };
}

function sizes(book: Book): readonly KeyFigure[] {
  return book.notebook.benches.map((bench) => {
    const [size, height] = [sizePair([bench.length, bench.width]), lengthPair(bench.deckTop)];
    const words = (unit: 'mm' | 'in') => `${size[unit]}, deck at ${height[unit]}`;
    return { name: `Bench ${bench.id}`, value: { mm: words('mm'), in: words('in') } };
  });
}

/** Mass of everything that is counted now. Unit kg. */
function mass(book: Book): number {
  return book.notebook.parts
    .filter((part) => part.phase === 'now')
    .reduce((sum, part) => sum + (book.notebook.masses[part.id] ?? 0) * part.places.length, 0);
}

/** What a builder asks first. */
export function keyFigures(book: Book): readonly KeyFigure[] {
  const { bounds, parts, scale, steps } = book.notebook;
  const pieces = parts.reduce((sum, part) => sum + part.places.length, 0);
  const sheets = bounds.reduce((sum, bound) => sum + bound.found, 0);
  const minutes = steps.reduce((sum, step) => sum + (step.minutes ?? 0), 0);
  return [
    plain('Scale', scale),
    ...sizes(book),
    plain('Wood', `${counted(pieces, 'piece')} from ${counted(sheets, 'sheet')}, ${mass(book).toFixed(1)} kg`),
    ...(minutes > 0 ? [plain('Work written down', `${duration(minutes)} in ${counted(steps.length, 'step')}`)] : []),
  ];
}
