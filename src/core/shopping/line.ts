import type { Price } from '../stock/price.ts';

/** One thing to buy, over all chapters. Lengths mm. */
export type ShoppingLine = {
  /** id of the stock; null when an author named none */
  readonly stock: string | null;
  readonly name: string;
  /** what one is: sheet, board, piece, pack of 100, roll, tin of 750 ml */
  readonly unit: string;
  /** of a sheet or board */
  readonly size: { readonly length: number; readonly width: number } | null;
  /** how many units to buy; null when the stock does not say what one is good for */
  readonly quantity: number | null;
  /** pieces counted in the plan, for hardware; null for what is not counted by the piece */
  readonly counted: number | null;
  /** pieces left over when all counted ones are used; null where `counted` is */
  readonly over: number | null;
  /** units in hand that were taken off, for hardware pieces */
  readonly inHand: number;
  /** share of bought sheets that becomes neither part nor offcut; null for all else */
  readonly waste: number | null;
  /** price of one unit; null when nobody gave it */
  readonly each: Price | null;
  /** price of all of them */
  readonly price: Price | null;
  /** chapters it is for, in the order of the work */
  readonly for: readonly string[];
};

/** The list with what it comes to. */
export type Shopping = {
  readonly lines: readonly ShoppingLine[];
  /** sums of what has a price, one a currency */
  readonly total: readonly Price[];
  /** lines that have none */
  readonly unpriced: number;
  readonly budget: Price | null;
  /** budget less what has a price in its currency; null without a budget */
  readonly left: Price | null;
};

/** A sheet or board that is cut from new stock; areas of its parts and of what is kept, mm2. */
export type SheetWanted = {
  readonly stock: string;
  readonly length: number;
  readonly width: number;
  readonly parts: number;
  readonly kept: number;
  readonly for: string;
};

/**
 * Anything else a chapter asks for: `quantity` in pieces where the stock is hardware or a caster, in mm where it is wire,
 * else in whole buying units; null when that is not known.
 */
export type GoodsWanted = {
  readonly stock: string | null;
  readonly name: string;
  readonly unit: string | null;
  readonly quantity: number | null;
  readonly for: string;
  /** of a wire, each colour being its own reel; absent: sold in none */
  readonly colour?: string;
};
