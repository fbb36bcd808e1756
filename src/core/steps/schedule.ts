import type { Step } from './step.ts';

/** What is left to do and what holds it up. Minutes; steps whose author gave no time count 0 and are listed. */
export type Schedule = {
  /** the longest chain of steps and waits that nothing can shorten, in order */
  readonly critical: readonly string[];
  readonly criticalMinutes: number;
  /** work left, and the same times the hands it takes */
  readonly minutesLeft: number;
  readonly handMinutesLeft: number;
  readonly waitLeft: number;
  readonly withoutTime: readonly string[];
  /** steps that can start now, in order */
  readonly ready: readonly string[];
  readonly waiting: readonly { readonly id: string; readonly for: readonly string[] }[];
};

type Chain = { readonly end: number; readonly path: readonly string[] };

/** The schedule of steps in their order, with those in `done` behind us. Steps must come after what they wait for. */
export function schedule(steps: readonly Step[], done: readonly string[]): Schedule {
  const behind = new Set(done);
  const open = steps.filter((step) => !behind.has(step.id));
  const chain = longest(open);
  const pending = new Set(open.map((step) => step.id));
  const blocked = open.map((step) => ({ id: step.id, for: step.after.filter((id) => pending.has(id)) }));
  return {
    critical: chain.path,
    criticalMinutes: chain.end,
    minutesLeft: total(open, (step) => step.minutes ?? 0),
    handMinutesLeft: total(open, (step) => (step.minutes ?? 0) * step.people),
    waitLeft: total(open, (step) => step.wait),
    withoutTime: open.filter((step) => step.minutes === null).map((step) => step.id),
    ready: blocked.filter((one) => one.for.length === 0).map((one) => one.id),
    waiting: blocked.filter((one) => one.for.length > 0),
  };
}

function total(steps: readonly Step[], of: (step: Step) => number): number {
  return steps.reduce((sum, step) => sum + of(step), 0);
}

/** Critical path method (Kelley and Walker 1959): earliest finish of a step is the latest of what it waits for, plus its own time. */
function longest(open: readonly Step[]): Chain {
  const finish = new Map<string, { end: number; before: string | null }>();
  let last: string | null = null;
  for (const step of open) {
    const before = latest(step.after, finish);
    const start = before === null ? 0 : (finish.get(before)?.end ?? 0);
    finish.set(step.id, { end: start + (step.minutes ?? 0) + step.wait, before });
    if (last === null || (finish.get(step.id)?.end ?? 0) > (finish.get(last)?.end ?? 0)) last = step.id;
  }
  const path: string[] = [];
  for (let at = last; at !== null; at = finish.get(at)?.before ?? null) path.push(at);
  return { end: last === null ? 0 : (finish.get(last)?.end ?? 0), path: path.reverse() };
}

function latest(ids: readonly string[], finish: ReadonlyMap<string, { end: number }>): string | null {
  let best: string | null = null;
  for (const id of ids) {
    const end = finish.get(id)?.end;
    if (end === undefined) continue;
    if (best === null || end > (finish.get(best)?.end ?? 0)) best = id;
  }
  return best;
}
