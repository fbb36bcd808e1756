import type { Problem } from '../core/units/problem.ts';

/** 0 clean, 1 the author's to mend, 2 ours. */
export type ExitCode = 0 | 1 | 2;

/** The site while it is written, and how to end it. */
export type RunningSite = { readonly stop: () => Promise<void> };

/** What a command may do outside itself; handed in, so that each command runs in a test as it does on a desk. */
export type Desk = {
  /** to standard output, as it is */
  readonly write: (text: string) => void;
  /** to standard error, as it is */
  readonly warn: (text: string) => void;
  /** the project's folder; the shipped content stands in `content` below it */
  readonly root: string;
  /** the content folder in use */
  readonly content: string;
  /** where the built site belongs */
  readonly dist: string;
  /** makes the site of a content folder in a fresh folder; throws when it can't */
  readonly makeSite: (content: string, out: string) => Promise<void>;
  /** serves a content folder on a port of this machine and follows changes of the site's own sources */
  readonly startSite: (content: string, port: number) => Promise<RunningSite>;
  /** calls back after every change in a folder; ends with the function it gives */
  readonly watch: (folder: string, changed: () => unknown) => () => void;
  /** the day on the person's calendar, `2026-03-14`; only commands know it, the model never does */
  readonly today: () => string;
  /** resolves when the person wants to stop */
  readonly untilStopped: () => Promise<void>;
};

/** What can be wrong with a command line: said with what to type instead. */
export type Refusal = { readonly what: string; readonly mend: string };

export function refuse(desk: Desk, { what, mend }: Refusal): ExitCode {
  desk.warn(`${what}\n    mend: ${mend}\n`);
  return 1;
}

/** A folder's own problems and what all notebooks share. */
export function concerns(slug: string, problem: Problem): boolean {
  return !problem.file.startsWith('notebooks/') || problem.file.startsWith(`notebooks/${slug}/`);
}
