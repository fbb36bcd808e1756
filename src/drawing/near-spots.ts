import type { Extent, Spot } from './mark.ts';

/** How far apart two places on paper are, mm. */
export function distance([ax, ay]: Spot, [bx, by]: Spot): number {
  return Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2);
}

/** Places in a box, `step` apart both ways from `origin`, which is at or before its upper left corner; how far off each is, never less than it lies off `about`; mm. */
export type SpotGrid = {
  readonly origin: Spot;
  readonly within: Extent;
  readonly step: number;
  readonly about: Extent;
  readonly far: (spot: Spot) => number;
};

/** How far off places are looked at before farther ones are, mm of paper. */
const REACHES = [10, 30, 90, Number.POSITIVE_INFINITY];

/** The places of a grid, the nearest first: those farther off are worked out only when no nearer one would do. */
export function* nearestFirst(grid: SpotGrid): Iterable<Spot> {
  let known = Number.NEGATIVE_INFINITY;
  for (const reach of REACHES) {
    const from = known;
    const band = spotsWithin(grid, reach)
      .map((spot) => ({ spot, off: grid.far(spot) }))
      .filter(({ off }) => off > from && off <= reach)
      .sort((a, b) => a.off - b.off || a.spot[1] - b.spot[1] || a.spot[0] - b.spot[0]);
    for (const { spot } of band) yield spot;
    known = reach;
  }
}

/** The grid's places not farther off than `reach` to any side. */
function spotsWithin({ origin: [left, top], within, step, about }: SpotGrid, reach: number): readonly Spot[] {
  const stops = (zero: number, low: number, high: number) => {
    const first = Math.ceil((low - zero) / step);
    const last = Math.floor((high - zero) / step);
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => zero + (first + i) * step);
  };
  const columns = stops(left, Math.max(within.x0, about.x0 - reach), Math.min(within.x1, about.x1 + reach));
  const rows = stops(top, Math.max(within.y0, about.y0 - reach), Math.min(within.y1, about.y1 + reach));
  return rows.flatMap((y) => columns.map((x): Spot => [x, y]));
}
