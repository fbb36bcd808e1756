import { tidy } from '../machining.ts';

/** Heights from the floor to a deck's top and to what lies under it, the deck's thickness, and what hangs from it; mm or any one unit. */
export type Under = { readonly top: number; readonly under: number; readonly deck: number; readonly hangs: number };

/** Room for a hand between what hangs from a deck and what lies below it; mm or any one unit, 0 or less when there is none. */
export function handRoom({ top, under, deck, hangs }: Under): number {
  return tidy(top - deck - hangs - under);
}

/** Less than this is no room for a hand that holds something, mm; common practice, no source. */
export const HAND = 65;
