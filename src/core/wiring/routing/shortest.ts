import type { Lattice } from './lattice.ts';
import { COSTS } from './site.ts';

/** Cheapest ways from where a wire may begin to all other places. */
export type Ways = {
  readonly cost: (to: number) => number;
  /** the places of a way, from where it begins */
  readonly path: (to: number) => readonly number[];
};

/** A place reached in one of two directions. */
type Waiting = { readonly state: number; readonly cost: number };

/** The cheapest way from a place to every other, each bend counted. */
export function cheapestWays(net: Lattice, from: number): Ways {
  return waysFrom(net, [{ place: from, cost: 0 }]);
}

/**
 * The cheapest way to every place from any of some places, each with what it costs to begin there; each bend counted, a
 * beginning in any direction free (Dijkstra, A note on two problems in connexion with graphs, 1959). Ties go to the state
 * met first, so the same lattice gives the same way.
 */
export function waysFrom(
  { places, steps }: Lattice,
  starts: readonly { readonly place: number; readonly cost: number }[],
): Ways {
  const states = places.length * 2;
  const cost = new Float64Array(states).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(states).fill(-1);
  const heap: Waiting[] = [];
  for (const { place, cost: own } of starts) {
    for (const direction of [0, 1]) {
      cost[place * 2 + direction] = own;
      push(heap, { state: place * 2 + direction, cost: own });
    }
  }
  for (let next = pop(heap); next !== undefined; next = pop(heap)) {
    const { state } = next;
    if (next.cost > (cost[state] ?? 0)) continue;
    for (const step of steps[state >> 1] ?? []) {
      const bend = step.direction === (state & 1) ? 0 : COSTS.bend;
      const reached = step.to * 2 + step.direction;
      const total = next.cost + step.cost + bend;
      if (total >= (cost[reached] ?? 0)) continue;
      cost[reached] = total;
      before[reached] = state;
      push(heap, { state: reached, cost: total });
    }
  }
  const best = (to: number) => ((cost[to * 2] ?? 0) <= (cost[to * 2 + 1] ?? 0) ? to * 2 : to * 2 + 1);
  return {
    cost: (to) => cost[best(to)] ?? Number.POSITIVE_INFINITY,
    path: (to) => {
      const back: number[] = [];
      for (let state = best(to); state >= 0; state = before[state] ?? -1) back.push(state >> 1);
      return back.reverse();
    },
  };
}

function less(a: Waiting, b: Waiting): boolean {
  return a.cost < b.cost || (a.cost === b.cost && a.state < b.state);
}

function push(heap: Waiting[], one: Waiting): void {
  let i = heap.length;
  heap.push(one);
  while (i > 0) {
    const up = (i - 1) >> 1;
    const parent = heap[up];
    if (parent === undefined || !less(one, parent)) break;
    heap[i] = parent;
    i = up;
  }
  heap[i] = one;
}

function pop(heap: Waiting[]): Waiting | undefined {
  const [top] = heap;
  const last = heap.pop();
  if (top === undefined || last === undefined || heap.length === 0) return top;
  let i = 0;
  for (;;) {
    const [left, right] = [heap[2 * i + 1], heap[2 * i + 2]];
    if (left === undefined) break;
    const [child, at] = right !== undefined && less(right, left) ? [right, 2 * i + 2] : [left, 2 * i + 1];
    if (!less(child, last)) break;
    heap[i] = child;
    i = at;
  }
  heap[i] = last;
  return top;
}
