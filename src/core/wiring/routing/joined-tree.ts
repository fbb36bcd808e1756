import type { Lattice } from './lattice.ts';
import { cheapestWays, type Ways, waysFrom } from './shortest.ts';

/** Up to so many stops every tree is weighed; beyond, one is mended. */
export const MOST_EXACT = 6;

/** Gains smaller than this are none. */
const SOME = 1e-6;

/** Ways that join a start to all stops, each a row of places; what they cost together, and whether nothing is cheaper. */
export type JoinedTree = {
  readonly ways: readonly (readonly number[])[];
  readonly cost: number;
  readonly proved: boolean;
};

/** The cheapest tree that joins a start and its stops, with T-joints wherever they save. */
export function cheapestTree(net: Lattice, start: number, stops: readonly number[]): JoinedTree {
  const others = [...new Set(stops)].filter((stop) => stop !== start);
  if (others.length === 0) return { ways: [], cost: 0, proved: true };
  return others.length <= MOST_EXACT ? exactTree(net, start, others) : mendedTree(net, [start, ...others]);
}

/** How the cheapest tree of a set of stops with a place is made: on from another place, where two sets meet. */
type Made = { readonly ways: Ways; readonly cost: Float64Array; readonly split: Int32Array };

/** Every way to part the stops at every place (Dreyfus and Wagner, The Steiner problem in graphs, 1971). */
function exactTree(net: Lattice, start: number, stops: readonly number[]): JoinedTree {
  const count = net.places.length;
  const made: (Made | undefined)[] = [];
  for (let set = 1; set < 2 ** stops.length; set += 1) {
    const cost = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
    const split = new Int32Array(count);
    for (const [i, stop] of stops.entries()) if (set === 1 << i) cost[stop] = 0;
    for (let part = (set - 1) & set; part > (set ^ part); part = (part - 1) & set) {
      const [one, other] = [made[part], made[set ^ part]];
      for (let place = 0; place < count; place += 1) {
        const both = (one?.cost[place] ?? 0) + (other?.cost[place] ?? 0);
        if (both < (cost[place] ?? 0) - 1e-12) [cost[place], split[place]] = [both, part];
      }
    }
    const starts = [...cost.keys()].flatMap((place) => {
      const own = cost[place] ?? Number.POSITIVE_INFINITY;
      return Number.isFinite(own) ? [{ place, cost: own }] : [];
    });
    const ways = waysFrom(net, starts);
    made[set] = { ways, split, cost: Float64Array.from({ length: count }, (_, place) => ways.cost(place)) };
  }
  const all = 2 ** stops.length - 1;
  return { ways: unfolded(made, all, start), cost: made[all]?.ways.cost(start) ?? 0, proved: true };
}

function unfolded(made: readonly (Made | undefined)[], set: number, place: number): readonly (readonly number[])[] {
  const one = made[set];
  if (one === undefined) return [];
  const path = one.ways.path(place);
  const meeting = path[0] ?? place;
  const part = one.split[meeting] ?? 0;
  return [
    ...(path.length > 1 ? [path] : []),
    ...(part === 0 ? [] : [...unfolded(made, part, meeting), ...unfolded(made, set ^ part, meeting)]),
  ];
}

type Point = { readonly place: number; readonly ways: Ways };

/** Joins as long as one more T-joint saves (Kahng and Robins, A new class of iterative Steiner tree heuristics, 1992). */
export function mendedTree(net: Lattice, ends: readonly number[]): JoinedTree {
  const fixed = ends.map((place): Point => ({ place, ways: cheapestWays(net, place) }));
  let points: readonly Point[] = fixed;
  let tree = leastJoined(points);
  for (let round = 0; round < 2 * ends.length; round += 1) {
    const place = bestJoint(net, points, tree);
    if (place === null) break;
    points = [...points, { place, ways: cheapestWays(net, place) }];
    tree = leastJoined(points);
    const kept = points.filter((_, i) => i < fixed.length || tree.pairs.flat().filter((end) => end === i).length > 2);
    if (kept.length < points.length) [points, tree] = [kept, leastJoined(kept)];
  }
  const ways = tree.pairs.map(([a, b]) => points[a]?.ways.path(points[b]?.place ?? 0) ?? []);
  return { ways, cost: tree.cost, proved: false };
}

/** The place whose T-joint saves most; null where none saves. */
function bestJoint(net: Lattice, points: readonly Point[], { pairs, cost }: Joins): number | null {
  const count = points.length;
  const known = pairs.map(([a, b]): Edge => ({ a, b, cost: points[a]?.ways.cost(points[b]?.place ?? 0) ?? 0 }));
  let [best, least] = [-1, cost - SOME];
  for (let place = 0; place < net.places.length; place += 1) {
    const own = points.map(({ ways }, b): Edge => ({ a: count, b, cost: ways.cost(place) }));
    const found = leastOf([...known, ...own], count);
    // two ways that meet are one way with a bend
    if (found.cost < least && found.joins > 2) [best, least] = [place, found.cost];
  }
  return best < 0 ? null : best;
}

type Edge = { readonly a: number; readonly b: number; readonly cost: number };

/** The least that joins `count` points and one more by some edges, and how many of them meet in that one (Kruskal, 1956). */
function leastOf(edges: readonly Edge[], count: number): { readonly cost: number; readonly joins: number } {
  const up = Int16Array.from({ length: count + 1 }, (_, i) => i);
  const top = (i: number): number => {
    let at = i;
    while (up[at] !== at) at = up[at] ?? at;
    return at;
  };
  let [cost, joins, left] = [0, 0, count];
  for (const edge of edges.toSorted((one, other) => one.cost - other.cost)) {
    const [a, b] = [top(edge.a), top(edge.b)];
    if (a === b) continue;
    up[a] = b;
    cost += edge.cost;
    left -= 1;
    if (edge.a === count) joins += 1;
    if (left === 0) break;
  }
  return { cost, joins };
}

type Joins = { readonly pairs: readonly (readonly [number, number])[]; readonly cost: number };

/** The least that joins all points two by two (Prim, Shortest connection networks, 1957). */
function leastJoined(points: readonly Point[]): Joins {
  const between = (i: number, j: number) => points[Math.min(i, j)]?.ways.cost(points[Math.max(i, j)]?.place ?? 0) ?? 0;
  const near = points.map((_, j) => (j === 0 ? 0 : between(0, j)));
  const from = points.map(() => 0);
  const left = new Set(points.keys());
  left.delete(0);
  const pairs: (readonly [number, number])[] = [];
  let cost = 0;
  while (left.size > 0) {
    const next = [...left].reduce((a, b) => ((near[b] ?? 0) < (near[a] ?? 0) ? b : a));
    left.delete(next);
    cost += near[next] ?? 0;
    pairs.push([from[next] ?? 0, next]);
    for (const j of left) if (between(next, j) < (near[j] ?? 0)) [near[j], from[j]] = [between(next, j), next];
  }
  return { pairs, cost };
}
