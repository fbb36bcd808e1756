import { kindBound } from './bounds.ts';
import type { CutAnswer, CutBound, CutJob, CutSheet, Unplaced } from './job.ts';
import type { Packing } from './packing.ts';
import { sheetOf } from './sheet.ts';
import { solve } from './solve.ts';
import { refused, type Task, taskOf } from './task.ts';

/** Node visits that make one unit of a job's budget. */
export const WORK_UNIT = 10_000;

/**
 * Lays the parts of a job on its stock: fewest and cheapest sheets first. Never throws: what can't be cut is in
 * `unplaced`. The same job gives the same answer on every machine. mm.
 */
export function layOut(job: CutJob): CutAnswer {
  const task = taskOf(job);
  const limit = Number.isFinite(job.budget) ? job.budget * WORK_UNIT : 0;
  const { packing, work } = solve(task, limit);
  const sheets = sheetsOf(job, { task, packing });
  return {
    sheets,
    bounds: boundsOf(job, { task, sheets }),
    unplaced: [...task.unplaced, ...leftOver(task, packing)],
    work: Math.ceil(work / WORK_UNIT),
  };
}

type Packed = { readonly task: Task; readonly packing: Packing };

function sheetsOf(job: CutJob, { task, packing }: Packed): readonly CutSheet[] {
  const used = new Set(packing.sheetOf.filter((_, root) => packing.forest.first[root] !== -1));
  return [...used].sort((a, b) => a - b).map((sheet) => sheetOf(job, { task, packing, sheet }));
}

function boundsOf(
  job: CutJob,
  { task, sheets }: { readonly task: Task; readonly sheets: readonly CutSheet[] },
): readonly CutBound[] {
  return job.stock.flatMap((stock, index) => {
    const found = sheets.filter((sheet) => sheet.stock === stock.id).length;
    const bound = Math.min(found, kindBound(task, index));
    return found === 0 ? [] : [{ stock: stock.id, found, bound, proved: found === bound }];
  });
}

function leftOver(task: Task, packing: Packing): readonly Unplaced[] {
  const counts = new Map<number, number>();
  for (const item of packing.left) {
    const part = task.partOf[item] ?? -1;
    counts.set(part, (counts.get(part) ?? 0) + 1);
  }
  return [...counts].flatMap(([index, quantity]) => {
    const part = task.parts[index];
    return part === undefined
      ? []
      : [refused(part, { quantity, why: 'no-stock-left', laid: task.laydowns, turns: part.grain === 'any' })];
  });
}
