import type { Bench } from '../../core/benchwork/bench.ts';
import { bounds } from '../../core/geometry/polygon.ts';
import type { Point, Vector } from '../../core/geometry/shapes.ts';
import { cross, dot, placed, times } from '../../core/geometry/vector.ts';
import { benchBays } from '../../core/wiring/bench-bays.ts';
import { nearestBay } from '../../core/wiring/routing/bays.ts';
import type { DrawingBook } from '../book.ts';
import type { Window } from '../outline.ts';
import {
  extentOfSeen,
  fromAbove,
  fromFront,
  fromLeft,
  fromRight,
  type Gaze,
  type Placed,
  placedParts,
  seen,
} from '../scene.ts';

type Side = 'front' | 'back' | 'left' | 'right';

/** A bay with what is fitted into it: a drawer between spacers, or a shelf on cleats. */
export type Bay = {
  /** `drawer.front-2`, with its bench before it where there are several */
  readonly id: string;
  readonly kind: 'drawer' | 'shelf';
  readonly bench: Bench;
  readonly side: Side;
  /** where it is fitted, as bays of the bench are named: `bay.2-1` */
  readonly bays: readonly string[];
  /** of the drawer or shelf, its spacers or cleats, and the two pieces they are screwed to */
  readonly own: readonly Placed[];
  readonly holders: readonly Placed[];
  readonly walls: readonly Placed[];
  readonly board: Placed;
  /** the hole in the board, as it is seen from before that side */
  readonly opening: Window;
};

const gazes: Readonly<Record<Side, Gaze>> = {
  front: fromFront,
  back: { right: [-1, 0, 0], up: [0, 0, 1], toward: [0, 1, 0] },
  left: fromLeft,
  right: fromRight,
};

/** From before the bay's side. */
export function gazeOf({ side }: Pick<Bay, 'side'>): Gaze {
  return gazes[side];
}

/** Across the bay, its side at the left of the paper. */
export function gazeAcross(bay: Pick<Bay, 'side'>): Gaze {
  const right = times(gazeOf(bay).toward, -1);
  const up: Vector = [0, 0, 1];
  return { right, up, toward: cross(right, up) };
}

const FITTED = /^(.*?)(drawer|shelf)\.(front|back|left|right)-(\d+)\.(?:face|panel)$/;

/** Bays with a drawer or a shelf; those that differ in nothing but their place are one, at the first. */
export function baysOf(notebook: DrawingBook): readonly Bay[] {
  const all = notebook.benches.flatMap((bench) => baysIn(notebook, bench));
  const keys = all.map(likeness);
  return all.flatMap((bay, i) => {
    if (keys.indexOf(keys[i] ?? '') !== i) return [];
    const alike = all.filter((_, j) => keys[j] === keys[i]);
    return [{ ...bay, bays: alike.flatMap(({ bays }) => bays) }];
  });
}

function baysIn(notebook: DrawingBook, bench: Bench): readonly Bay[] {
  const parts = notebook.parts.filter((part) => part.bench === bench.id);
  const cells = benchBays({ benches: [{ id: bench.id, place: { x: 0, y: 0, turn: 0 } }], parts });
  const pieces = placedParts(notebook.parts.filter((part) => part.bench === bench.id && part.chapter === 'benchwork'));
  return pieces.flatMap(({ place }): readonly Bay[] => {
    const [, prefix = '', kind, side, number] = FITTED.exec(place.id) ?? [];
    if (!isKind(kind) || !isSide(side)) return [];
    const id = `${prefix}${kind}.${side}-${number}`;
    const isHolder = (one: string) =>
      one.startsWith(kind === 'drawer' ? `${prefix}spacer.${side}-${number}-` : `${id}.cleat-`);
    const holders = pieces.filter((one) => isHolder(one.place.id));
    const own = pieces.filter((one) => one.place.id.startsWith(`${id}.`) && !isHolder(one.place.id));
    const walls = wallsOf(notebook, pieces, holders);
    const board = pieces.find((one) => one.place.id === `${prefix}${boards[side]}`);
    const opening = holeBefore(side, own, board);
    if (board === undefined || opening === null || holders.length !== 2 || walls.length !== 2) return [];
    const cell = nearestBay(cells, middleOf(own))?.bay;
    const bays = cell === undefined ? [] : [cell.id];
    return [{ id, kind, bench, side, bays, own, holders, walls, board, opening }];
  });
}

/** The middle of some pieces from above. */
function middleOf(pieces: readonly Placed[]): Point {
  const boxes = pieces.map((one) => extentOfSeen(seen(one, fromAbove)));
  const { low, high } = bounds(boxes.flatMap((box) => [box.low, box.high]));
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2];
}

function isKind(kind: string | undefined): kind is Bay['kind'] {
  return kind === 'drawer' || kind === 'shelf';
}

function isSide(side: string | undefined): side is Side {
  return side === 'front' || side === 'back' || side === 'left' || side === 'right';
}

function wallsOf({ joints }: DrawingBook, pieces: readonly Placed[], holders: readonly Placed[]): readonly Placed[] {
  return holders.flatMap(({ place: { id } }) => {
    const screwed = joints.find(({ held, between }) => held === 'screws' && between[1] === id);
    return pieces.filter(({ place }) => place.id === screwed?.between[0]);
  });
}

const boards: Readonly<Record<Side, string>> = {
  front: 'side.front',
  back: 'side.back',
  left: 'end.left',
  right: 'end.right',
};

/** The hole before what is fitted, in the board of its side: by place, since boards alike are one part. */
function holeBefore(side: Side, own: readonly Placed[], board: Placed | undefined): Window | null {
  const gaze = gazes[side];
  const boxes = own.map((one) => extentOfSeen(seen(one, gaze)));
  const middle = (Math.min(...boxes.map(({ low }) => low[0])) + Math.max(...boxes.map(({ high }) => high[0]))) / 2;
  const holes = board?.part.features.flatMap((feature): readonly Window[] => {
    if (feature.kind !== 'opening') return [];
    const { x0, x1, y0, y1 } = feature.patch;
    const corners = [placed(board.place.pose, [x0, y0, 0]), placed(board.place.pose, [x1, y1, 0])];
    const along = (axis: Vector) => corners.map((corner) => dot(corner, axis)).toSorted((a, b) => a - b);
    const [[u0 = 0, u1 = 0], [v0 = 0, v1 = 0]] = [along(gaze.right), along(gaze.up)];
    return [{ x0: u0, x1: u1, y0: v0, y1: v1 }];
  });
  return holes?.find((hole) => hole.x0 < middle && middle < hole.x1) ?? null;
}

/** What a bay looks like from before it, measured from its left wall: two bays with the same are drawn once. */
function likeness(bay: Bay): string {
  const gaze = gazeOf(bay);
  const [left] = bay.walls.map((wall) => extentOfSeen(seen(wall, gaze)).high[0]).toSorted((a, b) => a - b);
  const from = left ?? 0;
  const rounded = (mm: number) => Math.round(mm * 10 + 1e-6);
  const boxes = [...bay.own, ...bay.holders].map((one) => {
    const { low, high } = extentOfSeen(seen(one, gaze));
    return [one.part.role, ...[low[0] - from, high[0] - from, low[1], high[1]].map(rounded)];
  });
  return JSON.stringify([bay.bench.id, bay.kind, bay.side, boxes]);
}
