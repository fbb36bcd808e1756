import type { Spending } from '../core/log/spending.ts';
import { lengthPair, type Pair, sizePair } from './lengths.ts';
import { moneyWords } from './money.ts';
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

/** What was spent, and of how much when money was put aside. */
function spentWords({ budget, spent }: Spending): string {
  const words = spent.map(moneyWords).join(', ');
  return budget === null ? words : `${words} of ${moneyWords(budget)}`;
}

/** What a builder asks first. */
export function keyFigures(book: Book): readonly KeyFigure[] {
  const { bounds, parts, scale, state, steps } = book.notebook;
  const pieces = parts.reduce((sum, part) => sum + part.places.length, 0);
  const sheets = bounds.reduce((sum, bound) => sum + bound.found, 0);
  return [
    plain('Scale', scale),
    ...sizes(book),
    plain('Wood', `${counted(pieces, 'piece')} from ${counted(sheets, 'sheet')}, ${mass(book).toFixed(1)} kg`),
    plain('Steps', `${state.progress.done} of ${counted(steps.length, 'step')} done`),
    ...(state.hours.minutes > 0 ? [plain('Time in the log', duration(state.hours.minutes))] : []),
    ...(state.money.spent.length > 0 ? [plain('Spent', spentWords(state.money))] : []),
  ];
}
