import { construct, RECIPES } from './construct.ts';
import { at, type Forest, LEAF, RIPS } from './forest.ts';
import { subtask } from './hands.ts';
import { noChoice } from './insertion.ts';
import { clearRoot, itemsBelow, type Packing, reopened, transplant } from './packing.ts';
import { refreshSheet } from './slack.ts';
import { stripLeft } from './spare.ts';
import type { Task } from './task.ts';

/** What a sheet asks of the sawyer: cuts, and how often fence or stop is set. */
export type Labour = { readonly cuts: number; readonly settings: number };

/** Cuts and settings of what lies on a root; cuts of one round and size share a setting. */
export function labour(packing: Packing, root: number): Labour {
  const ground = packing.grounds[root];
  const settings = new Set<number>();
  if (ground === undefined) return { cuts: 0, settings: 0 };
  const cuts = cutsBelow(packing.forest, root, { w: ground.w, h: ground.h, settings });
  return { cuts, settings: settings.size };
}

type Field = { readonly w: number; readonly h: number; readonly settings: Set<number> };

/** A cut a child, one less where the last takes the whole rest, and one to trim a part smaller than its strip. */
function cutsBelow(forest: Forest, node: number, { w, h, settings }: Field): number {
  const ripped = forest.kind[node] === RIPS;
  const whole = at(ripped ? forest.h : forest.w, node) >= (ripped ? h : w);
  const side = (size: number, rip: number) => settings.add(size * 64 + Math.min(31, at(forest.level, node)) * 2 + rip);
  let cuts = whole ? -1 : 0;
  for (let child = at(forest.first, node); child >= 0; child = at(forest.next, child)) {
    const along = at(ripped ? forest.h : forest.w, child);
    const across = at(ripped ? forest.w : forest.h, child);
    const leaf = forest.kind[child] === LEAF;
    const loose = leaf && across < (ripped ? w : h);
    side(along, ripped ? 1 : 0);
    if (loose) side(across, ripped ? 0 : 1);
    cuts += loose ? 2 : 1;
    if (!leaf) cuts += cutsBelow(forest, child, ripped ? { w, h: along, settings } : { w: along, h, settings });
  }
  return cuts;
}

type Made = { readonly packing: Packing; readonly work: number };

/** Lays each root's pieces again by every recipe, and keeps a layout with less labour that leaves no smaller a strip. */
export function tidy(task: Task, from: Packing, keep: number): Made {
  const choice = noChoice();
  const packing = reopened(task, from, { keep: [...from.kinds.keys()], add: [] });
  for (const [root, ground] of packing.grounds.entries()) {
    const items = itemsBelow(packing.forest, root);
    if (items.length < 2 || items.length > MOST) continue;
    const kind = { grounds: [ground], whole: ground, area: ground.w * ground.h, price: 1, count: 1 };
    const alone = { ...subtask(task, items, []), kinds: [kind] };
    for (const recipe of RECIPES) {
      const made = construct(alone, recipe, choice);
      if (made.left.length > 0 || stripLeft(made, 0, keep) < stripLeft(packing, root, keep)) continue;
      if (!easier(labour(made, 0), labour(packing, root))) continue;
      replaceRoot(packing, root, { made, items });
    }
  }
  return { packing, work: choice.work };
}

/** Sheets with more parts than this are left as they are. */
const MOST = 150;

function easier(a: Labour, b: Labour): boolean {
  return a.cuts !== b.cuts ? a.cuts < b.cuts : a.settings < b.settings;
}

function replaceRoot(
  packing: Packing,
  root: number,
  by: { readonly made: Packing; readonly items: readonly number[] },
): void {
  const ground = packing.grounds[root];
  if (ground === undefined) return;
  clearRoot(packing.forest, root);
  transplant(by.made.forest, 0, { to: packing.forest, node: root, rename: (item) => by.items[item] ?? item });
  refreshSheet(packing.forest, root, ground);
}
