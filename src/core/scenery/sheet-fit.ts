import { bounds, rectangle } from '../geometry/polygon.ts';
import type { Point, Polygon } from '../geometry/shapes.ts';
import type { StockSize } from '../stock/goods.ts';
import { clipped } from './clip.ts';

/** A template's pieces, each with room on a sheet, and the lines they are joined along. */
export type Pieces = {
  readonly pieces: readonly Polygon[];
  readonly joints: readonly (readonly [Point, Point])[];
};

/** Joints of neighbouring layers lie this far apart where the sheet allows it, mm. */
const STAGGER = 60;

/** A template cut into as few pieces of like size as the sheets ask for; odd layers have their joints shifted. */
export function fitToSheets(
  template: Polygon,
  sizes: readonly Pick<StockSize, 'length' | 'width'>[],
  layer: number,
): Pieces {
  const { low, high } = bounds(template.outline);
  const [wide, deep] = [high[0] - low[0], high[1] - low[1]];
  const way = fewest(wide, deep, sizes);
  if (way === null || (way.columns === 1 && way.rows === 1)) return { pieces: [template], joints: [] };
  const shift = layer % 2 === 0 ? 0 : STAGGER;
  const xs = stops(low[0], wide, { count: way.columns, most: way.across, shift });
  const ys = stops(low[1], deep, { count: way.rows, most: way.up, shift });
  const pieces = ys
    .slice(1)
    .flatMap((y1, j) =>
      xs.slice(1).flatMap((x1, i) => clipped([template], rectangle([xs[i] ?? x1, ys[j] ?? y1], [x1, y1]))),
    );
  const joints = [
    ...xs.slice(1, -1).map(
      (x) =>
        [
          [x, low[1]],
          [x, high[1]],
        ] as const,
    ),
    ...ys.slice(1, -1).map(
      (y) =>
        [
          [low[0], y],
          [high[0], y],
        ] as const,
    ),
  ];
  return { pieces, joints };
}

type Way = { readonly columns: number; readonly rows: number; readonly across: number; readonly up: number };

/** The sheet and turn that ask for the fewest pieces. */
function fewest(wide: number, deep: number, sizes: readonly Pick<StockSize, 'length' | 'width'>[]): Way | null {
  const ways = sizes.flatMap(({ length, width }): readonly Way[] => [
    { columns: Math.ceil(wide / length - 1e-9), rows: Math.ceil(deep / width - 1e-9), across: length, up: width },
    { columns: Math.ceil(wide / width - 1e-9), rows: Math.ceil(deep / length - 1e-9), across: width, up: length },
  ]);
  return ways.reduce<Way | null>(
    (best, way) => (best === null || way.columns * way.rows < best.columns * best.rows ? way : best),
    null,
  );
}

type Splitting = { readonly count: number; readonly most: number; readonly shift: number };

function stops(start: number, size: number, { count, most, shift }: Splitting): readonly number[] {
  const each = size / count;
  const slack = Math.min(shift, most - each, each / 2);
  return Array.from({ length: count + 1 }, (_, i) => start + i * each + (i === 0 || i === count ? 0 : slack));
}
