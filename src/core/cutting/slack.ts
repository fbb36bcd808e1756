import { at, type Forest, type Ground, LEAF, otherKind, RIPS } from './forest.ts';

/** Works out sizes, slack and levels of a sheet again after its tree has changed. */
export function refreshSheet(forest: Forest, sheet: number, ground: Ground): void {
  measure(forest, sheet);
  forest.sx[sheet] = ground.w - at(forest.w, sheet);
  forest.sy[sheet] = ground.h - at(forest.h, sheet);
  forest.level[sheet] = 1;
  offer(forest, sheet);
}

function measure(forest: Forest, node: number): void {
  let sumW = 0;
  let sumH = 0;
  let maxW = 0;
  let maxH = 0;
  for (let child = at(forest.first, node); child >= 0; child = at(forest.next, child)) {
    if (at(forest.kind, child) !== LEAF) measure(forest, child);
    const w = at(forest.w, child);
    const h = at(forest.h, child);
    sumW += w;
    sumH += h;
    if (w > maxW) maxW = w;
    if (h > maxH) maxH = h;
  }
  const ripped = forest.kind[node] === RIPS;
  forest.w[node] = ripped ? maxW : sumW;
  forest.h[node] = ripped ? sumH : maxH;
}

function offer(forest: Forest, node: number): void {
  show(forest, node);
  const ripped = forest.kind[node] === RIPS;
  const { w, h, sx, sy, level } = forest;
  for (let child = at(forest.first, node); child >= 0; child = at(forest.next, child)) {
    sx[child] = at(sx, node) + (ripped ? at(w, node) - at(w, child) : 0);
    sy[child] = at(sy, node) + (ripped ? 0 : at(h, node) - at(h, child));
    level[child] = at(level, node) + 1;
    if (at(forest.kind, child) === LEAF) show(forest, child);
    else offer(forest, child);
  }
}

/** The node as an insertion sees it. At the last level every piece must be exactly as wide as its strip. */
function show(forest: Forest, node: number): void {
  const { w, h, sx, sy, kind, levels } = forest;
  const level = at(forest.level, node);
  const direction = kind[node] === LEAF ? otherKind(at(kind, at(forest.parent, node))) : at(kind, node);
  const along = direction === RIPS;
  const across = along ? at(w, node) : at(h, node);
  const exactly = level === levels && (kind[node] === LEAF || forest.first[node] !== -1);
  forest.room[node] = level > levels ? -1 : along ? at(sy, node) : at(sx, node);
  forest.across[node] = across;
  forest.least[node] = exactly ? across : 0;
  forest.most[node] = across + (exactly ? 0 : along ? at(sx, node) : at(sy, node));
}

/** Clears a sheet's root; its nodes must have been freed before. */
export function openSheet(forest: Forest, sheet: number, ground: Ground): void {
  forest.kind[sheet] = ground.kind;
  forest.sheet[sheet] = sheet;
  forest.first[sheet] = -1;
  forest.parent[sheet] = -1;
  forest.filled[sheet] = 0;
  refreshSheet(forest, sheet, ground);
}
