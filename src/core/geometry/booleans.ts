import { booleanOpDWithPolyTree, ClipType, FillRule, type PathsD, type PolyPathD, PolyTreeD } from 'clipper2-ts';
import { directed } from './polygon.ts';
import type { Point, Polygon } from './shapes.ts';

/** Decimal places the clipper works in: 0.0001 mm. */
const PRECISION = 4;
/** A corner this near to one that was handed in is that one, so that straight cuts stay exact. */
const SAME = 1.01e-4;

type Loop = readonly Point[];

/** Everything inside `loops` (whatever way they run) that is outside `cutters`; mm. */
export function difference(loops: readonly Loop[], cutters: readonly Loop[]): readonly Polygon[] {
  return operate(ClipType.Difference, loops, cutters);
}

/** Everything inside one or the other; mm. */
export function union(loops: readonly Loop[], others: readonly Loop[]): readonly Polygon[] {
  return operate(ClipType.Union, loops, others);
}

/** Everything inside both; mm. */
export function intersection(loops: readonly Loop[], others: readonly Loop[]): readonly Polygon[] {
  return operate(ClipType.Intersection, loops, others);
}

function operate(kind: ClipType, loops: readonly Loop[], others: readonly Loop[]): readonly Polygon[] {
  const tree = new PolyTreeD();
  booleanOpDWithPolyTree(kind, paths(loops), paths(others), tree, FillRule.NonZero, PRECISION);
  const exact = snapper([...loops, ...others].flat());
  return outlines(tree).map((outline) => polygonOf(outline, exact));
}

/** A loop of fewer than three corners holds nothing, and the clipper fails on one of none. */
function paths(loops: readonly Loop[]): PathsD {
  return loops.filter(({ length }) => length > 2).map((loop) => directed(loop, 1).map(([x, y]) => ({ x, y })));
}

/** Outer loops at every depth: the islands inside a hole as well. */
function outlines(node: PolyPathD): readonly PolyPathD[] {
  return children(node).flatMap((outline) => [outline, ...children(outline).flatMap(outlines)]);
}

function children(node: PolyPathD): readonly PolyPathD[] {
  return Array.from({ length: node.count }, (_, i) => node.child(i));
}

function polygonOf(node: PolyPathD, exact: (point: Point) => Point): Polygon {
  const loop = (one: PolyPathD): Loop => (one.poly ?? []).map(({ x, y }) => exact([x, y]));
  return { outline: directed(loop(node), 1), holes: children(node).map((hole) => directed(loop(hole), -1)) };
}

/** Puts coordinates back that the clipper rounded. */
function snapper(points: readonly Point[]): (point: Point) => Point {
  // sorted as numbers of one kind, which is quicker by far than by a comparison
  const xs = Float64Array.from(points.map(([x]) => x)).sort();
  const ys = Float64Array.from(points.map(([, y]) => y)).sort();
  return ([x, y]) => [nearest(xs, x), nearest(ys, y)];
}

/** The value of a sorted list within SAME of `wanted`, the nearest first, else `wanted`. */
function nearest(sorted: Float64Array, wanted: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? wanted) < wanted) low = middle + 1;
    else high = middle;
  }
  const [below = Number.NEGATIVE_INFINITY, above = Number.POSITIVE_INFINITY] = [sorted[low - 1], sorted[low]];
  const best = above - wanted < wanted - below ? above : below;
  return Math.abs(best - wanted) <= SAME ? best : wanted;
}
