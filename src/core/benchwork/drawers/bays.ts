import type { Envelope } from '../../stock/part.ts';
import type { Grid } from '../grid.ts';
import { tidy } from '../machining.ts';
import type { Outside } from '../outside.ts';

/** A clear box between struts behind one side, counted from the left as one stands before that side; bench coordinates, mm. */
export type Bay = {
  readonly side: Outside;
  readonly number: number;
  /** clear width along the side, and clear depth from the side's inner face to the next strut or board */
  readonly wide: number;
  readonly deep: number;
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
};

type Range = readonly [number, number];

/** Every bay a drawer could come out of on one side, from the left. */
export function baysBehind(grid: Grid, side: Outside): readonly Bay[] {
  const columns = clearRanges(grid.across, grid.length, grid.t);
  const rows = clearRanges(grid.along, grid.width, grid.t);
  const lengthwise = side === 'front' || side === 'back';
  const wide = lengthwise ? columns : rows;
  const first = lengthwise ? rows : columns;
  const deep = side === 'front' || side === 'left' ? first[0] : first[first.length - 1];
  // standing before the back or the left end, the left hand is at the far end of the axis
  const ordered = side === 'back' || side === 'left' ? [...wide].reverse() : wide;
  if (deep === undefined) return [];
  return ordered.map((range, i) =>
    bay(grid, { side, number: i + 1, x: lengthwise ? range : deep, y: lengthwise ? deep : range }),
  );
}

type Place = { readonly side: Outside; readonly number: number; readonly x: Range; readonly y: Range };

function bay(grid: Grid, { side, number, x, y }: Place): Bay {
  const [across, back] = [tidy(x[1] - x[0]), tidy(y[1] - y[0])];
  const [wide, deep] = side === 'front' || side === 'back' ? [across, back] : [back, across];
  return { side, number, wide, deep, min: [x[0], y[0], grid.sideUnderside], max: [x[1], y[1], grid.sideTop] };
}

function clearRanges(centres: readonly number[], outside: number, t: number): readonly Range[] {
  const edges = [t, ...centres.flatMap((c) => [tidy(c - t / 2), tidy(c + t / 2)]), tidy(outside - t)];
  return Array.from({ length: centres.length + 1 }, (_, i): Range => [edges[2 * i] ?? 0, edges[2 * i + 1] ?? 0]);
}

/** What stands in a bay: legs, shelves, motors whose space overlaps it. */
export function standingIn(bay: Bay, envelopes: readonly Envelope[]): readonly Envelope[] {
  return envelopes.filter((space) =>
    ([0, 1, 2] as const).every(
      (axis) => Math.min(space.max[axis], bay.max[axis]) - Math.max(space.min[axis], bay.min[axis]) > 1e-6,
    ),
  );
}
