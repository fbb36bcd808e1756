import { type Chance, chance, draw, share } from './chance.ts';
import { putDown } from './construct.ts';
import { at, copyForest, emptyForest, type Forest, LEAF, removeNode } from './forest.ts';
import { type Choice, type Fit, findPlace, noChoice, type Pieces } from './insertion.ts';
import type { Packing } from './packing.ts';
import { refreshSheet } from './slack.ts';

/** Settings of the search, found by trial on the published instances; one set for every job. */
const FIT: Fit = { waste: 1, rest: 3 };
const NOISE = 0.5;
const MOST_SHEETS = 4;
const MOST_NODES = 6;
/** chance to take a whole node away instead of going down to its children */
const STOP = 0.4;
/** how far chance bends the order of the pieces */
const BEND = 0.1;
/** how much worse, as a share of a mean piece, a layout may be and still be gone on from */
const GIVE = 0.1;
/** work of a round besides its insertions */
const ROUND = 4000;

/** Pieces without a place. `count` of `list` are meant. */
type Bag = { readonly list: Int32Array; count: number };

type Search = {
  readonly packing: Packing;
  readonly pieces: Pieces;
  readonly bag: Bag;
  readonly keys: Float64Array;
  readonly refused: Uint8Array;
  readonly choice: Choice;
  readonly chance: Chance;
  /** area without a place */
  outside: number;
};

/** What a search found: true in `done` when every piece has its place. The packing's own forest was changed. */
export type Repacked = { readonly packing: Packing; readonly done: boolean; readonly work: number };

/**
 * Ruin and recreate: takes some pieces off some sheets and lays them again together with those that have no place, and
 * goes on from the result when less is left over, or hardly more. Ends when all lie or the work is done. The idea is
 * that of Schrimpf et al. (J. Comput. Phys. 159, 2000).
 */
export function repack(from: Packing, pieces: Pieces, limit: number): Repacked {
  const search = searchFrom(from, pieces);
  const { forest } = from;
  const back = {
    forest: emptyForest(forest.sheets, pieces.count, forest.levels),
    bag: new Int32Array(pieces.count),
    count: 0,
  };
  const mean = meanArea(pieces);
  let rounds = 0;
  while (search.bag.count > 0 && search.choice.work + rounds * ROUND < limit) {
    rounds++;
    copyForest(forest, back.forest);
    back.bag.set(search.bag.list);
    back.count = search.bag.count;
    const allowed = search.outside + GIVE * mean * share(search.chance);
    if (rounds > 1) ruin(search);
    const outside = recreate(search, allowed);
    if (outside <= allowed) search.outside = outside;
    else {
      copyForest(back.forest, forest);
      search.bag.list.set(back.bag);
      search.bag.count = back.count;
    }
  }
  const left = [...search.bag.list.subarray(0, search.bag.count)];
  return { packing: { ...from, left }, done: left.length === 0, work: search.choice.work + rounds * ROUND };
}

function searchFrom(packing: Packing, pieces: Pieces): Search {
  const random = chance(12345);
  const list = new Int32Array(pieces.count);
  list.set(packing.left);
  let outside = 0;
  for (const item of packing.left) outside += at(pieces.w, item) * at(pieces.h, item);
  return {
    ...{ packing, pieces, bag: { list, count: packing.left.length }, keys: new Float64Array(pieces.count) },
    ...{
      refused: new Uint8Array(pieces.count),
      choice: { ...noChoice(), noise: NOISE, chance: random },
      chance: random,
      outside,
    },
  };
}

function meanArea(pieces: Pieces): number {
  let area = 0;
  for (let i = 0; i < pieces.count; i++) area += at(pieces.w, i) * at(pieces.h, i);
  return area / Math.max(1, pieces.count);
}

/** Takes a few nodes, parts or whole groups, off a few sheets. */
function ruin({ packing, bag, chance: random }: Search): void {
  const { forest, grounds } = packing;
  const freed = (item: number) => {
    bag.list[bag.count++] = item;
  };
  const sheets = 1 + draw(random, Math.min(MOST_SHEETS, grounds.length));
  for (let i = 0; i < sheets; i++) {
    const root = draw(random, grounds.length);
    const nodes = 1 + draw(random, MOST_NODES);
    for (let j = 0; j < nodes && at(forest.first, root) >= 0; j++)
      removeNode(forest, someNode(forest, root, random), freed);
    const ground = grounds[root];
    if (ground !== undefined) refreshSheet(forest, root, ground);
  }
}

/** A node below the root, by chance: from child to child, ending at a part or at any node on the way. */
function someNode(forest: Forest, root: number, random: Chance): number {
  let node = root;
  do {
    let children = 0;
    for (let child = at(forest.first, node); child >= 0; child = at(forest.next, child)) children++;
    let steps = draw(random, children);
    node = at(forest.first, node);
    while (steps-- > 0) node = at(forest.next, node);
  } while (forest.kind[node] !== LEAF && share(random) >= STOP);
  return node;
}

/** Lays what has no place, larger first; gives up when more than `allowed` would be left. Returns the area left over. */
function recreate(search: Search, allowed: number): number {
  const { pieces, bag, choice, refused, packing } = search;
  const order = shuffled(search);
  bag.count = 0;
  refused.fill(0);
  let outside = 0;
  for (const item of order) {
    const like = at(pieces.like, item);
    choice.node = -1;
    if (outside <= allowed && refused[like] === 0) findPlace(packing.forest, pieces, { item, fit: FIT, choice });
    if (choice.node >= 0) putDown(packing, pieces, { item, choice });
    else {
      refused[like] = 1;
      bag.list[bag.count++] = item;
      outside += at(pieces.w, item) * at(pieces.h, item);
    }
  }
  return outside;
}

/** The pieces without a place by area, girth, height or length, bent by chance. */
function shuffled({ pieces, bag, keys, chance: random }: Search): Int32Array {
  const mode = share(random);
  for (let i = 0; i < bag.count; i++) {
    const item = at(bag.list, i);
    const [w, h] = [at(pieces.w, item), at(pieces.h, item)];
    const size = mode < 0.5 ? w * h : mode < 0.7 ? (w + h) ** 2 : mode < 0.85 ? h * h : w * w;
    keys[item] = size * (1 - BEND + 2 * BEND * share(random));
  }
  return bag.list.slice(0, bag.count).sort((a, b) => at(keys, b) - at(keys, a) || a - b);
}
