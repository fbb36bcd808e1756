import { at } from './forest.ts';
import type { Task } from './task.ts';

/**
 * Fewest sheets of one kind whose area holds the pieces, each with the kerf on two of its sides: a bound for every
 * style, since pieces never share their kerf's area. Exact sums of whole ticks up to rounding; a whisker is taken off.
 */
export function areaBound(task: Task, kind: number): number {
  const ground = task.kinds[kind];
  if (ground === undefined || ground.area <= 0) return 0;
  let area = 0;
  for (let i = 0; i < task.pieces.count; i++) area += at(task.pieces.w, i) * at(task.pieces.h, i);
  return Math.ceil(area / ground.area - 1e-9);
}
