import type { Finding } from '../finding.ts';
import type { Step } from '../steps/step.ts';
import { type Sentence, say } from '../units/say.ts';
import { daysBetween } from './calendar.ts';
import type { PartEvent } from './history.ts';
import type { InstanceState, PartCount } from './part-state.ts';
import type { LogRecord } from './record.ts';
import type { StepState } from './step-state.ts';
import type { UpkeepLine } from './upkeep.ts';

type Doubt = Pick<Finding, 'rule' | 'where' | 'chapter' | 'what' | 'mend'> & Partial<Finding>;

function doubt(given: Doubt): Finding {
  return { level: 'note', figure: null, limit: null, unit: 'count', source: 'this notebook', accepted: null, ...given };
}

/** More sound pieces than the plan asks for. */
export function sparePieces(counts: readonly PartCount[]): Finding[] {
  return counts
    .filter((count) => count.spare > 0)
    .map((count) =>
      doubt({
        rule: 'made-twice',
        level: 'care',
        where: count.id,
        chapter: 'benchwork',
        what: say`The log made ${count.id} ${String(count.made + count.spare)} times; the plan asks for ${String(count.asked)}, and no fix says that a piece was lost.`,
        figure: count.made + count.spare,
        limit: count.asked,
        mend: say`If a piece replaced another, log the old one under fix with 'leaves: nothing'; else take the second entry out.`,
      }),
    );
}

const HAPPENED: Readonly<Record<PartEvent['kind'], string>> = {
  made: 'made',
  measured: 'measured',
  placed: 'put in place',
  mended: 'mended',
  scrapped: 'lost',
  apart: 'taken apart',
};

/** Pieces put in place, or mended, that no entry made. */
export function neverMade(states: readonly InstanceState[]): Finding[] {
  return states.flatMap((state) => {
    const early = state.history.find((event) => event.kind !== 'made' && event.kind !== 'measured');
    const first = state.history.find((event) => event.kind === 'made');
    if (early === undefined || (first !== undefined && first.date <= early.date)) return [];
    return [
      doubt({
        rule: 'not-yet-made',
        where: state.instance,
        chapter: 'benchwork',
        what: say`${state.instance} was ${HAPPENED[early.kind]} on ${early.date}, before any entry made it.`,
        mend: say`Add it to 'made' in the entry of the day it was made.`,
      }),
    ];
  });
}

/** Steps called done before a step they wait for. */
export function outOfOrder(steps: readonly Step[], states: readonly StepState[]): Finding[] {
  const dates = new Map(states.map((state) => [state.id, state.date]));
  return steps.flatMap((step) => {
    const day = dates.get(step.id) ?? null;
    if (step.generated || day === null) return [];
    const early = step.after.filter((id) => (dates.get(id) ?? '9999') > day && !isGenerated(steps, id));
    if (early.length === 0) return [];
    return [
      doubt({
        rule: 'done-out-of-order',
        where: step.id,
        chapter: step.chapter,
        what: say`${step.id} was done on ${day}, before ${early.join(', ')}.`,
        mend: say`Log what it waits for, or take it out of the step's after.`,
      }),
    ];
  });
}

function isGenerated(steps: readonly Step[], id: string): boolean {
  return steps.find((step) => step.id === id)?.generated ?? true;
}

/** Steps done whose parts nobody wrote down as made. */
export function doneNotMade(
  steps: readonly Step[],
  states: readonly StepState[],
  parts: readonly InstanceState[],
): Finding[] {
  const done = new Set(states.filter((state) => state.state === 'done').map((state) => state.id));
  const missing = new Set(parts.filter((part) => !part.made).map((part) => part.instance));
  return steps.flatMap((step) => {
    const left = done.has(step.id) ? step.makes.filter((id) => missing.has(id)) : [];
    if (left.length === 0) return [];
    return [
      doubt({
        rule: 'done-not-made',
        where: step.id,
        chapter: step.chapter,
        what: say`${step.id} is done, but the log does not have ${left.join(', ')} as made.`,
        mend: say`Add what is there to 'made'; the rest stays on the list of what is left.`,
      }),
    ];
  });
}

/** Entries dated after today; only a command knows today. */
export function fromTheFuture(records: readonly LogRecord[], today: string | null): Finding[] {
  if (today === null) return [];
  return records
    .filter((record) => record.date > today)
    .map((record) =>
      doubt({
        rule: 'entry-in-future',
        level: 'care',
        where: record.id,
        chapter: record.chapter,
        what: say`The entry ${record.id} is dated ${String(daysBetween(today, record.date))} days after today, ${today}.`,
        mend: say`Set the day it was written; the file's name begins with the same date.`,
      }),
    );
}

function lateWords(line: UpkeepLine): Sentence {
  return say`${line.what}: due since ${line.due ?? ''}, last done ${line.last}.`;
}

/** Upkeep that is due. */
export function upkeepFindings(lines: readonly UpkeepLine[]): Finding[] {
  return lines
    .filter((line) => line.state === 'due')
    .map((line) =>
      doubt({
        rule: 'upkeep-due',
        where: line.entry,
        chapter: 'benchwork',
        what: lateWords(line),
        figure: line.days === null ? null : -line.days,
        mend: say`Do it and log it under upkeep.`,
      }),
    );
}
