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

const NOT_WOOD: readonly string[] = ['foam', 'cork', 'plastic'];

/** Pieces of wood and the sheets and boards they come from; foam and cork are counted in their chapters. */
function wood({ bounds, parts, stock }: Book['notebook']): { readonly pieces: number; readonly sheets: number } {
  const isWood = (id: string) =>
    !stock.some((goods) => goods.id === id && goods.kind === 'sheet' && NOT_WOOD.includes(goods.material));
  return {
    pieces: parts.filter((part) => isWood(part.stock)).reduce((sum, part) => sum + part.places.length, 0),
    sheets: bounds.filter((bound) => isWood(bound.stock)).reduce((sum, bound) => sum + bound.found, 0),
  };
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
  const { scale, state, steps } = book.notebook;
  const { pieces, sheets } = wood(book.notebook);
  return [
    plain('Scale', scale),
    ...sizes(book),
    plain('Wood', `${counted(pieces, 'piece')} from ${counted(sheets, 'sheet')}, ${mass(book).toFixed(1)} kg`),
    plain('Steps', `${state.progress.done} of ${counted(steps.length, 'step')} done`),
    ...(state.hours.minutes > 0 ? [plain('Time in the log', duration(state.hours.minutes))] : []),
    ...(state.money.spent.length > 0 ? [plain('Spent', spentWords(state.money))] : []),
  ];
}
