import type { Sentence } from '../units/say.ts';

export type ChildPart = 'away' | 'watches' | 'does with an adult' | 'does alone';

export type Where = 'workshop' | 'room' | 'outdoors';

/** A caution in our own words with the body that publishes guidance. */
export type Caution = { readonly id: string; readonly text: string; readonly source: string };

/** One step of the work, written by the author or generated; the id is unique in the notebook: `benchwork.rout`. */
export type Step = {
  readonly id: string;
  readonly chapter: string;
  readonly title: string;
  readonly generated: boolean;
  /** instances of parts made or used */
  readonly makes: readonly string[];
  readonly tools: readonly string[];
  readonly people: number;
  readonly minutes: number | null;
  /** waiting time that needs nobody: glue, plaster, paint; minutes */
  readonly wait: number;
  readonly child: ChildPart;
  readonly where: Where;
  readonly after: readonly string[];
  /** id of a hidden space this step closes, else null */
  readonly closes: string | null;
  readonly cautions: readonly Caution[];
  /** instances that stand in their place once this step is done */
  readonly fits?: readonly string[];
  /** generated sentences; the author's prose is rendered by the site from the heading with the step's id */
  readonly lines: readonly Sentence[];
};
