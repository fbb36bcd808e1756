/** A sheet, board or strip to cut from; length along its grain if it has one. mm. */
export type CutStock = {
  readonly id: string;
  readonly length: number;
  readonly width: number;
  readonly grain: 'length' | 'width' | 'any';
  /** cost of one; only comparisons matter */
  readonly price: number;
  /** how many there are; null means as many as asked */
  readonly count: number | null;
  /** true for an offcut in hand: used first, costs nothing */
  readonly offcut: boolean;
  /** rectangles that can't be used (a knot, a dent): x, y, length, width */
  readonly noGo: readonly { readonly x: number; readonly y: number; readonly length: number; readonly width: number }[];
};

/** One kind of rectangle wanted. `grain` says which of its sides must lie along the sheet's grain. */
export type CutPart = {
  readonly id: string;
  readonly length: number;
  readonly width: number;
  readonly quantity: number;
  readonly grain: 'length' | 'width' | 'any';
};

export type CutStyle =
  | { readonly kind: 'saw'; readonly stages: 2 | 3 | 'any' }
  | { readonly kind: 'router'; readonly bit: number };

export type CutJob = {
  readonly stock: readonly CutStock[];
  readonly parts: readonly CutPart[];
  /** width of the saw cut */
  readonly kerf: number;
  /** taken off each edge of a new sheet before anything is measured from it */
  readonly trim: number;
  readonly style: CutStyle;
  /** smallest side of an offcut worth keeping */
  readonly keep: number;
  /** how much work the search may do, in its own units; the same job and budget give the same answer */
  readonly budget: number;
};

/** A part on a sheet: lower left corner, size as it lies; `turned` when its length lies along the sheet's width. */
export type CutPlace = {
  readonly part: string;
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
  readonly turned: boolean;
};

/** A rectangle of a sheet, by its lower left corner. */
export type Area = { readonly x: number; readonly y: number; readonly length: number; readonly width: number };

/** One pass of the saw, in order. `setting` is the fence or stop distance, `from` the piece cut, `off` what falls off. */
export type Cut = {
  readonly number: number;
  readonly kind: 'trim' | 'rip' | 'crosscut';
  readonly from: Area;
  readonly setting: number;
  /** where the kerf lies */
  readonly kerf: Area;
  readonly yields: readonly Area[];
};

export type CutSheet = {
  readonly stock: string;
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
  readonly parts: readonly CutPlace[];
  readonly cuts: readonly Cut[];
  readonly offcuts: readonly Area[];
  readonly waste: readonly Area[];
};

/** Proved when no layout of this style can use fewer: `bound` equals `found`. */
export type CutBound = { readonly stock: string; readonly found: number; readonly bound: number; readonly proved: boolean };

export type CutAnswer = {
  readonly sheets: readonly CutSheet[];
  readonly bounds: readonly CutBound[];
  /** parts no sheet can hold, with the largest rectangle that would fit */
  readonly unplaced: readonly { readonly part: string; readonly quantity: number; readonly largest: Area | null }[];
  readonly work: number;
};
