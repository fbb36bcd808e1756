import { at, type Ground, RIPS } from './forest.ts';
import { emptiestSheet } from './hands.ts';
import { type Packing, reopened } from './packing.ts';
import { repack } from './repack.ts';
import { refreshSheet } from './slack.ts';
import type { Task } from './task.ts';

/** Smallest side of an offcut worth keeping, in ticks grown by one kerf. */
export type Spare = { readonly keep: number; readonly limit: number };

/** Halvings of the gap between what is spare and what could be. */
const HALVINGS = 5;

/** The strip over the whole of a root's ground that its content leaves: ticks, grown by one kerf; 0 when not worth keeping. */
export function stripLeft(packing: Packing, root: number, keep: number): number {
  const ground = packing.grounds[root];
  if (ground === undefined) return 0;
  const { forest } = packing;
  const strips = ways(forest.levels, ground).map((way) =>
    way === 'h' ? [ground.h - at(forest.h, root), ground.w] : [ground.w - at(forest.w, root), ground.h],
  );
  return Math.max(0, ...strips.map(([a = 0, b = 0]) => (Math.min(a, b) >= keep ? a * b : 0)));
}

/** Strips a style can leave: across its first round of cuts, and where rounds are free along it too. */
function ways(levels: number, ground: Ground): readonly ('w' | 'h')[] {
  if (levels >= 1000) return ['h', 'w'];
  return ground.kind === RIPS ? ['h'] : ['w'];
}

type Made = { readonly packing: Packing; readonly work: number };

/**
 * Makes the largest reusable offcut larger: the emptiest sheet is laid again together with the others on a ground
 * shortened by a wider and wider strip. Sheets with spots that can't be used are left as they are.
 */
export function widenOffcut(task: Task, from: Packing, { keep, limit }: Spare): Made {
  const sheet = emptiestSheet(from);
  const single = from.sheetOf.indexOf(sheet) === from.sheetOf.lastIndexOf(sheet);
  if (!single || from.left.length > 0 || sheet < 0) return { packing: from, work: 0 };
  let best: Made = { packing: sheetLast(task, from, sheet), work: 0 };
  const kind = best.packing.grounds.at(-1);
  for (const way of kind === undefined ? [] : ways(from.forest.levels, kind)) {
    best = widenAlong(task, best, { way, spare: { keep, limit: limit / 2 } });
  }
  return best;
}

/** The same layout with one sheet moved to the end. */
function sheetLast(task: Task, packing: Packing, sheet: number): Packing {
  const others = [...packing.kinds.keys()].filter((index) => index !== sheet);
  return reopened(task, packing, { keep: [...others, sheet], add: [] });
}

type Along = { readonly way: 'w' | 'h'; readonly spare: Spare };

function widenAlong(task: Task, from: Made, { way, spare }: Along): Made {
  let { packing, work } = from;
  const root = packing.grounds.length - 1;
  const ground = packing.grounds[root];
  if (ground === undefined) return from;
  const [size, other] = way === 'h' ? [ground.h, ground.w] : [ground.w, ground.h];
  let low = stripLeft(packing, root, spare.keep) / other;
  let high = Math.min(size, freeArea(packing) / other);
  for (let i = 0; i < HALVINGS && high - low > spare.keep / 8 && high >= spare.keep; i++) {
    const strip = Math.max(spare.keep, Math.ceil((low + high) / 2));
    const short = way === 'h' ? { ...ground, h: size - strip } : { ...ground, w: size - strip };
    const result = repack(onGround(lastEmptied(task, packing), short), task.pieces, spare.limit / HALVINGS);
    work += result.work;
    if (result.done) packing = onGround(result.packing, ground);
    if (result.done) low = Math.max(strip, stripLeft(packing, root, spare.keep) / other);
    else high = strip;
  }
  return { packing, work };
}

/** The layout with its last sheet emptied. */
function lastEmptied(task: Task, packing: Packing): Packing {
  const last = packing.kinds.length - 1;
  return reopened(task, packing, { keep: [...packing.kinds.keys()].slice(0, last), add: packing.kinds.slice(last) });
}

/** The layout with another ground under its last root. */
function onGround(packing: Packing, ground: Ground): Packing {
  const root = packing.grounds.length - 1;
  refreshSheet(packing.forest, root, ground);
  return { ...packing, grounds: packing.grounds.with(root, ground) };
}

function freeArea(packing: Packing): number {
  const area = packing.grounds.reduce((sum, ground) => sum + ground.w * ground.h, 0);
  return packing.grounds.reduce((sum, _, root) => sum - at(packing.forest.filled, root), area);
}
