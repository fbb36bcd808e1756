import type { BoardStock, SheetStock } from '../stock/goods.ts';
import type { PieceInHand } from '../stock/in-hand.ts';
import type { Part } from '../stock/part.ts';
import { type Prices, priceOfSize } from '../stock/price.ts';
import type { Saw } from '../stock/saw.ts';
import type { CutJob, CutPart, CutStock } from './job.ts';
import type { Lot } from './lot.ts';

/** How much the search may do for one lot; enough for the sheets of a home railway. */
const BUDGET = 400;

/** The saw, what a sheet costs, and the pieces of this stock that are there already. */
export type JobAsk = { readonly saw: Saw; readonly prices: Prices; readonly pieces: readonly PieceInHand[] };

/**
 * A lot as a job for the solver: pieces in hand first, under their own names, then new stock in its sizes, each named
 * after its stock with `@` and the size's place in the stock file.
 */
export function jobOf({ goods, parts }: Lot, { saw, prices, pieces }: JobAsk): CutJob {
  const grain = grainOf(goods);
  return {
    stock: [...pieces.map((piece) => inHand(piece, grain)), ...fresh(goods, prices)],
    parts: parts.map(wantedOf),
    kerf: saw.kerf,
    trim: goods.kind === 'sheet' ? saw.trim : 0,
    style: saw.nest === null ? { kind: 'saw', stages: saw.rounds } : { kind: 'router', bit: saw.nest },
    keep: saw.keep,
    budget: BUDGET,
  };
}

function wantedOf({ id, blank, places }: Part): CutPart {
  return { id, length: blank.length, width: blank.width, quantity: places.length, grain: blank.grain };
}

/** Pieces in hand lie with their length along the grain, if their stock has one. */
function grainOf(goods: SheetStock | BoardStock): CutStock['grain'] {
  const none = goods.kind === 'sheet' && goods.sizes.every(({ grain }) => grain === 'any');
  return none ? 'any' : 'length';
}

function inHand({ id, length, width, count, edges, spoilt }: PieceInHand, grain: CutStock['grain']): CutStock {
  return { id, length, width, grain, price: 0, count, offcut: edges === 'sawn', noGo: spoilt };
}

/** Prices only order sizes: where one of them has none, area stands for all. */
function fresh(goods: SheetStock | BoardStock, prices: Prices): readonly CutStock[] {
  const sizes = sizesOf(goods);
  const known = sizes.map((size) => priceOfSize(goods, size, prices)?.value ?? null);
  const priced = known.every((price) => price !== null && price > 0);
  return sizes.map(({ length, width, grain }, i) => ({
    ...{ id: `${goods.id}@${i}`, length, width, grain, count: null, offcut: false, noGo: [] },
    price: (priced ? known[i] : null) ?? length * width,
  }));
}

/** Whether a stock of such a job is bought: everything else is there already. */
export function isBought(stock: string): boolean {
  return stock.includes('@');
}

function sizesOf(goods: SheetStock | BoardStock) {
  if (goods.kind === 'sheet') return goods.sizes;
  return goods.lengths.map((length) => ({ length, width: goods.width, grain: 'length' as const }));
}
