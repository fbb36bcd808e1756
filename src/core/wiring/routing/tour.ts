/** Above this many stops every order is too many to weigh. */
export const MOST_STOPS = 12;

/** Costs between stops: `costs[i][j]` from i to j; stop 0 is where the wire starts. */
export type Costs = readonly (readonly number[])[];

export type Tour = { readonly order: readonly number[]; readonly cost: number; readonly proved: boolean };

/**
 * The cheapest order to pass all stops in, starting at stop 0 and ending anywhere. Exact up to `MOST_STOPS` others (Held
 * and Karp, A dynamic programming approach to sequencing problems, 1962); beyond, the nearest next, then mended by turning
 * stretches round.
 */
export function cheapestTour(costs: Costs): Tour {
  const others = costs.length - 1;
  if (others < 1) return { order: [0], cost: 0, proved: true };
  return others <= MOST_STOPS ? exactTour(costs) : mendedTour(costs);
}

function exactTour(costs: Costs): Tour {
  const n = costs.length - 1;
  const sets = 2 ** n;
  const best = new Float64Array(sets * n).fill(Number.POSITIVE_INFINITY);
  const before = new Int8Array(sets * n).fill(-1);
  const between = (from: number, to: number) => costs[from]?.[to] ?? Number.POSITIVE_INFINITY;
  for (let i = 0; i < n; i += 1) best[(1 << i) * n + i] = between(0, i + 1);
  for (let set = 1; set < sets; set += 1) {
    for (let last = 0; last < n; last += 1) {
      const here = best[set * n + last] ?? Number.POSITIVE_INFINITY;
      if (here === Number.POSITIVE_INFINITY) continue;
      for (let next = 0; next < n; next += 1) {
        if ((set >> next) & 1) continue;
        const state = (set | (1 << next)) * n + next;
        const total = here + between(last + 1, next + 1);
        if (total < (best[state] ?? 0)) {
          best[state] = total;
          before[state] = last;
        }
      }
    }
  }
  const full = sets - 1;
  let last = 0;
  for (let i = 1; i < n; i += 1) if ((best[full * n + i] ?? 0) < (best[full * n + last] ?? 0)) last = i;
  const cost = best[full * n + last] ?? Number.POSITIVE_INFINITY;
  const order: number[] = [];
  for (let set = full, at = last; at >= 0; ) {
    order.push(at + 1);
    const previous = before[set * n + at] ?? -1;
    set ^= 1 << at;
    at = previous;
  }
  return { order: [0, ...order.reverse()], cost, proved: true };
}

function tourCost(costs: Costs, order: readonly number[]): number {
  return order.slice(1).reduce((sum, to, i) => sum + (costs[order[i] ?? 0]?.[to] ?? Number.POSITIVE_INFINITY), 0);
}

function mendedTour(costs: Costs): Tour {
  let order = nearestNext(costs);
  let cost = tourCost(costs, order);
  for (let better = true; better; ) {
    better = false;
    for (let i = 1; i < order.length; i += 1) {
      for (let j = i + 1; j <= order.length; j += 1) {
        const turned = [...order.slice(0, i), ...order.slice(i, j).reverse(), ...order.slice(j)];
        const total = tourCost(costs, turned);
        if (total < cost - 1e-9) {
          [order, cost, better] = [turned, total, true];
        }
      }
    }
  }
  return { order, cost, proved: false };
}

function nearestNext(costs: Costs): readonly number[] {
  const order = [0];
  const left = new Set(costs.slice(1).map((_, i) => i + 1));
  while (left.size > 0) {
    const from = costs[order[order.length - 1] ?? 0] ?? [];
    const [first = 0] = left;
    const next = [...left].reduce((best, one) => ((from[one] ?? 0) < (from[best] ?? 0) ? one : best), first);
    left.delete(next);
    order.push(next);
  }
  return order;
}
