import type { Bench } from '../benchwork/bench.ts';
import { bounds } from '../geometry/polygon.ts';
import { fromWorld, standing, toWorld } from '../geometry/pose.ts';
import type { Point, Pose } from '../geometry/shapes.ts';
import type { Domain } from './grid.ts';

/** A bench as land lies on it: its outline on the notebook's plane, and how it stands there. */
export type Site = { readonly bench: Bench; readonly pose: Pose; readonly loop: readonly Point[] };

/** The benches with their outlines, in order. */
export function sitesOf(benches: readonly Bench[]): readonly Site[] {
  return benches.map((bench) => {
    const pose = standing([bench.place.x, bench.place.y], bench.place.turn);
    const corners: readonly Point[] = [
      [0, 0],
      [bench.length, 0],
      [bench.length, bench.width],
      [0, bench.width],
    ];
    return { bench, pose, loop: corners.map((corner) => toNotebook(pose, corner)) };
  });
}

/** A point of a bench's plane on the notebook's, mm. */
export function toNotebook(pose: Pose, [x, y]: Point): Point {
  const [u, v] = toWorld(pose, [x, y, 0]);
  return [u, v];
}

/** A point of the notebook's plane on a bench's, mm. */
export function toBench(pose: Pose, [x, y]: Point): Point {
  const [u, v] = fromWorld(pose, [x, y, 0]);
  return [u, v];
}

/** The rectangle around all benches. */
export function domainOf(sites: readonly Site[]): Domain {
  return bounds(sites.flatMap(({ loop }) => loop));
}
