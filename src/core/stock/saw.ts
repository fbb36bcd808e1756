/** What fits the car, lying flat, and how far off a cut at the yard may be to either side; mm. */
export type Carried = { readonly length: number; readonly width: number; readonly within: number };

/** How sheets and boards are cut, as the author has it. mm. */
export type Saw = {
  readonly kerf: number;
  /** how far the table saw's fence goes; null when no table saw is named, or not how far */
  readonly rip: number | null;
  /** taken off each factory edge of a new sheet before anything is measured from it */
  readonly trim: number;
  /** smallest side of an offcut worth keeping */
  readonly keep: number;
  /** rounds of parallel cuts, rips first */
  readonly rounds: 2 | 3 | 'any';
  /** the router's bit when parts are routed out of the sheet; null when they are sawn */
  readonly nest: number | null;
  /** null when sheets come home whole */
  readonly car: Carried | null;
};
