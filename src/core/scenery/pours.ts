/** A day between pours; common practice, no source. The label decides. Minutes. */
export const POUR_WAIT = 24 * 60;

/** Resin mixed and lost in cups, edges and fillets; common practice, no source. */
export const RESIN_WASTE = 0.1;

/** Kilograms a litre of casting resin weighs; assumed, as sellers print it. */
export const RESIN_DENSITY = 1.1;

/** The deepest pour that stays cool, mm: 1/4 in, as sellers of casting water print it. */
export const DEEPEST_POUR = 6.35;

/** A way to fill a depth: pours of at most `pour`, all alike. */
export type Pours = { readonly count: number; readonly each: number; readonly wait: number };

/** The fewest equal pours that keep within a depth each; mm and minutes of waiting in all. */
export function pours(depth: number, pour: number): Pours {
  const count = Math.max(1, Math.ceil(depth / pour - 1e-9));
  return { count, each: depth / count, wait: count * POUR_WAIT };
}

/** How much deeper the low end of a water stands when the table leans; mm for mm. */
export function deeperAt(length: number, lean: number): number {
  return length * lean;
}

/** How much a table may lean unseen: 1/8 in a foot, as a builder found after the pour; no standard. */
export const UNSEEN_LEAN = 1 / 96;

/** What a dam stands above the deepest it may have to hold; common practice, no source. mm. */
const DAM_MARGIN = 3;

/** Height a dam needs over the floor: the depth, what a lean adds, and a margin; mm. */
export function damHeight(depth: number, length: number, lean: number): number {
  return depth + deeperAt(length, lean) + DAM_MARGIN;
}
