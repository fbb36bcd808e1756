import { at, emptyForest, type Forest, type Ground, openSheet, refreshSheet } from './forest.ts';
import { type Choice, type Fit, findPlace, noChoice, type Pieces, place } from './insertion.ts';
import type { Kind, Task } from './task.ts';

/** Sheets opened so far: the kind of each and the grounds of the forest that belong to it. */
export type Packing = {
  readonly forest: Forest;
  /** ground of each root of the forest that is in use */
  readonly grounds: readonly Ground[];
  /** kind of each sheet, and for each root the sheet it is on */
  readonly kinds: readonly number[];
  readonly sheetOf: readonly number[];
  /** pieces that found no place because stock ran out */
  readonly left: readonly number[];
};

/** How a first layout is made: order of the pieces, and how their places are chosen. */
export type Recipe = { readonly key: (pieces: Pieces, item: number) => number; readonly fit: Fit };

const AREA = (p: Pieces, i: number) => at(p.w, i) * at(p.h, i);
const GIRTH = (p: Pieces, i: number) => at(p.w, i) + at(p.h, i);
const TALL = (p: Pieces, i: number) => at(p.h, i);
const LONG = (p: Pieces, i: number) => at(p.w, i);

const EVEN: Fit = { waste: 1, rest: 1, group: 1 };
const THRIFTY: Fit = { waste: 1, rest: 0.3, group: 1 };

export const RECIPES: readonly Recipe[] = [
  { key: GIRTH, fit: EVEN },
  { key: AREA, fit: THRIFTY },
  { key: TALL, fit: EVEN },
  { key: AREA, fit: EVEN },
  { key: LONG, fit: EVEN },
];

type Opened = { grounds: Ground[]; kinds: number[]; sheetOf: number[]; used: number[] };

/** Lays every piece where it fits best, in the recipe's order, and opens a sheet when none has room. */
export function construct(task: Task, recipe: Recipe, choice: Choice): Packing {
  const { pieces } = task;
  const keys = Float64Array.from({ length: pieces.count }, (_, i) => recipe.key(pieces, i));
  const order = [...keys.keys()].sort(
    (a, b) => at(keys, b) - at(keys, a) || at(pieces.like, a) - at(pieces.like, b) || a - b,
  );
  const most = Math.max(1, ...task.kinds.map((kind) => kind.grounds.length));
  const forest = emptyForest((pieces.count + 1) * most, pieces.count);
  const opened: Opened = { grounds: [], kinds: [], sheetOf: [], used: task.kinds.map(() => 0) };
  const left: number[] = [];
  for (const item of order) {
    const ask = { item, fit: recipe.fit, choice };
    findPlace(forest, pieces, ask);
    if (choice.node < 0 && openFor(task, { forest, opened, item })) findPlace(forest, pieces, ask);
    if (choice.node < 0) left.push(item);
    else settlePiece({ forest, opened }, pieces, { item, choice });
  }
  return { forest, ...opened, left };
}

function settlePiece(
  state: { forest: Forest; opened: Opened },
  pieces: Pieces,
  put: { item: number; choice: Choice },
): void {
  const root = place(state.forest, pieces, put);
  const ground = state.opened.grounds[root];
  if (ground !== undefined) refreshSheet(state.forest, root, ground);
}

type Opening = { readonly forest: Forest; readonly opened: Opened; readonly item: number };

/** Opens one more sheet on which the piece fits: what costs nothing first, then the cheapest for its area. */
function openFor(task: Task, { forest, opened, item }: Opening): boolean {
  const { pieces, kinds } = task;
  const candidates = [...kinds.entries()].filter(
    ([index, kind]) => at2(opened.used, index) < kind.count && kind.grounds.some((g) => fitsOn(pieces, item, g)),
  );
  const best = candidates.reduce<(typeof candidates)[number] | null>(
    (a, b) => (a === null || cheaper(b[1], a[1]) ? b : a),
    null,
  );
  if (best === null) return false;
  const [index, kind] = best;
  opened.used[index] = at2(opened.used, index) + 1;
  const sheet = opened.kinds.push(index) - 1;
  for (const ground of kind.grounds) {
    openSheet(forest, opened.grounds.push(ground) - 1, ground);
    opened.sheetOf.push(sheet);
  }
  return true;
}

function at2(list: readonly number[], index: number): number {
  return list[index] ?? 0;
}

function cheaper(a: Kind, b: Kind): boolean {
  const [one, other] = [a.price * b.area, b.price * a.area];
  return one !== other ? one < other : a.area < b.area;
}

export function fitsOn(pieces: Pieces, item: number, ground: Ground): boolean {
  const [w, h] = [at(pieces.w, item), at(pieces.h, item)];
  return (w <= ground.w && h <= ground.h) || (pieces.turns[item] === 1 && h <= ground.w && w <= ground.h);
}

export function costOf(task: Task, packing: Packing): number {
  return packing.kinds.reduce((sum, kind) => sum + (task.kinds[kind]?.price ?? 0), 0);
}

/** The cheapest of the first layouts; fewest pieces left over first. */
export function firstPacking(task: Task, limit: number): { readonly packing: Packing; readonly work: number } {
  const choice = noChoice();
  let best = construct(task, RECIPES[0] ?? { key: AREA, fit: EVEN }, choice);
  for (const recipe of RECIPES.slice(1)) {
    if (choice.work > limit) break;
    const next = construct(task, recipe, choice);
    const gain = best.left.length - next.left.length || costOf(task, best) - costOf(task, next);
    if (gain > 0) best = next;
  }
  return { packing: best, work: choice.work };
}
