import { areaOfPieces } from './bounds.ts';
import { costOf, filledBySheet, type Packing } from './packing.ts';
import type { Task } from './task.ts';

/** A cheaper set of sheets to try: those kept as they are, and the kinds of empty ones added. */
export type Goal = { readonly keep: readonly number[]; readonly add: readonly number[]; readonly cost: number };

/** Prices closer than this share are the same. */
const SAME = 1e-9;

/**
 * Cheaper sets of sheets within reach: without the emptiest sheet of a kind, with a cheaper sheet in its place, or with
 * one sheet in the place of two. Only sets whose area holds the pieces and that cost no less than the bound; the
 * easiest, which is the dearest, first.
 */
export function goalsOf(task: Task, packing: Packing, bound: number): readonly Goal[] {
  const cost = costOf(task, packing);
  const needed = areaOfPieces(task.pieces);
  const emptiest = emptiestByKind(packing);
  const single = emptiest.map((sheet) => [sheet]);
  const pairs = emptiest.flatMap((a, i) => emptiest.slice(i + 1).map((b) => [a, b]));
  const goals = [...single, ...pairs].flatMap((gone) => {
    const keep = packing.kinds.map((_, sheet) => sheet).filter((sheet) => !gone.includes(sheet));
    const adds = [[], ...availableKinds(task, packing, gone).map((kind) => [kind])];
    return adds.map((add) => ({
      keep,
      add,
      cost: priceOf(task, [...keep.map((s) => packing.kinds[s] ?? -1), ...add]),
    }));
  });
  const area = (goal: Goal) => areaOf(task, [...goal.keep.map((s) => packing.kinds[s] ?? -1), ...goal.add]);
  return goals
    .filter(
      (goal) => goal.cost < cost * (1 - SAME) && goal.cost >= bound * (1 - SAME) && area(goal) >= needed * (1 - SAME),
    )
    .sort((a, b) => b.cost - a.cost);
}

/** The emptiest sheet of each kind, and where two are in use the next too. */
function emptiestByKind(packing: Packing): readonly number[] {
  const filled = filledBySheet(packing);
  const sheets = packing.kinds.map((_, sheet) => sheet).sort((a, b) => (filled[a] ?? 0) - (filled[b] ?? 0));
  const seen = new Map<number, number>();
  return sheets.filter((sheet) => {
    const kind = packing.kinds[sheet] ?? -1;
    const count = seen.get(kind) ?? 0;
    seen.set(kind, count + 1);
    return count < 2;
  });
}

function availableKinds(task: Task, packing: Packing, gone: readonly number[]): readonly number[] {
  return [...task.kinds.keys()].filter((kind) => {
    const used = packing.kinds.filter((k, sheet) => k === kind && !gone.includes(sheet)).length;
    return used < (task.kinds[kind]?.count ?? 0) && gone.every((sheet) => packing.kinds[sheet] !== kind);
  });
}

function priceOf(task: Task, kinds: readonly number[]): number {
  return kinds.reduce((sum, kind) => sum + (task.kinds[kind]?.price ?? 0), 0);
}

function areaOf(task: Task, kinds: readonly number[]): number {
  return kinds.reduce((sum, kind) => sum + (task.kinds[kind]?.area ?? 0), 0);
}
