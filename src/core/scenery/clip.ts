import { difference, intersection } from '../geometry/booleans.ts';
import { grown } from '../geometry/offset.ts';
import { area } from '../geometry/polygon.ts';
import type { Point, Polygon } from '../geometry/shapes.ts';
import type { Region } from './land.ts';

/** Pieces smaller than this are dust, mm2. */
const DUST = 1;

/** What of a region lies inside a loop and outside the cutters. */
export function clipped(region: Region, loop: readonly Point[], cutters: readonly (readonly Point[])[] = []): Region {
  return region
    .flatMap(({ outline, holes }) =>
      difference(
        intersection([outline], [loop]).map((piece) => piece.outline),
        [...holes, ...cutters],
      ),
    )
    .filter((piece) => area(piece) > DUST);
}

/** A region less what of it lies deeper inside than `wall`; holes keep their wall too. */
export function deepInside(region: Region, wall: number): Region {
  return region.flatMap(({ outline, holes }) =>
    difference(
      grown([outline], -wall).map((piece) => piece.outline),
      holes.length === 0 ? [] : grown(holes, wall).map((piece) => piece.outline),
    ),
  );
}

/** Area of a region, mm2. */
export function regionArea(region: Region): number {
  return region.reduce((sum, polygon) => sum + area(polygon), 0);
}

/** Every point of a region moved. */
export function mapped(region: Region, move: (point: Point) => Point): Region {
  return region.map(
    ({ outline, holes }): Polygon => ({ outline: outline.map(move), holes: holes.map((hole) => hole.map(move)) }),
  );
}
