import { kindBound } from './bounds.ts';
import type { Laid } from './hands.ts';
import type { CutAnswer, CutBound, CutJob, CutSheet, Unplaced } from './job.ts';
import { freeNest } from './nesting.ts';
import type { Packing } from './packing.ts';
import { nestedSheet, sheetOf } from './sheet.ts';
import { solveAll } from './solve.ts';
import { refused, type Task, taskOf } from './task.ts';
import { isSize, ticksUp } from './tick.ts';

/** Node visits that make one unit of a job's budget. */
export const WORK_UNIT = 10_000;

/**
 * Lays the parts of a job on its stock: fewest and cheapest sheets first. Never throws: what can't be cut is in
 * `unplaced`. The same job gives the same answer on every machine. mm.
 */
export function layOut(job: CutJob): CutAnswer {
  const task = taskOf(job);
  const limit = Number.isFinite(job.budget) ? Math.max(0, job.budget) * WORK_UNIT : 0;
  const bounds = task.kinds.map((_, index) => kindBound(task, index));
  const { laid, work } = solveAll(task, { limit, bounds, keep: ticksUp(isSize(job.keep) ? job.keep : 0) + task.kerf });
  const straight = laid.flatMap((one) => sheetsOf(job, one));
  const free = job.style.kind === 'router' ? nestedSheets(job, task, straight) : null;
  const sheets = free ?? straight;
  const left = free !== null ? [] : laid.flatMap((one) => leftOver(one.task, one.packing));
  return {
    sheets,
    bounds: boundsOf(job, { sheets, bounds: left.length === 0 ? bounds : bounds.map(() => 0) }),
    unplaced: [...task.unplaced, ...left],
    work: Math.ceil(work / WORK_UNIT),
  };
}

function sheetsOf(job: CutJob, { task, packing }: Laid): readonly CutSheet[] {
  const used = new Set(packing.sheetOf.filter((_, root) => packing.forest.first[root] !== -1));
  return [...used].sort((a, b) => a - b).map((sheet) => sheetOf(job, { task, packing, sheet }));
}

/** Sheets nested freely, if they hold everything and cost less than those cut straight across. */
function nestedSheets(job: CutJob, task: Task, straight: readonly CutSheet[]): readonly CutSheet[] | null {
  const nest = freeNest(task);
  if (nest === null || nest.left.length > 0) return null;
  const price = new Map(job.stock.map((stock, index) => [stock.id, task.kinds[index]?.price ?? 0]));
  const cost = (sheets: readonly { readonly stock: string }[]) =>
    sheets.reduce((sum, one) => sum + (price.get(one.stock) ?? 0), 0);
  const sheets = nest.sheets.map((nested, i) => nestedSheet(job, task, { nested, kind: nest.kinds[i] ?? 0 }));
  const placed = straight.reduce((sum, sheet) => sum + sheet.parts.length, 0);
  return placed < task.pieces.count || cost(sheets) < cost(straight) * (1 - 1e-9) ? sheets : null;
}

function boundsOf(
  job: CutJob,
  { bounds, sheets }: { readonly bounds: readonly number[]; readonly sheets: readonly CutSheet[] },
): readonly CutBound[] {
  return job.stock.flatMap((stock, index) => {
    const found = sheets.filter((sheet) => sheet.stock === stock.id).length;
    const bound = bounds[index] ?? 0;
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
