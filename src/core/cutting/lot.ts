import type { BoardStock, SheetStock, Stock } from '../stock/goods.ts';
import type { Part } from '../stock/part.ts';

/** Parts that are cut together: of one stock, one thickness and one chapter. */
export type Lot = {
  readonly goods: SheetStock | BoardStock;
  /** mm, as the parts reckon with it */
  readonly thickness: number;
  readonly chapter: Part['chapter'];
  readonly parts: readonly Part[];
};

/** The order in which chapters come to the saw: what one leaves, the next may use. */
const CHAPTERS = ['benchwork', 'track', 'scenery'] as const;

/** Thicknesses closer than this are one sheet's, mm. */
const SAME = 1e-3;

/** The parts to be cut now by stock, thickness and chapter; what falls out of another part needs no stock. */
export function lotsOf(parts: readonly Part[], stock: readonly Stock[]): readonly Lot[] {
  const wanted = parts.filter((part) => part.phase === 'now' && part.from === undefined && part.places.length > 0);
  return [...new Set(wanted.map((part) => part.stock))].sort().flatMap((id) => {
    const goods = stock.find((one) => one.id === id);
    if (goods?.kind !== 'sheet' && goods?.kind !== 'board') return [];
    const own = wanted.filter((part) => part.stock === id);
    return thicknesses(own).flatMap((thickness) => {
      const alike = own.filter((part) => Math.abs(part.blank.thickness - thickness) < SAME);
      return CHAPTERS.flatMap((chapter): readonly Lot[] => {
        const here = alike.filter((part) => part.chapter === chapter);
        return here.length === 0 ? [] : [{ goods, thickness, chapter, parts: here }];
      });
    });
  });
}

/** The thickest first. */
function thicknesses(parts: readonly Part[]): readonly number[] {
  const sorted = parts.map(({ blank }) => blank.thickness).sort((a, b) => b - a);
  return sorted.filter((one, i) => i === 0 || (sorted[i - 1] ?? one) - one >= SAME);
}
