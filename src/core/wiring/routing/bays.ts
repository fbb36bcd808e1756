import type { Point } from '../../geometry/shapes.ts';
import type { Footprint, Range, Site, Wall } from './site.ts';

/** A clear cell between walls under the deck, counted from the left and from the front of its bench; mm. */
export type Bay = {
  readonly id: string;
  readonly bench: string;
  readonly column: number;
  readonly row: number;
  readonly x: Range;
  readonly y: Range;
};

/** Every bay of every bench, named by column and row: `bay.2-1`; with several benches, the bench's id before it. */
export function baysOf({ footprints, walls }: Pick<Site, 'footprints' | 'walls'>): readonly Bay[] {
  const several = footprints.length > 1;
  return footprints.flatMap((footprint) => {
    const mine = walls.filter(({ bench }) => bench === footprint.bench);
    const columns = clear(mine, 'y', [footprint.low[0], footprint.high[0]]);
    const rows = clear(mine, 'x', [footprint.low[1], footprint.high[1]]);
    return columns.flatMap((x, i) =>
      rows.map((y, j) => ({
        id: `${several ? `${footprint.bench}.` : ''}bay.${i + 1}-${j + 1}`,
        ...{ bench: footprint.bench, column: i + 1, row: j + 1, x, y },
      })),
    );
  });
}

/** A bay's own number, column and row: `2-1` of `east.bay.2-1`. */
export function bayNumber(id: string): string {
  return id.slice(id.lastIndexOf('.') + 1);
}

/** What a bay is called wherever it is named: `Bay 2-1`, of several benches `Bay 2-1 of east`. */
export function bayName(id: string): string {
  const bench = id.endsWith(`.bay.${bayNumber(id)}`) ? id.slice(0, -`.bay.${bayNumber(id)}`.length) : '';
  return `Bay ${bayNumber(id)}${bench === '' ? '' : ` of ${bench}`}`;
}

/** How bays are counted, to be said where their names stand. */
export const BAY_COUNT =
  'Bay 2-1 is the second from the left and the first from the front, as one stands before the front.';

/** What walls along one axis leave clear across it; only walls that run most of the bench part it. */
function clear(walls: readonly Wall[], along: 'x' | 'y', [low, high]: Range): readonly Range[] {
  const longest = walls
    .filter((wall) => wall.along === along)
    .reduce((most, { span }) => Math.max(most, span[1] - span[0]), 0);
  const faces = walls
    .filter((wall) => wall.along === along && wall.span[1] - wall.span[0] > longest / 2)
    .map(({ faces: own }) => own)
    .toSorted((a, b) => a[0] - b[0]);
  const edges = [low, ...faces.flat(), high];
  return edges
    .flatMap((edge, i): readonly Range[] => (i % 2 === 0 ? [[edge, edges[i + 1] ?? edge]] : []))
    .filter(([a, b]) => b - a > 20);
}

/** The bay a point lies under or over; null on a wall and outside. */
export function bayAt(bays: readonly Bay[], [x, y]: Point): Bay | null {
  return bays.find((bay) => x >= bay.x[0] && x <= bay.x[1] && y >= bay.y[0] && y <= bay.y[1]) ?? null;
}

/** The bay nearest to a point, and the point of it that lies nearest. */
export function nearestBay(bays: readonly Bay[], point: Point): { readonly bay: Bay; readonly point: Point } | null {
  const all = bays.map((bay) => {
    const into = (value: number, [low, high]: Range) => Math.min(high, Math.max(low, value));
    const inside: Point = [into(point[0], bay.x), into(point[1], bay.y)];
    return { bay, point: inside, off: Math.hypot(inside[0] - point[0], inside[1] - point[1]) };
  });
  const [first] = all;
  if (first === undefined) return null;
  return all.reduce((best, one) => (one.off < best.off - 1e-9 ? one : best), first);
}

/** The footprint of what bounds a bench's frame. */
export function footprintOf(bench: string, walls: readonly Wall[]): Footprint | null {
  const mine = walls.filter((wall) => wall.bench === bench);
  const xs = mine.flatMap(({ along, span, faces }) => (along === 'x' ? span : faces));
  const ys = mine.flatMap(({ along, span, faces }) => (along === 'x' ? faces : span));
  if (mine.length === 0) return null;
  const edge = (values: readonly number[]): Range => [
    values.reduce((least, one) => Math.min(least, one), Number.POSITIVE_INFINITY),
    values.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY),
  ];
  const [x, y] = [edge(xs), edge(ys)];
  return { bench, low: [x[0], y[0]], high: [x[1], y[1]] };
}
