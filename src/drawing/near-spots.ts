import type { Extent, Spot } from './mark.ts';

/** How far apart two places on paper are, mm. */
export function distance([ax, ay]: Spot, [bx, by]: Spot): number {
  return Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2);
}

/** Places in a box, `step` apart both ways from its upper left corner; how far off each is, never less than it lies off `about`; mm. */
export type SpotGrid = {
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
function spotsWithin({ within, step, about }: SpotGrid, reach: number): readonly Spot[] {
  const stops = (low: number, high: number, from: number, to: number) => {
    const first = Math.max(0, Math.ceil((from - reach - low) / step));
    const last = Math.min(Math.floor((high - low) / step), Math.floor((to + reach - low) / step));
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => low + (first + i) * step);
  };
  const columns = stops(within.x0, within.x1, about.x0, about.x1);
  return stops(within.y0, within.y1, about.y0, about.y1).flatMap((y) => columns.map((x): Spot => [x, y]));
}
