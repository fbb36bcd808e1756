import type { Point } from '../geometry/shapes.ts';

/** Whether wires can come down through the deck at a point. */
export type ComesDown = (point: Point) => boolean;

/** Steps in which a clear way down is looked for, and how far; mm. */
const LOOK = { step: 10, most: 300, ways: 16 } as const;

/** The nearest place to a point where wires come down clear, itself first; null where none is near. */
export function clearNear(point: Point, comesDown: ComesDown): Point | null {
  if (comesDown(point)) return point;
  for (let off: number = LOOK.step; off <= LOOK.most; off += LOOK.step) {
    for (let i = 0; i < LOOK.ways; i += 1) {
      const turn = (2 * Math.PI * i) / LOOK.ways;
      const at: Point = [point[0] + off * Math.cos(turn), point[1] + off * Math.sin(turn)];
      if (comesDown(at)) return at;
    }
  }
  return null;
}
