import type { Benchwork } from './benchwork/schema.ts';
import type { Head } from './head.schema.ts';
import type { Entry } from './log/schema.ts';
import type { Scenery } from './scenery/schema.ts';
import type { Stock } from './stock/goods.ts';
import type { Track } from './track/schema.ts';
import type { Train } from './track/train.schema.ts';
import type { Spots } from './units/problem.ts';
import type { Wiring } from './wiring/schema.ts';

/** A chapter's words below its front matter; `firstLine` is the line of its file where they begin, from 1. */
export type Prose = {
  readonly chapter: string;
  readonly file: string;
  readonly body: string;
  readonly firstLine: number;
};

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
  readonly prose: readonly Prose[];
  readonly spots: Spots;
};
