import type { Bench } from '../core/benchwork/bench.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingOptions } from './drawing.ts';
import { extentOfSeen, fromAbove, type Placed, placedParts, type Seen, seen } from './scene.ts';
import type { View } from './view.ts';

export type BenchViewKind = 'plan' | 'deck' | 'front' | 'left' | 'section';

export type BenchAsk = {
  readonly notebook: DrawingBook;
  readonly bench: Bench;
  readonly options: DrawingOptions;
};

/** A view that is ready to be drawn at any scale: what does not hang on the scale is worked out once. */
export type Scalable = (scale: number) => Block;

export type Extents = { readonly u0: number; readonly u1: number; readonly v0: number; readonly v1: number };

export function piecesOf({ notebook, bench }: Pick<BenchAsk, 'notebook' | 'bench'>): readonly Placed[] {
  return placedParts(notebook.parts.filter((part) => part.bench === bench.id && part.chapter === 'benchwork'));
}

export function viewNamed(name: string, scale: number): View {
  return { name, scale, origin: [0, 0], breaks: [] };
}

export function extents(pieces: readonly Seen[]): Extents {
  const boxes = pieces.map(extentOfSeen);
  return {
    u0: Math.min(...boxes.map(({ low }) => low[0])),
    u1: Math.max(...boxes.map(({ high }) => high[0])),
    v0: Math.min(...boxes.map(({ low }) => low[1])),
    v1: Math.max(...boxes.map(({ high }) => high[1])),
  };
}

export function isFrame({ role }: Seen): boolean {
  return role === 'side' || role === 'end' || role === 'strut';
}

/** Faces of the frame's pieces that stand across an axis: where a chain along it stops. */
export function stopsOf(pieces: readonly Seen[], axis: 0 | 1): readonly number[] {
  return pieces.filter(isFrame).flatMap((piece) => {
    const { low, high } = extentOfSeen(piece);
    const other = axis === 0 ? 1 : 0;
    return high[axis] - low[axis] < high[other] - low[other] ? [low[axis], high[axis]] : [];
  });
}

/** The plane of the section: the middle of the widest bay between frame pieces across the length. */
export function sectionPlane(notebook: DrawingBook, bench: Bench): Plane {
  const plan = placedParts(
    notebook.parts.filter((part) => part.bench === bench.id && part.chapter === 'benchwork'),
  ).map((one) => seen(one, fromAbove));
  const stops = stopsOf(plan, 0).toSorted((a, b) => a - b);
  const bays = stops.slice(1).map((to, i) => ({ from: stops[i] ?? 0, to }));
  const widest = bays.reduce((best, bay) => (bay.to - bay.from > best.to - best.from + 0.01 ? bay : best), {
    from: 0,
    to: 0,
  });
  if (widest.to <= widest.from) return { at: bench.length / 2, half: 0 };
  return { at: (widest.from + widest.to) / 2, half: (widest.to - widest.from) / 2 };
}

/** Where the section is cut, and half the bay it is cut in, mm. */
export type Plane = { readonly at: number; readonly half: number };
