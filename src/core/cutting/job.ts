/** A sheet, board or strip to cut from; length along its grain if it has one. mm. */
export type CutStock = {
  readonly id: string;
  readonly length: number;
  /** 0 for wire and anything else that only has a length */
  readonly width: number;
  readonly grain: 'length' | 'width' | 'any';
  /** cost of one; only comparisons matter */
  readonly price: number;
  /** how many there are; null means as many as asked */
  readonly count: number | null;
  /** true for an offcut in hand: used first, costs nothing, its edges need no trimming */
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

/** A stage is a round of parallel cuts; the first round is rips along the sheet's length. */
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
  /** which of the part's pieces it becomes, once the notebook has dealt them out */
  readonly instance?: string;
};

/** A rectangle of a sheet, by its lower left corner. */
export type Area = { readonly x: number; readonly y: number; readonly length: number; readonly width: number };

/**
 * narrow-rip: push stick and riving knife; two-people: a piece to be held at both ends; short-crosscut: too short to hold
 * by hand; short-rip: too little along the fence to lead it there; beyond-fence: set further than the table saw's fence
 * goes, once a notebook has said how far that is.
 */
export type CutCaution = 'narrow-rip' | 'two-people' | 'short-crosscut' | 'short-rip' | 'beyond-fence';

/**
 * One pass of the saw, in order. A rip runs along the sheet's length, a crosscut along its width. `setting` is the
 * fence or stop distance: the size of the piece between fence and blade. `from` is the piece cut.
 */
export type Cut = {
  readonly number: number;
  readonly kind: 'trim' | 'rip' | 'crosscut';
  readonly from: Area;
  readonly setting: number;
  /** where the kerf lies */
  readonly kerf: Area;
  /** the pieces left; for a rip or crosscut the one at the fence first */
  readonly yields: readonly Area[];
  /** round of parallel cuts it belongs to, 1 the first; 0 for trimming and for cuts round a spot that can't be used */
  readonly stage: number;
  readonly cautions: readonly CutCaution[];
};

/** A piece worth keeping; `label` is what to write on it, once the notebook has named it. */
export type Kept = Area & { readonly label?: string };

/** One sheet. What the solver does not know, a notebook adds. */
export type CutSheet = {
  readonly stock: string;
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
  readonly parts: readonly CutPlace[];
  readonly cuts: readonly Cut[];
  readonly offcuts: readonly Kept[];
  readonly waste: readonly Area[];
  /** the chapter it is cut for */
  readonly chapter?: string;
  /** the thickness its parts reckon with, mm */
  readonly thickness?: number;
  /** what is written on the offcut or the sheet in hand that it is; absent: a new one */
  readonly piece?: string;
};

/** An offcut as stock: sheets by their number, from 1; `used` is null while it is kept. Its length runs along the sheet's. */
export type Offcut = Area & {
  readonly label: string;
  readonly stock: string;
  readonly thickness: number;
  readonly from: number;
  readonly used: number | null;
};

/** Proved when no layout of this style can use fewer: `bound` equals `found`. */
export type CutBound = {
  readonly stock: string;
  readonly found: number;
  readonly bound: number;
  readonly proved: boolean;
};

/** Why a part found no place: larger than any stock, stock used up, a size or count that is no number, beyond the most the search takes. */
export type UnplacedReason = 'too-large' | 'no-stock-left' | 'not-a-size' | 'too-many';

/** `largest` is the largest rectangle any stock gives, its length in the direction of the part's length. */
export type Unplaced = {
  readonly part: string;
  readonly quantity: number;
  readonly largest: Area | null;
  readonly why: UnplacedReason;
};

export type CutAnswer = {
  readonly sheets: readonly CutSheet[];
  readonly bounds: readonly CutBound[];
  /** parts no sheet can hold, with the largest rectangle that would fit */
  readonly unplaced: readonly Unplaced[];
  readonly work: number;
};
