import { at, CROSSCUTS, type Forest, insertAt, insertBeside, LEAF, SPARE } from './forest.ts';

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

/** How insertions are weighed: by the strip of waste they make, by the room they leave, or by both. */
export type Fit = { readonly waste: number; readonly rest: number; readonly group: number };

/** Where the best insertion found so far would go; overwritten by each search. */
export type Choice = {
  node: number;
  turned: number;
  score: number;
  /** for a group of children: the largest size across that joins it; -1 for a plain insertion */
  tallest: number;
  work: number;
};

export function noChoice(): Choice {
  return { node: -1, turned: 0, score: 0, tallest: -1, work: 0 };
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
    const score = fit.waste * waste + fit.rest * rest * cross;
    if (score < choice.score) {
      choice.score = score;
      choice.node = node;
      choice.turned = trial.turned;
      choice.tallest = -1;
    }
  }
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
