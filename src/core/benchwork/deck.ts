import type { Box, Pose } from '../geometry/shapes.ts';
import type { Feature, Joint, MatingMark } from '../stock/part.ts';
import type { Seam } from './bench.ts';
import type { Grid } from './grid.ts';
import type { DeckInput } from './input.ts';
import type { Instance } from './instance.ts';
import { joint } from './joints.ts';
import { tidy } from './machining.ts';

/** A seam at a place along x or y, and the strut that bears it. */
export type SeamLine = { readonly along: 'x' | 'y'; readonly at: number; readonly on: string };

/** The seams of a deck whose struts exist, from left to right, then from front to back. */
export function seamLines(grid: Grid, deck: DeckInput): readonly SeamLine[] {
  const lines = deck.seams.flatMap(({ parallelTo, on }): readonly SeamLine[] => {
    const [family, prefix] = parallelTo === 'y' ? [grid.across, 'strut.across-'] : [grid.along, 'strut.along-'];
    const at = on.startsWith(prefix) ? family[Number(on.slice(prefix.length)) - 1] : undefined;
    return at === undefined ? [] : [{ along: parallelTo, at, on }];
  });
  return lines.sort((a, b) => (a.along === b.along ? a.at - b.at : a.along === 'y' ? -1 : 1));
}

/** Seams with what bears each side of them: half the strut. */
export function seams(grid: Grid, lines: readonly SeamLine[], bench: string): readonly Seam[] {
  return lines.map((line, i) => ({
    id: `deck.seam-${i + 1}`,
    bench,
    from: line.along === 'y' ? [line.at, 0] : [0, line.at],
    to: line.along === 'y' ? [line.at, grid.width] : [grid.length, line.at],
    on: line.on,
    bearing: [tidy(grid.t / 2), tidy(grid.t / 2)],
  }));
}

type Range = { readonly from: number; readonly to: number };

/** The deck's pieces, row by row from the front, each cut larger by the overhang at the outside edges to be trimmed. */
export function deckPieces(grid: Grid, deck: DeckInput, lines: readonly SeamLine[]): readonly Instance[] {
  const columns = ranges(lines, 'y', grid.length);
  const rows = ranges(lines, 'x', grid.width);
  const pieces = rows.flatMap((y) => columns.map((x) => ({ x, y })));
  return pieces.map(({ x, y }, i) => deckPiece(grid, deck, { x, y, number: i + 1 }));
}

function ranges(lines: readonly SeamLine[], along: 'x' | 'y', outside: number): readonly Range[] {
  const cuts = [0, ...lines.filter((line) => line.along === along).map(({ at }) => at), outside];
  return cuts.slice(1).map((to, i) => ({ from: cuts[i] ?? 0, to }));
}

type Piece = { readonly x: Range; readonly y: Range; readonly number: number };

function deckPiece(grid: Grid, deck: DeckInput, { x, y, number }: Piece): Instance {
  const over = overhangs(grid, deck, { x, y });
  const blank = {
    length: tidy(x.to - x.from + over.left + over.right),
    width: tidy(y.to - y.from + over.front + over.back),
    thickness: grid.deck?.thickness.mean ?? 0,
    grain: 'length',
  } as const;
  const pose: Pose = {
    origin: [x.from - over.left, y.from - over.front, grid.sideTop],
    x: [1, 0, 0],
    y: [0, 1, 0],
    z: [0, 0, 1],
  };
  return {
    id: `deck.${number}`,
    role: 'deck',
    material: 'deck',
    label: `D${number}`,
    blank,
    features: trims(over),
    pose,
    marks: deckMarks(blank.length, blank.width, deck),
  };
}

type Over = { readonly left: number; readonly right: number; readonly front: number; readonly back: number };

/** The overhang lies on the frame's outside, away from the flush corner; never at a seam. */
function overhangs(grid: Grid, deck: DeckInput, { x, y }: { readonly x: Range; readonly y: Range }): Over {
  const o = deck.overhang;
  const flushLeft = deck.flush.endsWith('left');
  const flushFront = deck.flush.startsWith('front');
  return {
    left: !flushLeft && x.from === 0 ? o : 0,
    right: flushLeft && x.to === grid.length ? o : 0,
    front: !flushFront && y.from === 0 ? o : 0,
    back: flushFront && y.to === grid.width ? o : 0,
  };
}

function trims(over: Over): readonly Feature[] {
  const edges = [
    ['left', over.left],
    ['right', over.right],
    ['bottom', over.front],
    ['top', over.back],
  ] as const;
  return edges.filter(([, by]) => by > 0).map(([edge, by]) => ({ id: '', kind: 'trim', edge, by }));
}

function deckMarks(length: number, width: number, deck: DeckInput): readonly MatingMark[] {
  return [
    { text: 'up', side: 'face', at: [length / 2, width / 2], kind: 'up' },
    { text: 'left', side: 'back', at: [Math.min(40, length / 4), width / 2], kind: 'end' },
    { text: 'right', side: 'back', at: [length - Math.min(40, length / 4), width / 2], kind: 'end' },
    { text: `flush at ${deck.flush}`, side: 'back', at: [length / 2, width / 2], kind: 'end' },
  ];
}

/** A deck piece on everything of the frame that it covers, and against the pieces beside it. */
export function deckJoints(pieces: readonly Placed[], frame: readonly Placed[]): readonly Joint[] {
  const borne = pieces.flatMap((piece) =>
    frame
      .filter((part) => meet(part.box, piece.box))
      .map((part): Joint => ({ ...joint('bearing', [part.id, piece.id], 0), held: 'screws' })),
  );
  const beside = pieces.flatMap((piece, i) =>
    pieces
      .slice(i + 1)
      .filter((other) => meet(piece.box, other.box))
      .map((other): Joint => ({ ...joint('butt', [piece.id, other.id], 0), held: 'loose' })),
  );
  return [...borne, ...beside];
}

/** An instance and the box it fills. */
export type Placed = { readonly id: string; readonly box: Box };

/** Two boxes that share a face, or more: touching along one axis and overlapping along the other two. */
function meet(a: Box, b: Box): boolean {
  const overlap = ([0, 1, 2] as const).map(
    (axis) => Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]),
  );
  return overlap.every((o) => o > -1e-6) && overlap.filter((o) => o > 1e-6).length >= 2;
}
