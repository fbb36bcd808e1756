import { costBound } from './bounds.ts';
import { construct, RECIPES } from './construct.ts';
import { goalsOf } from './goal.ts';
import { noChoice } from './insertion.ts';
import { costOf, type Packing, reopened } from './packing.ts';
import { repack } from './repack.ts';
import type { Task } from './task.ts';

/** A layout, the least cost any layout has, and the work done, in node visits. */
export type Solved = { readonly packing: Packing; readonly bound: number; readonly work: number };

const SAME = 1e-9;

/** Lays the pieces on the cheapest sheets found within the work limit; first layouts, then one goal after another. */
export function solve(task: Task, limit: number): Solved {
  const bound = costBound(task);
  const first = firstPacking(task, { bound, limit });
  const whole = first.packing.left.length > 0 ? placeLeft(task, first, limit) : first;
  return whole.packing.left.length > 0 ? { ...whole, bound } : reduce(task, { ...whole, bound }, limit);
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
