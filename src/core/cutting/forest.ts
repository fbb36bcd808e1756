/**
 * Layouts of all sheets as one forest of cuts. A `rips` node holds pieces stacked across the sheet (y), a `crosscuts`
 * node holds pieces side by side along it (x), a leaf holds one part. Every order of a node's children is the same
 * layout to the saw, so a node keeps only the size its content needs; what its sheet has left over is its slack.
 * Roots are the nodes 0 .. sheets - 1. Sizes in ticks, grown by one kerf.
 */
export const SPARE = 0;
export const LEAF = 1;
export const RIPS = 2;
export const CROSSCUTS = 3;
export type NodeKind = typeof RIPS | typeof CROSSCUTS;

/** Fields are views on two buffers, so that a forest is copied by two block moves. Indexes of -1 mean none. */
export type Forest = {
  readonly sheets: number;
  /** most rounds of cuts a sheet may have */
  readonly levels: number;
  readonly links: Int32Array;
  readonly sizes: Float64Array;
  /** [nodes ever used, head of the list of spare nodes] */
  readonly pool: Int32Array;
  readonly kind: Int32Array;
  readonly parent: Int32Array;
  readonly first: Int32Array;
  readonly next: Int32Array;
  readonly prev: Int32Array;
  readonly item: Int32Array;
  readonly sheet: Int32Array;
  /** round of cuts of a node's own cuts; of a leaf: of the node that would wrap it */
  readonly level: Int32Array;
  /** size the content needs */
  readonly w: Float64Array;
  readonly h: Float64Array;
  /** how much it may grow before its sheet is full */
  readonly sx: Float64Array;
  readonly sy: Float64Array;
  /** the same as an insertion sees it: room along its cuts' order, size across, least and most size across */
  readonly room: Float64Array;
  readonly across: Float64Array;
  readonly least: Float64Array;
  readonly most: Float64Array;
  /** area of the parts on each sheet */
  readonly filled: Float64Array;
};

/** One sheet (or usable region of a sheet) as the search sees it; `kind` is the way of its first round of cuts. */
export type Ground = { readonly w: number; readonly h: number; readonly kind: NodeKind };

const LINKS = 8;
const SIZES = 8;

export function emptyForest(sheets: number, parts: number, levels: number): Forest {
  const nodes = sheets + 2 * parts + 4;
  const links = new Int32Array(2 + LINKS * nodes);
  const sizes = new Float64Array(SIZES * nodes + sheets);
  const link = (i: number) => links.subarray(2 + i * nodes, 2 + (i + 1) * nodes);
  const size = (i: number) => sizes.subarray(i * nodes, (i + 1) * nodes);
  const forest: Forest = {
    ...{ sheets, levels, links, sizes, pool: links.subarray(0, 2), filled: sizes.subarray(SIZES * nodes) },
    ...{
      kind: link(0),
      parent: link(1),
      first: link(2),
      next: link(3),
      prev: link(4),
      item: link(5),
      sheet: link(6),
      level: link(7),
    },
    ...{
      w: size(0),
      h: size(1),
      sx: size(2),
      sy: size(3),
      room: size(4),
      across: size(5),
      least: size(6),
      most: size(7),
    },
  };
  links.fill(-1, 2 + nodes);
  forest.kind.fill(SPARE);
  forest.pool[0] = sheets;
  forest.pool[1] = -1;
  return forest;
}

export function copyForest(from: Forest, to: Forest): void {
  to.links.set(from.links);
  to.sizes.set(from.sizes);
}

export function at(field: Int32Array | Float64Array, index: number): number {
  return field[index] ?? 0;
}

/** A new inner node under `parent`, without children. */
export function addNode(forest: Forest, kind: number, parent: number): number {
  const node = newNode(forest, kind, at(forest.sheet, parent));
  attach(forest, node, parent);
  return node;
}

/** Closes a sheet that holds nothing: no part is laid on it any more. */
export function closeSheet(forest: Forest, sheet: number): void {
  forest.kind[sheet] = SPARE;
  forest.room[sheet] = -1;
}

function newNode(forest: Forest, kind: number, sheet: number): number {
  const spare = at(forest.pool, 1);
  const node = spare >= 0 ? spare : at(forest.pool, 0);
  if (spare >= 0) forest.pool[1] = at(forest.next, spare);
  else forest.pool[0] = node + 1;
  forest.kind[node] = kind;
  forest.sheet[node] = sheet;
  forest.first[node] = -1;
  return node;
}

function freeNode(forest: Forest, node: number): void {
  forest.kind[node] = SPARE;
  forest.room[node] = -1;
  forest.next[node] = at(forest.pool, 1);
  forest.pool[1] = node;
}

function attach(forest: Forest, node: number, parent: number): void {
  const head = at(forest.first, parent);
  forest.parent[node] = parent;
  forest.prev[node] = -1;
  forest.next[node] = head;
  if (head >= 0) forest.prev[head] = node;
  forest.first[parent] = node;
}

function detach(forest: Forest, node: number): void {
  const before = at(forest.prev, node);
  const after = at(forest.next, node);
  if (before >= 0) forest.next[before] = after;
  else forest.first[at(forest.parent, node)] = after;
  if (after >= 0) forest.prev[after] = before;
}

export function otherKind(kind: number): NodeKind {
  return kind === RIPS ? CROSSCUTS : RIPS;
}

/** What is inserted: part number and its size as it lies. */
export type Laid = { readonly item: number; readonly w: number; readonly h: number };

/** Puts a part beside a leaf or as one more child of a node; the sheet must be refreshed after. */
export function insertAt(forest: Forest, node: number, laid: Laid): number {
  const sheet = at(forest.sheet, node);
  const leaf = newNode(forest, LEAF, sheet);
  forest.item[leaf] = laid.item;
  forest.w[leaf] = laid.w;
  forest.h[leaf] = laid.h;
  forest.filled[sheet] = at(forest.filled, sheet) + laid.w * laid.h;
  attach(forest, leaf, at(forest.kind, node) === LEAF ? wrap(forest, node) : node);
  return leaf;
}

/** Puts a node of the other direction between a child and its parent. */
function wrap(forest: Forest, child: number): number {
  const parent = at(forest.parent, child);
  const node = newNode(forest, otherKind(at(forest.kind, parent)), at(forest.sheet, child));
  detach(forest, child);
  attach(forest, node, parent);
  attach(forest, child, node);
  return node;
}

/** Lays the children of `node` up to the size `tallest` across as one group, and the part beside the group. */
export function insertBeside(
  forest: Forest,
  node: number,
  pick: { readonly tallest: number; readonly laid: Laid },
): number {
  const kind = at(forest.kind, node);
  const size = kind === CROSSCUTS ? forest.h : forest.w;
  const sheet = at(forest.sheet, node);
  const outer = newNode(forest, otherKind(kind), sheet);
  const group = newNode(forest, kind, sheet);
  for (let child = at(forest.first, node); child >= 0; ) {
    const after = at(forest.next, child);
    if (at(size, child) <= pick.tallest) {
      detach(forest, child);
      attach(forest, child, group);
    }
    child = after;
  }
  attach(forest, outer, node);
  attach(forest, group, outer);
  return insertAt(forest, outer, pick.laid);
}

/** Takes a node and all below it off its sheet; calls back for each part freed. The sheet must be refreshed after. */
export function removeNode(forest: Forest, node: number, freed: (item: number) => void): void {
  const parent = at(forest.parent, node);
  if (parent < 0) return;
  detach(forest, node);
  freeBelow(forest, node, freed);
  settle(forest, parent);
}

function freeBelow(forest: Forest, node: number, freed: (item: number) => void): void {
  if (at(forest.kind, node) === LEAF) {
    const sheet = at(forest.sheet, node);
    forest.filled[sheet] = at(forest.filled, sheet) - at(forest.w, node) * at(forest.h, node);
    freed(at(forest.item, node));
  } else {
    for (let child = at(forest.first, node); child >= 0; ) {
      const after = at(forest.next, child);
      freeBelow(forest, child, freed);
      child = after;
    }
  }
  freeNode(forest, node);
}

/** Drops a node that holds nothing, or only one thing, so that cuts alternate in direction. */
function settle(forest: Forest, node: number): void {
  const parent = at(forest.parent, node);
  if (parent < 0) return;
  const only = at(forest.first, node);
  if (only >= 0 && at(forest.next, only) >= 0) return;
  detach(forest, node);
  freeNode(forest, node);
  if (only < 0) settle(forest, parent);
  else if (at(forest.kind, only) === LEAF) attach(forest, only, parent);
  else splice(forest, only, parent);
}

function splice(forest: Forest, node: number, parent: number): void {
  for (let child = at(forest.first, node); child >= 0; ) {
    const after = at(forest.next, child);
    attach(forest, child, parent);
    child = after;
  }
  freeNode(forest, node);
}
