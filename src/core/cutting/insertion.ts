import { type Chance, chance, share } from './chance.ts';
import { at, CROSSCUTS, type Forest, insertAt, insertBeside, LEAF, RIPS, SPARE } from './forest.ts';

/** Parts as the search sees them: sizes in ticks grown by one kerf, one entry an instance. */
export type Pieces = {
  readonly count: number;
  readonly w: Float64Array;
  readonly h: Float64Array;
  /** 1 when the part may also lie turned */
  readonly turns: Uint8Array;
  /** kind of part, so that like parts are told from different ones */
  readonly like: Int32Array;
};

/** How insertions are weighed: by the strip of waste they make beside a neighbour, and by the room they leave beyond. */
export type Fit = { readonly waste: number; readonly rest: number };

/** Where the best insertion found so far would go; overwritten by each search. */
export type Choice = {
  node: number;
  turned: number;
  score: number;
  /** for a group of children: the largest size across that joins it; -1 for a plain insertion */
  tallest: number;
  work: number;
  /** how far chance may bend a score, 0 not at all */
  noise: number;
  readonly chance: Chance;
};

export function noChoice(): Choice {
  return { node: -1, turned: 0, score: 0, tallest: -1, work: 0, noise: 0, chance: chance(1) };
}

/** Finds the best place for a piece on any sheet in both its directions; choice.node stays -1 when there is none. */
export function findPlace(
  forest: Forest,
  pieces: Pieces,
  ask: { readonly item: number; readonly fit: Fit; readonly choice: Choice },
): void {
  const { choice, item, fit } = ask;
  choice.node = -1;
  choice.score = Number.POSITIVE_INFINITY;
  const w = at(pieces.w, item);
  const h = at(pieces.h, item);
  scan(forest, choice, { w, h, turned: 0, fit });
  if (pieces.turns[item] === 1) scan(forest, choice, { w: h, h: w, turned: 1, fit });
  if (choice.node < 0) {
    scanGroups(forest, choice, { w, h, turned: 0, fit });
    if (pieces.turns[item] === 1) scanGroups(forest, choice, { w: h, h: w, turned: 1, fit });
  }
}

type Trial = { readonly w: number; readonly h: number; readonly turned: number; readonly fit: Fit };

function scan(forest: Forest, choice: Choice, trial: Trial): void {
  const { kind, parent, room, across, least, most, w: nodeW, h: nodeH } = forest;
  const { w, h, fit } = trial;
  const end = at(forest.pool, 0);
  choice.work += end;
  for (let node = 0; node < end; node++) {
    const k = kind[node];
    if (k === SPARE) continue;
    const sideways = k === LEAF ? kind[parent[node] ?? 0] !== CROSSCUTS : k === CROSSCUTS;
    const along = sideways ? w : h;
    const rest = (room[node] ?? -1) - along;
    if (rest < 0) continue;
    const cross = sideways ? h : w;
    if (cross > (most[node] ?? 0) || cross < (least[node] ?? 0)) continue;
    const short = (across[node] ?? 0) - cross;
    const waste = short >= 0 ? short * along : -short * ((sideways ? nodeW[node] : nodeH[node]) ?? 0);
    const plain = fit.waste * waste + fit.rest * rest * cross;
    const score = choice.noise > 0 ? plain * (1 + choice.noise * share(choice.chance)) : plain;
    if (score < choice.score) {
      choice.score = score;
      choice.node = node;
      choice.turned = trial.turned;
      choice.tallest = -1;
    }
  }
}

/** Looks for places beside a group of a node's children: those up to one size across are laid together, and the piece beside them. */
function scanGroups(forest: Forest, choice: Choice, trial: Trial): void {
  const { kind, first, next, parent, sx, sy } = forest;
  const end = at(forest.pool, 0);
  for (let node = 0; node < end; node++) {
    const k = kind[node];
    if (k !== CROSSCUTS && k !== RIPS) continue;
    if ((forest.level[node] ?? 0) + 3 > forest.levels) continue;
    const upright = k === CROSSCUTS;
    const [along, cross] = upright ? [trial.w, trial.h] : [trial.h, trial.w];
    const room = (upright ? sx : sy)[node] ?? 0;
    const height = ((upright ? forest.h[node] : forest.w[node]) ?? 0) + ((upright ? sy : sx)[node] ?? 0);
    if (cross >= height) continue;
    for (let child = first[node] ?? -1; child >= 0; child = next[child] ?? -1) {
      const tallest = (upright ? forest.h[child] : forest.w[child]) ?? 0;
      if (tallest + cross > height) continue;
      weighGroup(forest, choice, {
        ...trial,
        node,
        tallest,
        along,
        cross,
        room,
        height,
        whole: (parent[node] ?? -1) < 0,
      });
    }
  }
}

type Group = Trial & {
  readonly node: number;
  readonly tallest: number;
  readonly along: number;
  readonly cross: number;
  readonly room: number;
  readonly height: number;
  readonly whole: boolean;
};

function weighGroup(forest: Forest, choice: Choice, group: Group): void {
  const upright = forest.kind[group.node] === CROSSCUTS;
  const [size, across] = upright ? [forest.w, forest.h] : [forest.h, forest.w];
  let sum = 0;
  let members = 0;
  let others = 0;
  for (let child = at(forest.first, group.node); child >= 0; child = at(forest.next, child)) {
    if (at(across, child) <= group.tallest) {
      sum += at(size, child);
      members++;
    } else others++;
  }
  if (members < 2 || (others === 0 && !group.whole) || group.along > sum + group.room) return;
  const short = sum - group.along;
  const waste = short >= 0 ? short * group.cross : -short * group.tallest;
  const rest = group.height - group.tallest - group.cross;
  const plain = group.fit.waste * waste + group.fit.rest * rest * group.along;
  const score = choice.noise > 0 ? plain * (1 + choice.noise * share(choice.chance)) : plain;
  if (score >= choice.score) return;
  choice.score = score;
  choice.node = group.node;
  choice.turned = group.turned;
  choice.tallest = group.tallest;
}

export function place(forest: Forest, pieces: Pieces, put: { readonly item: number; readonly choice: Choice }): number {
  const { choice, item } = put;
  const w = at(pieces.w, item);
  const h = at(pieces.h, item);
  const laid = choice.turned === 1 ? { item, w: h, h: w } : { item, w, h };
  const sheet = at(forest.sheet, choice.node);
  if (choice.tallest < 0) insertAt(forest, choice.node, laid);
  else insertBeside(forest, choice.node, { tallest: choice.tallest, laid });
  return sheet;
}
