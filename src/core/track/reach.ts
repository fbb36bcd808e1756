import { curvatureOn } from './element.ts';
import { elementOf, type LineWay } from './line.ts';
import type { Train } from './train.schema.ts';

/** What of a vehicle decides how far it reaches sideways; mm. */
export type Car = Pick<Train, 'body' | 'width' | 'bogie-centres' | 'wheelbase'>;

/** Half the distance between the points that stay on the middle of the track, mm. */
function halfCentres({ 'bogie-centres': centres, wheelbase }: Car): number {
  return (centres > 0 ? centres : wheelbase) / 2;
}

/** How far the ends of a vehicle reach out of a curve of a radius, from the middle of the track; mm. */
export function outerReach(car: Car, radius: number): number {
  const half = car.width / 2;
  if (!Number.isFinite(radius)) return half;
  return Math.hypot(chordMiddle(car, radius) + half, car.body / 2) - radius;
}

/** How far the middle of a vehicle reaches into a curve of a radius, from the middle of the track; mm. */
export function innerReach(car: Car, radius: number): number {
  return (Number.isFinite(radius) ? radius - chordMiddle(car, radius) : 0) + car.width / 2;
}

/** From the curve's centre to the middle of the vehicle's own line; 0 for one that the curve has no room for. */
function chordMiddle(car: Car, radius: number): number {
  return Math.sqrt(Math.max(0, radius * radius - halfCentres(car) ** 2));
}

/** Reach towards a side of a track with a curvature, 1/mm, positive where it bends to that side; mm. */
export function reachTowards(car: Car, bend: number): number {
  if (bend === 0) return car.width / 2;
  return bend > 0 ? innerReach(car, 1 / bend) : outerReach(car, -1 / bend);
}

/** A place on a line and a side of it: 1 left, -1 right. */
type SideAt = { readonly at: number; readonly side: number };

/** How far a vehicle reaches to a side of a line at a place, on the tightest bend within half its length; mm. */
export function reachNear(car: Car, line: Bending, { at, side }: SideAt): number {
  const bends = [-car.body / 2, 0, car.body / 2].map((by) => side * bendAt(line, at + by));
  return Math.max(...bends.map((bend) => reachTowards(car, bend)));
}

type Bending = Pick<LineWay, 'elements' | 'length'>;

function bendAt(line: Bending, at: number): number {
  const within = Math.min(line.length, Math.max(0, at));
  const element = elementOf(line, within);
  return element === null ? 0 : curvatureOn(element, Math.min(element.length, Math.max(0, within - element.from)));
}
