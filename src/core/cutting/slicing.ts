import { at, CROSSCUTS, type Forest, type Ground, LEAF, type NodeKind, otherKind } from './forest.ts';

/** More rounds than any real sheet has: a style without limit. */
const ANY = 1000;

/** A rectangle of a ground in ticks, grown by one kerf. */
export type Field = { readonly x: number; readonly y: number; readonly w: number; readonly h: number };

/** A piece of a sheet and what becomes of it: a part, more pieces by parallel cuts, or rest. */
export type Piece = Field &
  (
    | { readonly kind: 'part'; readonly item: number }
    | { readonly kind: 'rest' }
    | { readonly kind: 'cuts'; readonly by: NodeKind; readonly level: number; readonly pieces: readonly Piece[] }
  );

/** The tree of pieces of one ground: widest first in every node, what is left over last. */
export function slicing(forest: Forest, sheet: number, ground: Ground): Piece {
  const field = { x: 0, y: 0, w: ground.w, h: ground.h };
  const w = at(forest.w, sheet);
  const h = at(forest.h, sheet);
  if (forest.first[sheet] === -1) return { ...field, kind: 'rest' };
  const ripped = ground.kind !== CROSSCUTS;
  const [beyond, beside] = ripped
    ? [(ground.h - h) * ground.w, (ground.w - w) * ground.h]
    : [(ground.w - w) * ground.h, (ground.h - h) * ground.w];
  if (forest.levels < ANY || beside <= beyond) return cutUp(forest, sheet, { field, level: 1 });
  const inner = ripped ? { ...field, w } : { ...field, h };
  const rest: Piece = {
    ...(ripped ? { ...field, x: w, w: ground.w - w } : { ...field, y: h, h: ground.h - h }),
    kind: 'rest',
  };
  const pieces = [cutUp(forest, sheet, { field: inner, level: 2 }), rest];
  return { ...field, kind: 'cuts', by: otherKind(ground.kind), level: 1, pieces };
}

type Here = { readonly field: Field; readonly level: number };

function cutUp(forest: Forest, node: number, { field, level }: Here): Piece {
  const by: NodeKind = at(forest.kind, node) === CROSSCUTS ? CROSSCUTS : otherKind(CROSSCUTS);
  const [along, across] = by === CROSSCUTS ? [forest.w, forest.h] : [forest.h, forest.w];
  const pieces: Piece[] = [];
  let left = field;
  for (const child of childrenOf(forest, node, [along, across])) {
    const [taken, rest] = slice(left, by, at(along, child));
    const inside = { field: taken, level: level + 1 };
    pieces.push(
      at(forest.kind, child) === LEAF ? leafPiece(forest, child, { ...inside, by }) : cutUp(forest, child, inside),
    );
    left = rest;
  }
  if (left.w > 0 && left.h > 0) pieces.push({ ...left, kind: 'rest' });
  return { ...field, kind: 'cuts', by, level, pieces };
}

function leafPiece(forest: Forest, leaf: number, { field, level, by }: Here & { readonly by: NodeKind }): Piece {
  const part = (f: Field): Piece => ({ ...f, kind: 'part', item: at(forest.item, leaf) });
  const size = by === CROSSCUTS ? at(forest.h, leaf) : at(forest.w, leaf);
  const [taken, rest] = slice(field, otherKind(by), size);
  if (rest.w <= 0 || rest.h <= 0) return part(field);
  return { ...field, kind: 'cuts', by: otherKind(by), level, pieces: [part(taken), { ...rest, kind: 'rest' }] };
}

function slice(field: Field, by: NodeKind, size: number): readonly [Field, Field] {
  return by === CROSSCUTS
    ? [
        { ...field, w: size },
        { ...field, x: field.x + size, w: field.w - size },
      ]
    : [
        { ...field, h: size },
        { ...field, y: field.y + size, h: field.h - size },
      ];
}

function childrenOf(forest: Forest, node: number, sizes: readonly Float64Array[]): readonly number[] {
  const children: number[] = [];
  for (let child = at(forest.first, node); child >= 0; child = at(forest.next, child)) children.push(child);
  const differ = (a: number, b: number) => sizes.map((size) => at(size, b) - at(size, a)).find((d) => d !== 0);
  return children.sort((a, b) => differ(a, b) ?? at(forest.item, a) - at(forest.item, b));
}
