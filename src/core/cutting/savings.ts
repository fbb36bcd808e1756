import { layOut } from './layout.ts';
import { isBought } from './parts-job.ts';
import { exact } from './tick.ts';
import { type Saving, type WhatIf, whatIf } from './whatif.ts';
import type { CutLot } from './yard-lot.ts';

/** A saving of a lot, with the stock whose sheet it saves. */
export type LotSaving = Saving & { readonly stock: string };

/** What the search may do a size tried, and the lots it is worth trying for. */
const SEARCH = 8;
const MOST_SHAPES = 60;
const MOST_PIECES = 300;

/**
 * The smallest change of a part that saves a new sheet of its lot, for lots that are cut from new sheets alone. Searched
 * with a small budget and told only if it holds with the lot's own: the size told saves the sheet, one tick more does
 * not.
 */
export function savingsOf(lots: readonly CutLot[], ask: WhatIf): readonly LotSaving[] {
  return lots.flatMap((one): readonly LotSaving[] => {
    const { job, lot, answer, yard } = one;
    const pieces = job.parts.reduce((sum, { quantity }) => sum + quantity, 0);
    const simple = yard === null && job.stock.every(({ id }) => isBought(id));
    if (!simple || answer.sheets.length < 2 || job.parts.length > MOST_SHAPES || pieces > MOST_PIECES) return [];
    const saving = whatIf({ ...job, budget: SEARCH }, ask);
    return saving !== null && holds(one, saving, ask.tick) ? [{ ...saving, stock: lot.goods.id }] : [];
  });
}

function holds({ job, answer }: CutLot, { part, side, to, sheets }: Saving, tick: number): boolean {
  const count = (size: number) => {
    const parts = job.parts.map((one) => (one.id === part ? { ...one, [side]: size } : one));
    const laid = layOut({ ...job, parts });
    return laid.unplaced.length === 0 ? laid.sheets.length : Number.POSITIVE_INFINITY;
  };
  return sheets === answer.sheets.length && count(to) < sheets && count(exact(to + tick)) === sheets;
}
