/** A rectangle of a sheet that can't be used, from its lower left corner; mm. */
export type Spoilt = { readonly x: number; readonly y: number; readonly length: number; readonly width: number };

/** A sheet, a board or an offcut that is there already; its length runs along the grain, mm. */
export type PieceInHand = {
  /** what is written on it */
  readonly id: string;
  readonly stock: string;
  readonly length: number;
  readonly width: number;
  readonly count: number;
  /** factory edges are trimmed as those of a new sheet are */
  readonly edges: 'factory' | 'sawn';
  /** as measured; null serves parts of any thickness of its stock */
  readonly thickness: number | null;
  readonly spoilt: readonly Spoilt[];
};
