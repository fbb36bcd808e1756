import type { Dimension } from '../units/quantity.ts';

/** What an entry is about; follows from the keys its author used. */
export type EntryKind =
  | 'work'
  | 'measurement'
  | 'change'
  | 'fix'
  | 'laid'
  | 'trial'
  | 'decision'
  | 'closing'
  | 'upkeep'
  | 'purchase'
  | 'acceptance'
  | 'photo'
  | 'words';

export type Money = { readonly value: number; readonly currency: string };

/** Readings of one thing; `texts` are the readings as typed. mm, unless the thing is no length. */
export type Measured = {
  readonly what: string;
  readonly readings: readonly number[];
  readonly texts: readonly string[];
  readonly mean: number;
  readonly thickest: number;
  readonly thinnest: number;
  readonly with: string | null;
  /** how far one reading may be out, mm */
  readonly within: number | null;
};

/**
 * A value of the plan set anew, or a block added or taken away; `set` is its path, chapter first. `was` and `to` are in
 * the core's unit of `dimension`, null for words and blocks; the texts are as typed.
 */
export type Change = {
  readonly kind: 'set' | 'add' | 'remove';
  readonly set: string;
  readonly dimension: Dimension | null;
  readonly was: number | null;
  readonly to: number | null;
  readonly wasText: string;
  readonly toText: string;
  readonly because: string | null;
};

export type Leaves = 'full' | 'half' | 'hinge' | 'nothing';

/** Damage and its mend; `at` is mm from the end that `from` names. */
export type Fix = {
  readonly part: string;
  readonly at: number | null;
  readonly from: string | null;
  readonly what: string;
  readonly cause: string | null;
  readonly mend: string | null;
  readonly leaves: Leaves | null;
};

/** A spot along a line of track, mm past a named joint or mm from its start. */
export type LineSpot = {
  readonly line: string;
  readonly past: string | null;
  readonly by: number | null;
  readonly at: number | null;
};

/** Track as it really lies, mm. */
export type Laid = LineSpot & {
  readonly heightStep: number | null;
  readonly sideStep: number | null;
  readonly gap: number | null;
  readonly gauge: number | null;
  /** radians */
  readonly kink: number | null;
  readonly twist: number | null;
};

/** A run past one spot: how often the vehicle came off, of how many passes. */
export type Trial = LineSpot & {
  readonly off: number;
  readonly of: number;
  readonly vehicle: string | null;
  readonly direction: string | null;
};

export type Decision = { readonly what: string; readonly ratherThan: string | null; readonly because: string | null };

/** How a space that is out of sight is reached; each null while nobody wrote it down. */
export type HiddenSpace = {
  readonly id: string;
  readonly access: string | null;
  readonly photo: string | null;
  readonly test: string | null;
};

export type Photo = { readonly file: string; readonly alt: string; readonly private: boolean };

/** Something done that comes round again; `againIn` in months. */
export type Upkeep = { readonly what: string; readonly againIn: number | null };

/** A finding its author lives with, down to `figure`. */
export type Acceptance = {
  readonly finding: string;
  readonly where: string;
  readonly figure: number | null;
  readonly dimension: Dimension | null;
  readonly because: string;
};

/** One log entry, evaluated: plain numbers in mm and minutes, ids in full (`benchwork.rout`). */
export type LogRecord = {
  /** the file's name without its ending: `2026-03-14-rout` */
  readonly id: string;
  /** ISO, `2026-03-14` */
  readonly date: string;
  readonly chapter: string;
  readonly title: string;
  /** minutes at work; null when not written down */
  readonly minutes: number | null;
  readonly people: number | null;
  readonly kinds: readonly EntryKind[];
  readonly done: readonly string[];
  readonly made: readonly string[];
  /** instances put in their place, or taken out of it */
  readonly placed: readonly string[];
  readonly apart: readonly string[];
  readonly measured: readonly Measured[];
  readonly changes: readonly Change[];
  readonly fixes: readonly Fix[];
  readonly laid: readonly Laid[];
  readonly trials: readonly Trial[];
  readonly decided: readonly Decision[];
  readonly hidden: readonly HiddenSpace[];
  readonly photos: readonly Photo[];
  readonly upkeep: readonly Upkeep[];
  readonly spent: Money | null;
  readonly accepted: readonly Acceptance[];
};
