import type { CutBound, CutSheet, Offcut } from '../cutting/job.ts';
import { cutLots } from '../cutting/lots.ts';
import { headValues } from '../head.ts';
import type { LeftToMake } from '../log/left.ts';
import type { Money } from '../log/record.ts';
import type { Plan } from '../plan.ts';
import type { Stock } from '../stock/goods.ts';
import type { PieceInHand } from '../stock/in-hand.ts';
import type { Part } from '../stock/part.ts';
import { type Prices, priceOfSize } from '../stock/price.ts';

/** Pieces nobody has cut yet from a sheet that others were cut from: their place on it is still there. */
export type StillOnSheet = { readonly sheet: number; readonly instances: readonly string[] };

/** What is left to make: from its place on a sheet begun, else laid out on offcuts in hand first, new sheets after. */
export type LeftWork = {
  readonly stillOn: readonly StillOnSheet[];
  /** the parts with only the pieces that are laid out anew */
  readonly parts: readonly Part[];
  readonly pieces: readonly PieceInHand[];
  readonly sheets: readonly CutSheet[];
  readonly bounds: readonly CutBound[];
  /** labels of parts that neither a piece in hand nor a sheet holds */
  readonly unplaced: readonly string[];
  /** what the new sheets cost; null when nobody gave a price */
  readonly toBuy: Money | null;
};

/** As much of a computed notebook as the rest of the work needs. */
export type WorkSoFar = {
  readonly parts: readonly Part[];
  readonly sheets: readonly CutSheet[];
  readonly offcuts: readonly Offcut[];
  readonly left: readonly LeftToMake[];
  /** instances a piece was made of once, lost or not: their place on a sheet is used */
  readonly cut: ReadonlySet<string>;
};

function partsLeft({ parts, left }: WorkSoFar, still: ReadonlySet<string>): readonly Part[] {
  return left.flatMap(({ part: id, instances }) => {
    const part = parts.find((one) => one.id === id);
    const places = part?.places.filter((place) => instances.includes(place.id) && !still.has(place.id)) ?? [];
    return part === undefined || places.length === 0 ? [] : [{ ...part, places }];
  });
}

/** Sheets something was cut from, by number: what they leave is there. */
function begun({ sheets, cut }: WorkSoFar): ReadonlySet<number> {
  const cutFrom = ({ parts }: CutSheet) => parts.some(({ instance }) => instance !== undefined && cut.has(instance));
  return new Set(sheets.flatMap((sheet, i) => (cutFrom(sheet) ? [i + 1] : [])));
}

function stillOnSheets(work: WorkSoFar): readonly StillOnSheet[] {
  const numbers = begun(work);
  const left = new Set(work.left.flatMap(({ instances }) => instances));
  return work.sheets.flatMap((sheet, i): readonly StillOnSheet[] => {
    if (!numbers.has(i + 1)) return [];
    const own = sheet.parts.flatMap(({ instance }) => (instance === undefined ? [] : [instance]));
    const instances = own.filter((id) => left.has(id) && !work.cut.has(id));
    return instances.length === 0 ? [] : [{ sheet: i + 1, instances }];
  });
}

/** What is left of a piece the cover names: those that cut sheets were made of are gone. */
function unused(piece: PieceInHand, sheets: readonly CutSheet[]): PieceInHand {
  return { ...piece, count: piece.count - sheets.filter((sheet) => sheet.piece === piece.id).length };
}

function inHand(work: WorkSoFar, written: readonly PieceInHand[]): readonly PieceInHand[] {
  const numbers = begun(work);
  const sheets = work.sheets.filter((_, i) => numbers.has(i + 1));
  const kept = work.offcuts.filter(({ from, used }) => numbers.has(from) && (used === null || !numbers.has(used)));
  return [
    ...written.map((piece) => unused(piece, sheets)).filter(({ count }) => count > 0),
    ...kept.map(
      ({ label, stock, length, width, thickness }): PieceInHand => ({
        ...{ id: label, stock, length, width, thickness },
        ...{ count: 1, edges: 'sawn', spoilt: [] },
      }),
    ),
  ];
}

function priceOf(sheet: CutSheet, stock: readonly Stock[], prices: Prices): Money | null {
  const goods = stock.find(({ id }) => id === sheet.stock);
  return goods === undefined ? null : priceOfSize(goods, sheet, prices);
}

/** The price of all new sheets together, in one currency; null when one has no price or another currency. */
function costOf(sheets: readonly CutSheet[], stock: readonly Stock[], prices: Prices): Money | null {
  const bought = sheets.filter(({ piece }) => piece === undefined).map((sheet) => priceOf(sheet, stock, prices));
  const known = bought.filter((price) => price !== null);
  const currencies = [...new Set(known.map(({ currency }) => currency))];
  const [currency] = currencies;
  if (known.length < bought.length || currencies.length > 1 || currency === undefined) return null;
  return { value: known.reduce((sum, { value }) => sum + value, 0), currency };
}

/** Cut list, sheets and price of what the log leaves to make. */
export function leftWork(plan: Pick<Plan, 'head' | 'stock'>, work: WorkSoFar): LeftWork {
  const { saw, pieces: written, buying } = headValues(plan.head);
  const stillOn = stillOnSheets(work);
  const parts = partsLeft(work, new Set(stillOn.flatMap(({ instances }) => instances)));
  const pieces = inHand(work, written);
  const { sheets, bounds, unplaced } = cutLots(parts, plan.stock, { saw, prices: buying.prices, pieces });
  return {
    stillOn,
    parts,
    pieces,
    sheets,
    bounds,
    unplaced: unplaced.map(({ part }) => part),
    toBuy: costOf(sheets, plan.stock, buying.prices),
  };
}
