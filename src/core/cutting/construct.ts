import { at, emptyForest } from './forest.ts';
import { type Choice, type Fit, findPlace, type Pieces, place } from './insertion.ts';
import { openNext, type Packing } from './packing.ts';
import { refreshSheet } from './slack.ts';
import type { Task } from './task.ts';

/** How a first layout is made: order of the pieces, and how their places are chosen. */
export type Recipe = { readonly key: (pieces: Pieces, item: number) => number; readonly fit: Fit };

const AREA = (p: Pieces, i: number) => at(p.w, i) * at(p.h, i);
const GIRTH = (p: Pieces, i: number) => at(p.w, i) + at(p.h, i);
const TALL = (p: Pieces, i: number) => at(p.h, i);
const LONG = (p: Pieces, i: number) => at(p.w, i);

const EVEN: Fit = { waste: 1, rest: 1 };
const THRIFTY: Fit = { waste: 1, rest: 0.3 };

/** Tried in this order; the first is the one that does best on the published instances. */
export const RECIPES: readonly [Recipe, ...Recipe[]] = [
  { key: GIRTH, fit: EVEN },
  { key: AREA, fit: THRIFTY },
  { key: TALL, fit: EVEN },
  { key: AREA, fit: EVEN },
  { key: LONG, fit: EVEN },
  { key: TALL, fit: THRIFTY },
];

/** Lays every piece where it fits best, in the recipe's order, and opens a sheet when none has room. */
export function construct(task: Task, recipe: Recipe, choice: Choice): Packing {
  const { pieces } = task;
  const most = Math.max(1, ...task.kinds.map((kind) => kind.grounds.length));
  const forest = emptyForest((pieces.count + 1) * most, pieces.count, task.levels);
  const packing = { forest, grounds: [], kinds: [], sheetOf: [], left: [] as number[] };
  for (const item of inOrder(pieces, recipe)) {
    const ask = { item, fit: recipe.fit, choice };
    findPlace(forest, pieces, ask);
    if (choice.node < 0 && openNext(task, packing, item)) findPlace(forest, pieces, ask);
    if (choice.node < 0) packing.left.push(item);
    else putDown(packing, pieces, { item, choice });
  }
  return packing;
}

function inOrder(pieces: Pieces, recipe: Recipe): readonly number[] {
  const keys = Float64Array.from({ length: pieces.count }, (_, i) => recipe.key(pieces, i));
  return [...keys.keys()].sort((a, b) => at(keys, b) - at(keys, a) || at(pieces.like, a) - at(pieces.like, b) || a - b);
}

/** Lays a piece at the choice and works its sheet out again. */
export function putDown(
  packing: Packing,
  pieces: Pieces,
  put: { readonly item: number; readonly choice: Choice },
): void {
  const root = place(packing.forest, pieces, put);
  const ground = packing.grounds[root];
  if (ground !== undefined) refreshSheet(packing.forest, root, ground);
}
