import type { Step } from '../steps/step.ts';
import type { LogRecord } from './record.ts';

/** Time logged, in minutes; `hand` counts the hands: 60 minutes of two people are 120. */
export type Time = { readonly minutes: number; readonly hand: number };

export type Hours = Time & {
  readonly chapters: Readonly<Record<string, Time>>;
  /** entries of work without a time */
  readonly untimed: number;
  /** the authors' estimates of all steps, of those done and of those left */
  readonly estimate: {
    readonly all: number;
    readonly done: number;
    readonly left: number;
    readonly withoutTime: number;
    /** steps left without an estimate */
    readonly unknown: number;
  };
  /** minutes in the end, if the rest takes as much longer than estimated as the work so far did; null while nothing tells */
  readonly forecast: number | null;
};

function time(records: readonly LogRecord[]): Time {
  const minutes = records.reduce((sum, record) => sum + (record.minutes ?? 0), 0);
  const hand = records.reduce((sum, record) => sum + (record.minutes ?? 0) * (record.people ?? 1), 0);
  return { minutes, hand };
}

function estimated(steps: readonly Step[]): number {
  return steps.reduce((sum, step) => sum + (step.minutes ?? 0), 0);
}

/** Hours of a log against the estimates of the steps. Minutes. */
export function hoursOf(records: readonly LogRecord[], steps: readonly Step[], done: ReadonlySet<string>): Hours {
  const chapters = [...new Set(records.map((record) => record.chapter))].sort();
  const behind = estimated(steps.filter((step) => done.has(step.id)));
  const left = estimated(steps.filter((step) => !done.has(step.id)));
  const all = time(records);
  return {
    ...all,
    chapters: Object.fromEntries(
      chapters.map((name) => [name, time(records.filter((record) => record.chapter === name))]),
    ),
    untimed: records.filter((record) => record.minutes === null && record.kinds.includes('work')).length,
    estimate: {
      all: behind + left,
      done: behind,
      left,
      withoutTime: steps.filter((step) => step.minutes === null).length,
      unknown: steps.filter((step) => step.minutes === null && !done.has(step.id)).length,
    },
    forecast: behind > 0 && all.minutes > 0 ? all.minutes + (all.minutes / behind) * left : null,
  };
}
