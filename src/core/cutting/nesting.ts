import { chance, share } from './chance.ts';
import { at, type Ground } from './forest.ts';
import type { Pieces } from './insertion.ts';
import { fitsOn } from './packing.ts';
import type { Field } from './slicing.ts';
import type { Kind, Task } from './task.ts';

/** A piece nested freely: root is the ground of its sheet it lies on; ticks. */
export type Nested = Field & { readonly item: number; readonly root: number };

/** Sheets nested freely, as a router can cut them: kind of each sheet and the pieces on it. */
export type Nest = {
  readonly kinds: readonly number[];
  readonly sheets: readonly (readonly Nested[])[];
  readonly left: readonly number[];
};

type Open = { readonly kind: number; readonly free: Field[][]; readonly nested: Nested[] };
type Spot = { readonly sheet: number; readonly root: number; readonly field: Field; readonly score: number };
type Key = (pieces: Pieces, item: number) => number;

const AREA: Key = (p, i) => at(p.w, i) * at(p.h, i);

const KEYS: readonly Key[] = [
  AREA,
  (p, i) => Math.max(at(p.w, i), at(p.h, i)),
  (p, i) => at(p.w, i) + at(p.h, i),
  (p, i) => at(p.h, i),
  (p, i) => at(p.w, i),
];

/** The cheapest of several free nestings; each piece goes where the shorter gap beside it is least. */
export function freeNest(task: Task): Nest | null {
  if (task.pieces.count > MOST) return null;
  const random = chance(2741);
  const bent = Array.from({ length: TRIES }, (_, i): Key => {
    const key = KEYS[i % KEYS.length] ?? AREA;
    const bends = Array.from({ length: task.pieces.count }, () => 1 - BEND * share(random));
    return (pieces, item) => key(pieces, item) * (bends[item] ?? 1);
  });
  const nests = [...KEYS, ...bent.slice(0, Math.ceil((TRIES * 20) / Math.max(20, task.pieces.count)))].map((key) =>
    nestBy(task, key),
  );
  const cost = (nest: Nest) => nest.kinds.reduce((sum, kind) => sum + (task.kinds[kind]?.price ?? 0), 0);
  return nests.reduce((a, b) => ((b.left.length - a.left.length || cost(b) - cost(a)) < 0 ? b : a));
}

/** Orders bent by chance, for twenty pieces; fewer for more. */
const TRIES = 60;
const BEND = 0.5;

/** More pieces than this are only cut by straight cuts. */
const MOST = 400;

function nestBy(task: Task, key: Key): Nest {
  const { pieces } = task;
  const order = Array.from({ length: pieces.count }, (_, i) => i).sort(
    (a, b) => key(pieces, b) - key(pieces, a) || a - b,
  );
  const open: Open[] = [];
  const left: number[] = [];
  for (const item of order) {
    const spot = bestSpot(open, pieces, item) ?? (openSheet(task, open, item) ? bestSpot(open, pieces, item) : null);
    const sheet = spot === null ? undefined : open[spot.sheet];
    if (spot === null || sheet === undefined) left.push(item);
    else lay(sheet, spot, item);
  }
  return { kinds: open.map((one) => one.kind), sheets: open.map((one) => one.nested), left };
}

function openSheet(task: Task, open: Open[], item: number): boolean {
  const usable = (kind: Kind, index: number) =>
    open.filter((one) => one.kind === index).length < kind.count &&
    kind.grounds.some((g) => fitsOn(task.pieces, item, g));
  const [best] = [...task.kinds.entries()]
    .filter(([index, kind]) => usable(kind, index))
    .sort(([, a], [, b]) => a.price * b.area - b.price * a.area || a.area - b.area);
  if (best === undefined) return false;
  open.push({ kind: best[0], free: best[1].grounds.map((g: Ground) => [{ x: 0, y: 0, w: g.w, h: g.h }]), nested: [] });
  return true;
}

function bestSpot(open: readonly Open[], pieces: Pieces, item: number): Spot | null {
  const [w, h] = [at(pieces.w, item), at(pieces.h, item)];
  const ways = pieces.turns[item] === 1 ? [[w, h] as const, [h, w] as const] : [[w, h] as const];
  let best: Spot | null = null;
  for (const [sheet, one] of open.entries()) {
    for (const [root, free] of one.free.entries()) {
      for (const space of free) {
        for (const [a, b] of ways) {
          if (a > space.w || b > space.h) continue;
          const score = Math.min(space.w - a, space.h - b);
          if (best === null || score < best.score)
            best = { sheet, root, score, field: { x: space.x, y: space.y, w: a, h: b } };
        }
      }
    }
  }
  return best;
}

function lay(sheet: Open, { root, field }: Spot, item: number): void {
  sheet.nested.push({ ...field, item, root });
  const cut = (sheet.free[root] ?? []).flatMap((space) => around(space, field));
  sheet.free[root] = cut.filter((a, i) => !cut.some((b, j) => j !== i && contains(b, a) && (!contains(a, b) || j < i)));
}

/** What is left of a space when a field is taken: up to four spaces that may overlap. */
function around(space: Field, taken: Field): readonly Field[] {
  const [right, top] = [space.x + space.w, space.y + space.h];
  const [r, t] = [taken.x + taken.w, taken.y + taken.h];
  if (taken.x >= right || r <= space.x || taken.y >= top || t <= space.y) return [space];
  return [
    { ...space, w: taken.x - space.x },
    { ...space, x: r, w: right - r },
    { ...space, h: taken.y - space.y },
    { ...space, y: t, h: top - t },
  ].filter((one) => one.w > 0 && one.h > 0);
}

function contains(a: Field, b: Field): boolean {
  return a.x <= b.x && a.y <= b.y && a.x + a.w >= b.x + b.w && a.y + a.h >= b.y + b.h;
}
