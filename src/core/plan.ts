import type { Benchwork } from './benchwork/schema.ts';
import type { Entry } from './log/schema.ts';
import type { Head } from './log/head.schema.ts';
import type { Scenery } from './scenery/schema.ts';
import type { Stock } from './stock/goods.ts';
import type { Train } from './track/train.schema.ts';
import type { Track } from './track/schema.ts';
import type { Spots } from './units/problem.ts';
import type { Wiring } from './wiring/schema.ts';

/** A notebook as its author wrote it, checked in shape, nothing evaluated. */
export type Plan = {
  readonly slug: string;
  readonly head: Head;
  readonly benchwork: Benchwork;
  readonly track: Track | null;
  readonly wiring: Wiring | null;
  readonly scenery: Scenery | null;
  /** by date, then by file name */
  readonly log: readonly Entry[];
  readonly stock: readonly Stock[];
  readonly trains: readonly Train[];
  readonly spots: Spots;
};
