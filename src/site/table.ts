import type { Html } from './html.ts';

/** A column's head and the side its figures stand on. */
export type Column = readonly [head: string, side?: 'right'];

/** A table in words: its caption, its columns, and rows of as many cells; the first cell names its row. */
export type Told = {
  /** for readers who hear the page */
  readonly label: string;
  readonly caption: Html;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Html[])[];
};

/** One fact of a list: its name and its words. */
export type Fact = readonly [name: string, words: Html];
