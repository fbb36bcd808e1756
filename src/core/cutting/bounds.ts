import { dualFeasible } from './feasible.ts';
import { at, type Ground } from './forest.ts';
import type { Pieces } from './insertion.ts';
import { fitsOn } from './packing.ts';
import type { Kind, Task } from './task.ts';

/** What a floating-point sum may be off by, in sheets. */
const WHISKER = 1e-9;
/** Thresholds tried a direction; more only cost time. */
const MARKS = 24;

/** Area of the pieces, each with the kerf on two of its sides, square ticks. */
export function areaOfPieces(pieces: Pieces): number {
  let area = 0;
  for (let i = 0; i < pieces.count; i++) area += at(pieces.w, i) * at(pieces.h, i);
  return area;
}

/** Fewest sheets of one area whose area holds the pieces: a bound for every style, since no two pieces share a kerf's area. */
export function areaBound(pieces: Pieces, sheet: number): number {
  return sheet > 0 ? Math.ceil(areaOfPieces(pieces) / sheet - WHISKER) : 0;
}

/**
 * Fewest grounds that hold the pieces by products of dual-feasible functions, one a direction; a piece that may turn
 * counts the smaller of its two products. A bound for free nesting and so for every style.
 */
export function feasibleBound(pieces: Pieces, ground: Ground): number {
  const kinds = countsByLike(pieces);
  const turned = (i: number) => pieces.turns[i] === 1;
  const sizes = (straight: Float64Array, other: Float64Array) =>
    kinds.flatMap(({ i }) => [at(straight, i), ...(turned(i) ? [at(other, i)] : [])]);
  const alongW = dualFeasible(ground.w, sizes(pieces.w, pieces.h), MARKS);
  const alongH = dualFeasible(ground.h, sizes(pieces.h, pieces.w), MARKS);
  const table = (fs: typeof alongW, of: Float64Array) =>
    fs.map((f) => Float64Array.from(kinds, ({ i }) => f(at(of, i))));
  const [w, h] = [table(alongW, pieces.w), table(alongH, pieces.h)];
  const [wTurned, hTurned] = [table(alongW, pieces.h), table(alongH, pieces.w)];
  const free = Uint8Array.from(kinds, ({ i }) => Number(turned(i) && fitsTurned(pieces, i, ground)));
  const count = Float64Array.from(kinds, (kind) => kind.count);
  let best = 0;
  for (const [a, f] of w.entries()) {
    for (const [b, g] of h.entries()) {
      const sum = total({ f, g, fTurned: wTurned[a] ?? f, gTurned: hTurned[b] ?? g, free, count });
      if (sum > best) best = sum;
    }
  }
  return Math.ceil(best - WHISKER);
}

type Values = {
  readonly f: Float64Array;
  readonly g: Float64Array;
  readonly fTurned: Float64Array;
  readonly gTurned: Float64Array;
  readonly free: Uint8Array;
  readonly count: Float64Array;
};

function total({ f, g, fTurned, gTurned, free, count }: Values): number {
  let sum = 0;
  for (let q = 0; q < count.length; q++) {
    const straight = at(f, q) * at(g, q);
    const turned = free[q] === 1 ? at(fTurned, q) * at(gTurned, q) : straight;
    sum += Math.min(turned, straight) * at(count, q);
  }
  return sum;
}

/** A piece that only fits turned is counted straight by nobody: its values are those of the way it fits. */
function fitsTurned(pieces: Pieces, i: number, ground: Ground): boolean {
  return at(pieces.h, i) <= ground.w && at(pieces.w, i) <= ground.h;
}

function countsByLike(pieces: Pieces): readonly { readonly i: number; readonly count: number }[] {
  const kinds = new Map<number, { i: number; count: number }>();
  for (let i = 0; i < pieces.count; i++) {
    const like = at(pieces.like, i);
    const kind = kinds.get(like);
    if (kind === undefined) kinds.set(like, { i, count: 1 });
    else kind.count++;
  }
  return [...kinds.values()];
}

/** Fewest sheets of a kind: what no other kind can hold must come from it, and of a single kind all must. */
export function kindBound(task: Task, index: number): number {
  const kind = task.kinds[index];
  if (kind === undefined) return 0;
  const only = subset(task.pieces, (i) => task.kinds.every((other, o) => o === index || !holds(task.pieces, i, other)));
  return only.count === 0 ? 0 : Math.max(1, areaBound(only, kind.area), feasibleBound(only, kind.whole));
}

function holds(pieces: Pieces, item: number, kind: Kind): boolean {
  return kind.count > 0 && kind.grounds.some((ground) => fitsOn(pieces, item, ground));
}

function subset(pieces: Pieces, keep: (item: number) => boolean): Pieces {
  const items = Array.from({ length: pieces.count }, (_, i) => i).filter(keep);
  return pick(pieces, items);
}

/** The pieces of a list of items, in its order. */
export function pick(pieces: Pieces, items: readonly number[]): Pieces {
  return {
    ...{
      count: items.length,
      w: Float64Array.from(items, (i) => at(pieces.w, i)),
      h: Float64Array.from(items, (i) => at(pieces.h, i)),
    },
    ...{
      turns: Uint8Array.from(items, (i) => pieces.turns[i] ?? 0),
      like: Int32Array.from(items, (i) => at(pieces.like, i)),
    },
  };
}

/** Least cost of stock: by kind for what only it can hold (`bounds`, from kindBound), and by area at the best price for area once free stock is full. */
export function costBound(task: Task, bounds: readonly number[]): number {
  const byKind = task.kinds.reduce(
    (sum, kind, index) => sum + (kind.price > 0 ? kind.price * (bounds[index] ?? 0) : 0),
    0,
  );
  const free = task.kinds.reduce((sum, kind) => sum + (kind.price === 0 ? kind.count * kind.area : 0), 0);
  const rates = task.kinds
    .filter((kind) => kind.price > 0 && kind.count > 0 && kind.area > 0)
    .map((kind) => kind.price / kind.area);
  const byArea = rates.length === 0 ? 0 : Math.max(0, areaOfPieces(task.pieces) - free) * Math.min(...rates);
  return Math.max(byKind, byArea * (1 - WHISKER));
}
