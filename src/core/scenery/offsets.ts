import { bounds } from '../geometry/polygon.ts';
import type { Point, Polygon } from '../geometry/shapes.ts';
import { chord } from './distance.ts';

/** A station of a template: how far along it stands, and where its line passes the outline, from the bottom up; mm. */
export type Station = { readonly at: number; readonly crossings: readonly number[] };

/** Stations at the ends are read this far inside, where a straight end is still crossed; mm. */
const INSIDE = 0.01;

/** A template's offsets at even stations from its lower left corner, both ends with them; all mm. */
export function offsets(shape: Polygon, pitch: number): readonly Station[] {
  const { low, high } = bounds(shape.outline);
  const length = high[0] - low[0];
  const turned = [shape.outline, ...shape.holes].map((loop) => loop.map(([x, y]): Point => [y - low[1], x - low[0]]));
  return evenStops(length, pitch).map((at) => {
    const read = Math.min(length - INSIDE, Math.max(INSIDE, at));
    return { at, crossings: turned.flatMap((loop) => chord(loop, read)).toSorted((a, b) => a - b) };
  });
}

/** 0, every whole pitch and the end. */
export function evenStops(length: number, pitch: number): readonly number[] {
  const count = Math.ceil(length / pitch - 1e-6);
  return Array.from({ length: count + 1 }, (_, i) => (i === count ? length : i * pitch));
}

/** Sides shorter than this make a curve, and a turn sharper than this (25 degrees) between longer ones a corner; mm, rad. */
const SIDE = 6;
const TURN = (25 * Math.PI) / 180;

/** The sharp corners of a template, from its lower left corner; mm. */
export function sharpCorners({ outline, holes }: Polygon): readonly Point[] {
  const { low } = bounds(outline);
  return [outline, ...holes].flatMap((loop) =>
    loop.flatMap((corner, i): readonly Point[] => {
      const before = awayFrom(loop, i, -1);
      const after = awayFrom(loop, i, 1);
      const cross = (corner[0] - before[0]) * (after[1] - corner[1]) - (corner[1] - before[1]) * (after[0] - corner[0]);
      const along = (corner[0] - before[0]) * (after[0] - corner[0]) + (corner[1] - before[1]) * (after[1] - corner[1]);
      return Math.abs(Math.atan2(cross, along)) > TURN ? [[corner[0] - low[0], corner[1] - low[1]]] : [];
    }),
  );
}

/** The first corner of a loop, going one way, that is a side's length off. */
function awayFrom(loop: readonly Point[], from: number, way: 1 | -1): Point {
  const start = loop[from] ?? [0, 0];
  for (let k = 1; k < loop.length; k += 1) {
    const point = loop[(from + way * k + loop.length * 2) % loop.length] ?? start;
    if (Math.hypot(point[0] - start[0], point[1] - start[1]) >= SIDE) return point;
  }
  return start;
}
