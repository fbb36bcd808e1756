import { addNode, at, emptyForest, type Forest, type Ground, insertAt, LEAF, removeNode } from './forest.ts';
import type { Pieces } from './insertion.ts';
import { openSheet, refreshSheet } from './slack.ts';
import type { Kind, Task } from './task.ts';

/** Sheets in use and what lies on them. A sheet with spots that can't be used has several roots in the forest. */
export type Packing = {
  readonly forest: Forest;
  /** ground of each root of the forest that is in use */
  readonly grounds: readonly Ground[];
  /** kind of each sheet */
  readonly kinds: readonly number[];
  /** sheet of each root */
  readonly sheetOf: readonly number[];
  /** pieces that found no place */
  readonly left: readonly number[];
};

type Open = { forest: Forest; grounds: Ground[]; kinds: number[]; sheetOf: number[] };

/** Opens one more sheet on which the piece fits: what costs nothing first, then the cheapest for its area. */
export function openNext(task: Task, open: Open, item: number): boolean {
  let best = -1;
  for (const [index, kind] of task.kinds.entries()) {
    const used = open.kinds.reduce((sum, k) => sum + Number(k === index), 0);
    if (used >= kind.count || !kind.grounds.some((g) => fitsOn(task.pieces, item, g))) continue;
    const other = task.kinds[best];
    if (other === undefined || cheaper(kind, other)) best = index;
  }
  if (best < 0) return false;
  openKind(task, open, best);
  return true;
}

/** Opens one more sheet of a kind. */
export function openKind(task: Task, open: Open, index: number): void {
  const sheet = open.kinds.push(index) - 1;
  for (const ground of task.kinds[index]?.grounds ?? []) {
    openSheet(open.forest, open.grounds.push(ground) - 1, ground);
    open.sheetOf.push(sheet);
  }
}

function cheaper(a: Kind, b: Kind): boolean {
  const [one, other] = [a.price * b.area, b.price * a.area];
  return one !== other ? one < other : a.area < b.area;
}

export function fitsOn(pieces: Pieces, item: number, ground: Ground): boolean {
  const [w, h] = [at(pieces.w, item), at(pieces.h, item)];
  return (w <= ground.w && h <= ground.h) || (pieces.turns[item] === 1 && h <= ground.w && w <= ground.h);
}

/** Price of the sheets in use. */
export function costOf(task: Task, packing: Packing): number {
  return packing.kinds.reduce((sum, kind) => sum + (task.kinds[kind]?.price ?? 0), 0);
}

/** The same layout with only the sheets of `keep`, then empty sheets of the kinds in `add`; the rest's pieces are left over. */
export function reopened(
  task: Task,
  from: Packing,
  change: { readonly keep: readonly number[]; readonly add: readonly number[] },
): Packing {
  const kinds = [...change.keep.map((sheet) => from.kinds[sheet] ?? 0), ...change.add];
  const roots = kinds.reduce((sum, kind) => sum + (task.kinds[kind]?.grounds.length ?? 0), 0);
  const to = {
    forest: emptyForest(roots, task.pieces.count, task.levels),
    grounds: [],
    kinds: [],
    sheetOf: [],
    left: [] as number[],
  };
  for (const kind of kinds) openKind(task, to, kind);
  let root = 0;
  for (const sheet of change.keep) {
    for (const [old, of] of from.sheetOf.entries()) {
      if (of !== sheet) continue;
      transplant(from.forest, old, { to: to.forest, node: root });
      const ground = to.grounds[root];
      if (ground !== undefined) refreshSheet(to.forest, root, ground);
      root++;
    }
  }
  const laid = new Set(to.grounds.flatMap((_, at) => itemsBelow(to.forest, at)));
  for (let item = 0; item < task.pieces.count; item++) if (!laid.has(item)) to.left.push(item);
  return to;
}

type Target = { readonly to: Forest; readonly node: number; readonly rename?: (item: number) => number };

/** Copies what lies below a node to a node of another forest. */
export function transplant(from: Forest, node: number, target: Target): void {
  const { to, rename } = target;
  for (let child = at(from.first, node); child >= 0; child = at(from.next, child)) {
    const item = at(from.item, child);
    if (from.kind[child] !== LEAF)
      transplant(from, child, { ...target, node: addNode(to, at(from.kind, child), target.node) });
    else insertAt(to, target.node, { item: rename?.(item) ?? item, w: at(from.w, child), h: at(from.h, child) });
  }
}

/** Takes everything off a root; it must be refreshed after. */
export function clearRoot(forest: Forest, root: number): void {
  while (at(forest.first, root) >= 0) removeNode(forest, at(forest.first, root), () => undefined);
}

/** Pieces lying below a node, by number. */
export function itemsBelow(forest: Forest, root: number): readonly number[] {
  const items: number[] = [];
  for (let node = 0; node < at(forest.pool, 0); node++) {
    if (forest.kind[node] === LEAF && forest.sheet[node] === root) items.push(at(forest.item, node));
  }
  return items.sort((a, b) => a - b);
}

/** Area of the pieces on each sheet. */
export function filledBySheet(packing: Packing): readonly number[] {
  const filled = packing.kinds.map(() => 0);
  for (const [root, sheet] of packing.sheetOf.entries())
    filled[sheet] = (filled[sheet] ?? 0) + at(packing.forest.filled, root);
  return filled;
}
