import { EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { union } from './booleans.ts';
import { directed } from './polygon.ts';
import type { Point, Polygon } from './shapes.ts';

/** Decimal places the offsetting works in, and how far an arc may lie off its circle; mm. */
const PRECISION = 4;
const ARC = 0.01;

/** Outlines grown by a distance, shrunk by a negative one; corners stay square up to twice the distance. mm. */
export function grown(loops: readonly (readonly Point[])[], by: number): readonly Polygon[] {
  const paths = loops.map((loop) => directed(loop, 1).map(([x, y]) => ({ x, y })));
  const moved = inflatePathsD(paths, by, JoinType.Miter, EndType.Polygon, 2, PRECISION, ARC);
  return union(
    moved.map((path) => path.map(({ x, y }): Point => [x, y])),
    [],
  );
}
