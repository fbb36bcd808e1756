import { pick } from './bounds.ts';
import { at } from './forest.ts';
import { filledBySheet, type Packing } from './packing.ts';
import type { Task } from './task.ts';

/** A part of a task with the layout found for it. */
export type Laid = { readonly task: Task; readonly packing: Packing };

/** Most pieces one search lays at a time. */
export const HAND = 300;

/** The task for some of its pieces, with what stock is left. */
export function subtask(task: Task, items: readonly number[], used: readonly number[]): Task {
  const kinds = task.kinds.map((kind, index) => ({ ...kind, count: Math.max(0, kind.count - (used[index] ?? 0)) }));
  const partOf = Int32Array.from(items, (item) => at(task.partOf, item));
  return { ...task, pieces: pick(task.pieces, items), partOf, kinds };
}

/** Deals the pieces by size into hands of like mixture. */
export function deal(task: Task): readonly (readonly number[])[] {
  const { pieces } = task;
  const area = (i: number) => at(pieces.w, i) * at(pieces.h, i);
  const bySize = Array.from({ length: pieces.count }, (_, i) => i).sort((a, b) => area(b) - area(a) || a - b);
  const hands = Math.ceil(pieces.count / HAND);
  return Array.from({ length: hands }, (_, hand) => bySize.filter((_, index) => index % hands === hand));
}

/** Sheets of each kind in use. */
export function usedKinds(task: Task, laid: readonly Laid[]): readonly number[] {
  return task.kinds.map((_, index) =>
    laid.reduce((sum, one) => sum + one.packing.kinds.filter((kind) => kind === index).length, 0),
  );
}

/** The sheet with the most room to spare, or -1. */
export function emptiestSheet(packing: Packing): number {
  const filled = filledBySheet(packing);
  return filled.reduce((best, area, sheet) => (best < 0 || area < (filled[best] ?? 0) ? sheet : best), -1);
}
