import { costBound } from './bounds.ts';
import { construct, RECIPES } from './construct.ts';
import { goalsOf } from './goal.ts';
import { deal, emptiestSheet, type Laid, subtask, usedKinds } from './hands.ts';
import { noChoice } from './insertion.ts';
import { costOf, type Packing, reopened } from './packing.ts';
import { repack } from './repack.ts';
import { widenOffcut } from './spare.ts';
import type { Task } from './task.ts';
import { tidy } from './tidy.ts';

/** A layout, the least cost any layout has, and the work done, in node visits. */
export type Solved = { readonly packing: Packing; readonly bound: number; readonly work: number };

const SAME = 1e-9;

/**
 * What the search may do, in node visits, the smallest side of a useful offcut in ticks grown by one kerf, and the
 * fewest sheets of each kind that any layout of the task needs.
 */
export type Means = { readonly limit: number; readonly keep: number; readonly bounds: readonly number[] };

/** Shares of the work: most to save sheets, some to leave a larger offcut, the rest to save cuts. */
const FOR_SHEETS = 0.75;
const FOR_OFFCUT = 0.2;

/** Lays all pieces of a task: in hands when there are many, and what the hands leave half empty once more together. */
export function solveAll(task: Task, means: Means): { readonly laid: readonly Laid[]; readonly work: number } {
  const hands = deal(task);
  if (hands.length <= 1) {
    const { packing, work } = solve(task, means);
    return { laid: [{ task, packing }], work };
  }
  const share = { ...means, limit: means.limit / (hands.length + 1), bounds: [] };
  const laid: Laid[] = [];
  const rest: number[] = [];
  let work = 0;
  for (const hand of hands) {
    const part = subtask(task, hand, usedKinds(task, laid));
    const solved = solve(part, share);
    const [full, loose] = parted(part, solved.packing);
    laid.push({ task: part, packing: full });
    rest.push(...loose.map((item) => hand[item] ?? -1));
    work += solved.work;
  }
  const last = solveAll(subtask(task, rest, usedKinds(task, laid)), share);
  return { laid: [...laid, ...last.laid], work: work + last.work };
}

/** A layout without its emptiest sheet, and the pieces that lay on it or nowhere. */
function parted(task: Task, packing: Packing): readonly [Packing, readonly number[]] {
  const emptiest = emptiestSheet(packing);
  const keep = [...packing.kinds.keys()].filter((sheet) => sheet !== emptiest);
  const full = reopened(task, packing, { keep, add: [] });
  return [{ ...full, left: [] }, full.left];
}

/** Lays the pieces on the cheapest sheets found; then leaves the largest offcut; then saves cuts and settings. */
export function solve(task: Task, { limit, keep, bounds }: Means): Solved {
  const bound = costBound(task, bounds);
  const first = firstPacking(task, { bound, limit });
  const whole = first.packing.left.length > 0 ? placeLeft(task, first, limit) : first;
  if (whole.packing.left.length > 0) return { ...whole, bound };
  const cheap = reduce(task, { ...whole, bound }, limit * FOR_SHEETS);
  const wide = widenOffcut(task, cheap.packing, { keep, limit: limit * FOR_OFFCUT });
  const neat = tidy(task, wide.packing, keep);
  return { packing: neat.packing, bound, work: cheap.work + wide.work + neat.work };
}

type Made = { readonly packing: Packing; readonly work: number };

/** The cheapest of the first layouts; fewest pieces left over first. */
function firstPacking(task: Task, ask: { readonly bound: number; readonly limit: number }): Made {
  const choice = noChoice();
  const [recipe, ...others] = RECIPES;
  let best = construct(task, recipe, choice);
  for (const next of others) {
    const good = best.left.length === 0 && costOf(task, best) <= ask.bound * (1 + SAME);
    if (good || choice.work > ask.limit / 4) break;
    const made = construct(task, next, choice);
    const gain = best.left.length - made.left.length || costOf(task, best) - costOf(task, made);
    if (gain > 0) best = made;
  }
  return { packing: best, work: choice.work };
}

/** Stock ran out: search for a place for what is left over on the sheets there are. */
function placeLeft(task: Task, made: Made, limit: number): Made {
  const keep = [...made.packing.kinds.keys()];
  const result = repack(reopened(task, made.packing, { keep, add: [] }), task.pieces, limit - made.work);
  const better = result.packing.left.length < made.packing.left.length;
  return { packing: better ? result.packing : made.packing, work: made.work + result.work };
}

/** Tries cheaper sets of sheets until none is left to try or the work is done. */
function reduce(task: Task, from: Solved, limit: number): Solved {
  let { packing, work } = from;
  for (let goals = goalsOf(task, packing, from.bound); goals.length > 0 && work < limit; ) {
    const [goal, ...others] = goals;
    if (goal === undefined) break;
    const result = repack(reopened(task, packing, goal), task.pieces, (limit - work) / goals.length);
    work += result.work;
    if (result.done) packing = result.packing;
    goals = result.done ? goalsOf(task, packing, from.bound) : others;
  }
  return { packing, bound: from.bound, work };
}
