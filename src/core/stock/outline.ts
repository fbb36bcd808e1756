import { difference } from '../geometry/booleans.ts';
import { area, rectangle } from '../geometry/polygon.ts';
import type { Point, Polygon } from '../geometry/shapes.ts';
import { bite } from './bite.ts';
import type { Blank, Feature } from './part.ts';
import { type Taper, taperCut } from './slant.ts';

/** The geometry of a part without its places. */
export type Shape = { readonly blank: Blank; readonly features: readonly Feature[] };

const NOTHING: Polygon = { outline: [], holes: [] };

/**
 * The true shape of a part in its plane, mm: everything that goes through the thickness is taken off; a mitred edge
 * counts at its long side. The largest piece, should the features cut it apart; empty when nothing is left.
 */
export function partOutline(part: Shape): Polygon {
  const cutters = part.features.flatMap((feature) => throughLoops(part.blank, feature));
  const pieces = difference([blankLoop(part.blank)], cutters);
  return pieces.reduce((best, piece) => (area(piece) > area(best) ? piece : best), NOTHING);
}

/** The blank's rectangle, mm. */
export function blankLoop(blank: Blank): readonly Point[] {
  return rectangle([0, 0], [blank.length, blank.width]);
}

function throughLoops(blank: Blank, feature: Feature): readonly (readonly Point[])[] {
  if (feature.kind === 'taper') return beyond(blank, feature);
  const taken = bite(blank, feature);
  return taken === null || taken.to - taken.from < blank.thickness ? [] : taken.loops;
}

/** All of a blank beyond a taper's line; the taper's own points are corners of the loop, so that they stay exact. */
function beyond(blank: Blank, taper: Taper): readonly (readonly Point[])[] {
  const cut = taperCut(taper);
  if (cut === null) return [];
  const [nx, ny] = cut.normal;
  const far = 2 * (blank.length + blank.width);
  const along = ([x, y]: Point) => x * ny - y * nx;
  const [first, last] = along(taper.from) < along(taper.to) ? [taper.from, taper.to] : [taper.to, taper.from];
  const off = ([x, y]: Point, a: number, out: number): Point => [x + ny * a + nx * out, y - nx * a + ny * out];
  return [[off(first, -far, 0), first, last, off(last, far, 0), off(last, far, far), off(first, -far, far)]];
}
