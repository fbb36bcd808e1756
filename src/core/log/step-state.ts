import type { Step, Where } from '../steps/step.ts';
import type { LogRecord } from './record.ts';

/** A step as the log leaves it: done on a day, ready to start, or waiting for others. */
export type StepState = {
  readonly id: string;
  readonly chapter: string;
  readonly state: 'done' | 'ready' | 'waiting';
  readonly date: string | null;
  readonly entry: string | null;
  /** steps not done that it waits for */
  readonly waitsFor: readonly string[];
  /** pieces it makes that there is no sound one of yet */
  readonly missing: readonly string[];
};

/** Steps done of all steps, by chapter and in all. */
export type Progress = {
  readonly done: number;
  readonly of: number;
  readonly chapters: readonly { readonly chapter: string; readonly done: number; readonly of: number }[];
};

/** What can be started now, by place, in the order of the work. */
export type Next = Readonly<Record<Where, readonly string[]>>;

/** The first entry that calls each step done. */
export function doneSteps(records: readonly LogRecord[]): Map<string, LogRecord> {
  const done = new Map<string, LogRecord>();
  for (const record of records) for (const id of record.done) if (!done.has(id)) done.set(id, record);
  return done;
}

/** Every step with its state, in the order of the steps; `missing` are the pieces that are still to make. */
export function stepStates(
  steps: readonly Step[],
  done: ReadonlyMap<string, LogRecord>,
  missing: ReadonlySet<string>,
): StepState[] {
  return steps.map((step) => {
    const record = done.get(step.id);
    const waitsFor = record === undefined ? step.after.filter((id) => !done.has(id)) : [];
    const state = record !== undefined ? 'done' : waitsFor.length === 0 ? 'ready' : 'waiting';
    return {
      id: step.id,
      chapter: step.chapter,
      state,
      date: record?.date ?? null,
      entry: record?.id ?? null,
      waitsFor,
      missing: step.makes.filter((id) => missing.has(id)),
    };
  });
}

export function progressOf(states: readonly StepState[]): Progress {
  const count = (list: readonly StepState[]) => ({
    done: list.filter((one) => one.state === 'done').length,
    of: list.length,
  });
  const chapters = [...new Set(states.map((one) => one.chapter))];
  return {
    ...count(states),
    chapters: chapters.map((chapter) => ({ chapter, ...count(states.filter((one) => one.chapter === chapter)) })),
  };
}

export function nextSteps(steps: readonly Step[], states: readonly StepState[]): Next {
  const ready = new Set(states.filter((one) => one.state === 'ready').map((one) => one.id));
  const at = (where: Where) =>
    steps.filter((step) => step.where === where && ready.has(step.id)).map((step) => step.id);
  return { workshop: at('workshop'), room: at('room'), outdoors: at('outdoors') };
}
