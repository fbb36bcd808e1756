import type { Point } from '../../geometry/shapes.ts';
import { type Limb, pathLength } from './limbs.ts';

/** What some ways over places come to: a tree without a stretch run twice, its loose ends at stops only, as limbs. */
export function limbsOf(
  places: readonly Point[],
  start: number,
  found: { readonly ways: readonly (readonly number[])[]; readonly stops: readonly number[] },
): readonly Limb[] {
  const tree = pruned(treeFrom(start, found.ways), start, found.stops);
  const at = (place: number): Point => places[place] ?? [0, 0];
  const limbs: Limb[] = [];
  const lay = (begin: readonly number[], of: number | null, from: number): void => {
    const row = [...begin];
    const asides: { readonly along: number; readonly row: readonly number[] }[] = [];
    for (let here = row[row.length - 1] ?? start; ; ) {
      const next = [...(tree.get(here) ?? [])].sort((a, b) => depth(tree, at, b) - depth(tree, at, a) || a - b);
      const [main, ...others] = next;
      const along = from + pathLength(row.map(at));
      for (const other of others) asides.push({ along, row: [here, other] });
      if (main === undefined) break;
      row.push(main);
      here = main;
    }
    const limb = limbs.length;
    limbs.push({ path: corners(row.map(at)), of, from });
    for (const aside of asides) lay(aside.row, limb, aside.along);
  };
  lay([start], null, 0);
  return limbs;
}

type Tree = ReadonlyMap<number, readonly number[]>;

/** Places with what follows them, each met once. */
function treeFrom(start: number, ways: readonly (readonly number[])[]): Tree {
  const beside = new Map<number, Set<number>>();
  const join = (a: number, b: number) => beside.set(a, (beside.get(a) ?? new Set()).add(b));
  for (const way of ways) {
    for (const [i, place] of way.entries()) {
      const before = way[i - 1];
      if (before === undefined || before === place) continue;
      join(before, place);
      join(place, before);
    }
  }
  const after = new Map<number, number[]>();
  const seen = new Set([start]);
  for (const place of seen) {
    const next = [...(beside.get(place) ?? [])].filter((one) => !seen.has(one));
    after.set(place, next);
    for (const one of next) seen.add(one);
  }
  return after;
}

function pruned(tree: Tree, start: number, stops: readonly number[]): Tree {
  const wanted = new Set(stops);
  const keeps = (place: number): boolean => wanted.has(place) || (tree.get(place) ?? []).some(keeps);
  return new Map([...tree].map(([place, next]) => [place, place === start || keeps(place) ? next.filter(keeps) : []]));
}

/** The longest way on from a place. */
function depth(tree: Tree, at: (place: number) => Point, place: number): number {
  return (tree.get(place) ?? []).reduce(
    (most, next) => Math.max(most, pathLength([at(place), at(next)]) + depth(tree, at, next)),
    0,
  );
}

/** A path without the places it goes straight through; one that turns back keeps its end. */
export function corners(path: readonly Point[]): readonly Point[] {
  const points = path.filter((point, i) => i === 0 || point[0] !== path[i - 1]?.[0] || point[1] !== path[i - 1]?.[1]);
  return points.filter((point, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (before === undefined || after === undefined) return true;
    const turn = (point[0] - before[0]) * (after[1] - point[1]) - (point[1] - before[1]) * (after[0] - point[0]);
    const onward = (point[0] - before[0]) * (after[0] - point[0]) + (point[1] - before[1]) * (after[1] - point[1]);
    return Math.abs(turn) > 1e-9 || onward < 0;
  });
}
