import type { Point } from './shapes.ts';

/** How far apart two points of a plane are, mm. */
export function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/** The place of a straight, its ends with it, that is nearest to a point; its start where it has no length. mm. */
export function nearestOnStraight(from: Point, to: Point, point: Point): Point {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : ((point[0] - from[0]) * dx + (point[1] - from[1]) * dy) / square;
  const held = Math.min(1, Math.max(0, share));
  return [from[0] + dx * held, from[1] + dy * held];
}
