import type { Sentence } from './units/say.ts';

/** halt: do not cut, build or run yet; care: works, with a cost; note: worth knowing. */
export type Level = 'halt' | 'care' | 'note';

/** What a figure is counted in; lengths in mm. */
export type FigureUnit =
  | 'mm'
  | 'deg'
  | '%'
  | 'N'
  | 'kg'
  | 'V'
  | 'A'
  | 'ohm'
  | 'count'
  | 'min'
  | 'month'
  | 'money'
  | 'ratio'
  | 'litre';

/** A check of the model against a limit. Findings never stop the computation. */
export type Finding = {
  /** stable kebab-case name of the check */
  readonly rule: string;
  readonly level: Level;
  /** id of the part, joint, seam, line or step it is about; 'strut.across-3', 'deck.seam-1' */
  readonly where: string;
  readonly chapter: string;
  readonly what: Sentence;
  readonly figure: number | null;
  readonly limit: number | null;
  readonly unit: FigureUnit;
  /** how to mend it, with a computed value */
  readonly mend: Sentence;
  /** who says so: standard, edition, clause; or 'common practice, no source' */
  readonly source: string;
  /** the reason an author gave in the log for living with it, else null */
  readonly accepted: string | null;
};
