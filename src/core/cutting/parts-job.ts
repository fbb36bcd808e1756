import type { BoardStock, SheetStock, Stock } from '../stock/goods.ts';
import type { Part } from '../stock/part.ts';
import type { Saw } from '../stock/saw.ts';
import type { CutJob, CutStock } from './job.ts';

/** How much the search may do for one stock; enough for the sheets of a home railway. */
const BUDGET = 400;

/** One cutting job a stock, in the order of the stock's ids, from the parts that are to be bought now; what falls out of another part needs no stock. */
export function cutJobs(parts: readonly Part[], stock: readonly Stock[], saw: Saw): readonly CutJob[] {
  const wanted = parts.filter((part) => part.phase === 'now' && part.from === undefined && part.places.length > 0);
  const used = [...new Set(wanted.map((part) => part.stock))].sort();
  return used.flatMap((id): CutJob[] => {
    const goods = stock.find((one) => one.id === id);
    if (goods?.kind !== 'sheet' && goods?.kind !== 'board') return [];
    return [
      jobOf(
        wanted.filter((part) => part.stock === id),
        goods,
        saw,
      ),
    ];
  });
}

function jobOf(parts: readonly Part[], goods: SheetStock | BoardStock, saw: Saw): CutJob {
  return {
    stock: goods.kind === 'sheet' ? sheets(goods) : boards(goods),
    parts: parts.map(({ id, blank, places }) => ({
      id,
      length: blank.length,
      width: blank.width,
      quantity: places.length,
      grain: blank.grain,
    })),
    kerf: saw.kerf,
    trim: goods.kind === 'sheet' ? saw.trim : 0,
    style: { kind: 'saw', stages: 3 },
    keep: saw.keep,
    budget: BUDGET,
  };
}

function sheets(goods: SheetStock): readonly CutStock[] {
  return goods.sizes.map((size) => ({
    ...fresh(goods.id, size.length, size.width),
    grain: size.grain,
    price: size.price?.value ?? goods.price?.value ?? size.length * size.width,
  }));
}

function boards(goods: BoardStock): readonly CutStock[] {
  return goods.lengths.map((length) => ({
    ...fresh(goods.id, length, goods.width),
    grain: 'length' as const,
    price: goods.price?.value ?? length,
  }));
}

function fresh(id: string, length: number, width: number) {
  return { id, length, width, count: null, offcut: false, noGo: [] };
}
