import type { Point } from '../geometry/shapes.ts';
import { ringsAbout } from './rings.ts';
import { type Bay, nearestBay } from './routing/bays.ts';
import type { Block } from './routing/blocks.ts';
import { blocksIn, type LaidLimbs } from './routing/tap.ts';
import type { Under } from './under.ts';

/** A module or a switch as sold, with its screws: length, width and height; common practice, no source. mm */
export const UNIT_SIZE = [60, 40, 20] as const;

/** How far room is looked for, mm. */
const MOST = 250;

/** The nearest place where a unit fits under the deck, off walls, bus and all that stands there; null where none is near. */
export function roomNear(under: Under, { limbs, z }: LaidLimbs, near: Point): Point | null {
  const home = nearestBay(under.bays, near);
  if (home === null) return null;
  const { radius } = under.site;
  const { over } = blocksIn(under, home.bay, Math.min(z, under.underside - UNIT_SIZE[2]));
  const bus = limbs.flatMap(({ path }) => path.map((to, i) => blockAbout(path[i - 1] ?? to, to, radius)));
  return ringsAbout(home.point, MOST).find((at) => fits(at, home.bay, [...over, ...bus])) ?? null;
}

function fits([x, y]: Point, bay: Bay, blocks: readonly Block[]): boolean {
  const [x0, x1] = [x - UNIT_SIZE[0] / 2, x + UNIT_SIZE[0] / 2];
  const [y0, y1] = [y - UNIT_SIZE[1] / 2, y + UNIT_SIZE[1] / 2];
  const inside = x0 >= bay.x[0] && x1 <= bay.x[1] && y0 >= bay.y[0] && y1 <= bay.y[1];
  return inside && !blocks.some((one) => x1 > one.x[0] && x0 < one.x[1] && y1 > one.y[0] && y0 < one.y[1]);
}

function blockAbout(from: Point, to: Point, radius: number): Block {
  return {
    x: [Math.min(from[0], to[0]) - radius, Math.max(from[0], to[0]) + radius],
    y: [Math.min(from[1], to[1]) - radius, Math.max(from[1], to[1]) + radius],
  };
}
