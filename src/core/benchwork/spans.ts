import { tidy } from './machining.ts';

/**
 * Length of a panel that stands in rabbets or dados on both sides, mm: the outside less what is left of the sheet behind
 * each, L = W - 2 (t - d).
 */
export function betweenRabbets(outside: number, thickness: number, depth: number): number {
  return tidy(outside - 2 * (thickness - depth));
}

/** The sheet thickness that a panel's length implies, mm; the same formula the other way round. */
export function thicknessImplied(outside: number, panel: number, depth: number): number {
  return tidy(depth + (outside - panel) / 2);
}

/** The outside that a panel of this length gives, mm. */
export function outsideImplied(panel: number, thickness: number, depth: number): number {
  return tidy(panel + 2 * (thickness - depth));
}

/** Equal cells in a clear width, parted by webs; mm and a count of cells. */
export type Cells = { readonly count: number; readonly web: number };

/** Width of each cell, mm: (clear - (n - 1) web) / n. */
export function cells(clear: number, { count, web }: Cells): number {
  return tidy((clear - (count - 1) * web) / count);
}

/** The clear width that cells of this size need, mm. */
export function clearImplied(cell: number, { count, web }: Cells): number {
  return tidy(count * cell + (count - 1) * web);
}

/** The most webs of one thickness that leave cells of at least `least` in a clear width; 0 when there is room for none. */
export function mostWebs(clear: number, web: number, least: number): number {
  return Math.max(0, Math.floor(tidy((clear - least) / (web + least))));
}
