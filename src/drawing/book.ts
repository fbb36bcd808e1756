import type { Notebook } from '../core/notebook.ts';

/** What drawings need of a computed notebook; a whole Notebook will do. */
export type DrawingBook = Pick<
  Notebook,
  'slug' | 'title' | 'makers' | 'benches' | 'parts' | 'joints' | 'seams' | 'sheets'
> & {
  /** pictures of the assembly are listed when it is there */
  readonly assembly?: Notebook['assembly'];
  /** the track's plan and heights are listed when it is there */
  readonly track?: Notebook['track'];
  /** contours, sections and templates are listed when it is there */
  readonly scenery?: Notebook['scenery'];
  /** plans of the wires are listed when it is there */
  readonly wiring?: Notebook['wiring'];
  /** pieces that the checks speak of carry a badge when it is there */
  readonly findings?: Notebook['findings'];
  /** what other chapters cut is noted on the parts when it is there */
  readonly requests?: Notebook['requests'];
  /** screws are placed on the parts when they are there */
  readonly fasteners?: Notebook['fasteners'];
  /** casters are drawn under the legs when these three are there */
  readonly envelopes?: Notebook['envelopes'];
  readonly hardware?: Notebook['hardware'];
  readonly stock?: Notebook['stock'];
  /** the thickest reading stands in the words of a joint when it is there */
  readonly thicknesses?: Notebook['thicknesses'];
  /** fix maps are listed, and fixes noted on the parts, when it is there */
  readonly state?: Pick<Notebook['state'], 'fixes'>;
};
