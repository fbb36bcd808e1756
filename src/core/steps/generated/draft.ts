import type { Sentence } from '../../units/say.ts';
import type { ChildPart } from '../step.ts';

/** A share of a generated step that a written one can take over: parts of one role, or one kind of machining. */
export type Work = {
  readonly kind: 'role' | 'machining';
  /** the role, or the kind of machining: crosscut, dado, rabbet, groove, lap, hole, opening, roundover */
  readonly noun: string;
  readonly makes: readonly string[];
  readonly lines: readonly Sentence[];
};

/** A generated step before it meets the written ones; ids without their chapter. */
export type Draft = {
  readonly id: string;
  /** the benchwork when absent */
  readonly chapter?: string;
  readonly title: string;
  /** what holds for all its work, said first */
  readonly lines: readonly Sentence[];
  /** the same where it depends on which pieces are worked here and not in a written step; stands for `lines` */
  readonly linesOf?: (instances: ReadonlySet<string>) => readonly Sentence[];
  /** its title once a written step has taken a share of it */
  readonly restTitle?: string;
  readonly work: readonly Work[];
  readonly tools: readonly string[];
  /** words besides the tools that call for a caution */
  readonly deeds: readonly string[];
  readonly people: number;
  readonly wait: number;
  readonly child: ChildPart;
  /** steps before it: of its own chapter by their short id, of others in full */
  readonly after: readonly string[];
  readonly fits: readonly string[];
};

type Given = Pick<Draft, 'id' | 'title' | 'work'> & Partial<Draft>;

/** A draft with the careful answers where nothing else is said: one person, no wait, a child watching. */
export function draft(given: Given): Draft {
  return { lines: [], tools: [], deeds: [], people: 1, wait: 0, child: 'watches', after: [], fits: [], ...given };
}

type Single = Omit<Given, 'work'> & {
  /** what its one piece of work says */
  readonly says: readonly Sentence[];
  readonly makes?: readonly string[];
  /** the step's own id when absent */
  readonly noun?: string;
};

/** A draft with one piece of work in it. */
export function singleDraft({ says, makes = [], noun, ...given }: Single): Draft {
  return draft({ ...given, work: [{ kind: 'machining', noun: noun ?? given.id, makes, lines: says }] });
}

/** The chapter a draft belongs to. */
export function draftChapter({ chapter = 'benchwork' }: Pick<Draft, 'chapter'>): string {
  return chapter;
}

/** A draft's id with its chapter: `benchwork.crosscut`. */
export function draftId(one: Pick<Draft, 'id' | 'chapter'>): string {
  return `${draftChapter(one)}.${one.id}`;
}
