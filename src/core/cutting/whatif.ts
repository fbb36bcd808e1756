import type { CutJob, CutPart } from './job.ts';
import { layOut } from './layout.ts';
import { exact } from './tick.ts';

/** One part made smaller in one direction so that fewer sheets do. mm. */
export type Saving = {
  readonly part: string;
  readonly side: 'length' | 'width';
  readonly from: number;
  readonly to: number;
  /** sheets before and after */
  readonly sheets: number;
  readonly fewer: number;
};

/** `tick` is the step sizes are given in, `most` the largest change worth telling; mm. */
export type WhatIf = { readonly tick: number; readonly most: number };

/**
 * The smallest change of one part (of all its pieces) that saves a sheet, or null when none up to `most` does. Steps of `tick`: the size told
 * saves the sheet and the size one tick larger, laid out with the same budget, does not. Of equal changes the one that
 * is the smaller share of its side is taken. mm; a tick that is no size gives null.
 */
export function whatIf(job: CutJob, { tick, most }: WhatIf): Saving | null {
  const now = layOut(job);
  const sheets = now.sheets.length;
  if (!(tick > 0) || !(most >= tick) || sheets < 2 || now.unplaced.length > 0) return null;
  let best: Saving | null = null;
  for (const [index, part] of job.parts.entries()) {
    for (const side of ['length', 'width'] as const) {
      const reach: number = best === null ? most : exact(best.from - best.to);
      const ask: Ask = { job, index, side, sheets, tick, steps: stepsWithin(part[side], { tick, most: reach }) };
      const steps = fewestSteps(ask);
      const saving: Saving | null = steps === null ? null : savingOf(part, { ...ask, steps });
      if (saving !== null && (best === null || better(saving, best))) best = saving;
    }
  }
  return best;
}

/** Steps that leave something of a side. */
function stepsWithin(size: number, { tick, most }: WhatIf): number {
  return Math.floor(Math.min(most, size - tick) / tick + 1e-6);
}

type Ask = {
  readonly job: CutJob;
  readonly index: number;
  readonly side: 'length' | 'width';
  readonly sheets: number;
  readonly tick: number;
  readonly steps: number;
};

/** Fewest steps that save a sheet, by halving; null when the most steps don't. */
function fewestSteps(ask: Ask): number | null {
  if (ask.steps < 1 || !saves(ask, ask.steps)) return null;
  let [no, yes] = [0, ask.steps];
  while (yes - no > 1) {
    const middle = Math.floor((no + yes) / 2);
    if (saves(ask, middle)) yes = middle;
    else no = middle;
  }
  return yes;
}

function saves(ask: Ask, steps: number): boolean {
  const parts = ask.job.parts.map((part, i) => (i === ask.index ? smaller(part, ask, steps) : part));
  const answer = layOut({ ...ask.job, parts });
  return answer.unplaced.length === 0 && answer.sheets.length < ask.sheets;
}

function smaller(part: CutPart, { side, tick }: Ask, steps: number): CutPart {
  return { ...part, [side]: exact(part[side] - steps * tick) };
}

function savingOf(part: CutPart, ask: Ask): Saving {
  const to = smaller(part, ask, ask.steps)[ask.side];
  return { part: part.id, side: ask.side, from: part[ask.side], to, sheets: ask.sheets, fewer: ask.sheets - 1 };
}

function better(a: Saving, b: Saving): boolean {
  const [change, other] = [exact(a.from - a.to), exact(b.from - b.to)];
  return change !== other ? change < other : a.to / a.from > b.to / b.from;
}
