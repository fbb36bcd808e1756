import type { Stock } from '../stock/goods.ts';
import type { PieceInHand } from '../stock/in-hand.ts';
import type { Part } from '../stock/part.ts';
import type { Prices } from '../stock/price.ts';
import type { Saw } from '../stock/saw.ts';
import { boundsOfLots } from './bounds-of-lots.ts';
import type { Cut, CutBound, CutPlace, CutSheet, Offcut, Unplaced } from './job.ts';
import { type Lot, lotsOf } from './lot.ts';
import { isBought, jobOf } from './parts-job.ts';
import type { YardCut } from './yard.ts';
import { type CutLot, layOutCarried } from './yard-lot.ts';

/** The saw, the prices, and what is there already. */
export type Workshop = { readonly saw: Saw; readonly prices: Prices; readonly pieces: readonly PieceInHand[] };

/** All parts on their sheets, and what is left for later. */
export type AllCut = {
  readonly lots: readonly CutLot[];
  readonly sheets: readonly CutSheet[];
  readonly offcuts: readonly Offcut[];
  readonly bounds: readonly CutBound[];
  readonly unplaced: readonly Unplaced[];
};

/** A cut to ask for when buying: of which stock, and for which sheets, numbered from 1. */
export type YardAsk = { readonly stock: string; readonly cut: YardCut; readonly sheets: readonly number[] };

/** Readings of one sheet's thickness differ by less, mm. */
const ONE_SHEET = 0.1;

/**
 * Lays every lot out in the order of stock, thickness and chapter. What a chapter leaves is labelled and is stock for
 * the chapters after it, as are the pieces in hand.
 */
export function cutLots(parts: readonly Part[], stock: readonly Stock[], workshop: Workshop): AllCut {
  const taken = new Set([
    ...workshop.pieces.map(({ id }) => id),
    ...parts.flatMap(({ places }) => places.map(({ label }) => label)),
  ]);
  let pool = workshop.pieces;
  const done: { lots: CutLot[]; sheets: CutSheet[]; offcuts: Offcut[] } = { lots: [], sheets: [], offcuts: [] };
  for (const lot of lotsOf(parts, stock)) {
    const pieces = pool.filter((piece) => serves(piece, lot) && piece.count > 0);
    const job = jobOf(lot, { ...workshop, pieces });
    const laid = layOutCarried(job, workshop.saw.car);
    const first = done.sheets.length;
    const deal = dealer(lot);
    const naming = { lot, pieces, deal, label: () => nextLabel(taken), rip: workshop.saw.rip };
    const sheets = laid.answer.sheets.map((sheet) => named(sheet, naming));
    done.lots.push({ ...laid, lot, job, first });
    done.sheets.push(...sheets);
    done.offcuts.push(...sheets.flatMap((sheet, i) => offcutsOf(sheet, first + i + 1)));
    done.offcuts = done.offcuts.map((offcut) => usedOn(offcut, { sheets, first }));
    pool = [...pool.map((piece) => lessUsed(piece, sheets)), ...sheets.flatMap((sheet) => asPieces(sheet))];
  }
  return { ...done, bounds: boundsOfLots(done.lots), unplaced: done.lots.flatMap(({ answer }) => answer.unplaced) };
}

function serves(piece: PieceInHand, { goods, thickness }: Lot): boolean {
  return piece.stock === goods.id && (piece.thickness === null || Math.abs(piece.thickness - thickness) <= ONE_SHEET);
}

/** K1, K2 ... as far as nothing else is called so. */
function nextLabel(taken: Set<string>): string {
  let number = 1;
  while (taken.has(`K${number}`)) number++;
  taken.add(`K${number}`);
  return `K${number}`;
}

/** Deals out the instances of a lot's parts in the order in which their pieces are met on the sheets. */
function dealer({ parts }: Lot): (place: CutPlace) => CutPlace {
  const left = new Map(parts.map(({ id, places }) => [id, places.map((place) => place.id)]));
  return (place) => {
    const instance = left.get(place.part)?.shift();
    return instance === undefined ? place : { ...place, instance };
  };
}

type Naming = {
  readonly lot: Lot;
  readonly pieces: readonly PieceInHand[];
  readonly deal: (place: CutPlace) => CutPlace;
  readonly label: () => string;
  /** how far the fence goes */
  readonly rip: number | null;
};

/** A sheet under the names of the notebook: its stock, its chapter, its thickness, and a label for all that is kept. */
function named(sheet: CutSheet, { lot, pieces, deal, label, rip }: Naming): CutSheet {
  const piece = pieces.find(({ id }) => id === sheet.stock);
  return {
    ...sheet,
    stock: lot.goods.id,
    chapter: lot.chapter,
    thickness: piece?.thickness ?? lot.thickness,
    ...(piece === undefined ? {} : { piece: piece.id }),
    parts: sheet.parts.map(deal),
    cuts: sheet.cuts.map((cut) => (rip !== null && isRip(cut) && cut.setting > rip ? beyondFence(cut) : cut)),
    offcuts: sheet.offcuts.map((area) => ({ ...area, label: label() })),
  };
}

/** Whether a cut runs along the sheet, as a trim of its long edges does. */
function isRip({ kind, kerf, from }: Cut): boolean {
  return kind === 'rip' || (kind === 'trim' && Math.abs(kerf.length - from.length) < 1e-6);
}

function beyondFence(cut: Cut): Cut {
  return { ...cut, cautions: [...cut.cautions, 'beyond-fence'] };
}

function offcutsOf(sheet: CutSheet, from: number): readonly Offcut[] {
  const { stock, thickness = 0 } = sheet;
  return sheet.offcuts.map(({ label = '', ...area }) => ({ ...area, label, stock, thickness, from, used: null }));
}

type Numbered = { readonly sheets: readonly CutSheet[]; readonly first: number };

function usedOn(offcut: Offcut, { sheets, first }: Numbered): Offcut {
  const index = sheets.findIndex(({ piece }) => piece === offcut.label);
  return index < 0 ? offcut : { ...offcut, used: first + index + 1 };
}

function lessUsed(piece: PieceInHand, sheets: readonly CutSheet[]): PieceInHand {
  const used = sheets.filter((sheet) => sheet.piece === piece.id).length;
  return used === 0 ? piece : { ...piece, count: piece.count - used };
}

function asPieces({ offcuts, stock, thickness = 0 }: CutSheet): readonly PieceInHand[] {
  return offcuts.map(({ label = '', length, width }) => ({
    ...{ id: label, stock, length, width, thickness },
    ...{ count: 1, edges: 'sawn', spoilt: [] },
  }));
}

/** The cuts to ask for at the yard. */
export function yardAsks(all: AllCut): readonly YardAsk[] {
  return all.lots.flatMap(({ yard, lot, first, answer }): readonly YardAsk[] => {
    if (yard === null) return [];
    const fresh = answer.sheets.flatMap((sheet, i) => (isBought(sheet.stock) ? [first + i + 1] : []));
    return [{ stock: lot.goods.id, cut: yard, sheets: fresh }];
  });
}
