import type { Point } from '../geometry/shapes.ts';
import { ringsAbout } from './rings.ts';

/** Whether wires can come down through the deck at a point. */
export type ComesDown = (point: Point) => boolean;

/** How far a clear way down is looked for, mm. */
const MOST = 300;

/** The nearest place to a point where wires come down clear, itself first; null where none is near. */
export function clearNear(point: Point, comesDown: ComesDown): Point | null {
  if (comesDown(point)) return point;
  return ringsAbout(point, MOST).find(comesDown) ?? null;
}
