import { difference } from '../geometry/booleans.ts';
import { area, rectangle } from '../geometry/polygon.ts';
import type { HalfSpace, Point, Polygon } from '../geometry/shapes.ts';
import { bite } from './bite.ts';
import type { Blank, Feature } from './part.ts';
import { taperCut } from './slant.ts';

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
  if (feature.kind === 'taper') {
    const cut = taperCut(feature);
    return cut === null ? [] : [beyond(blank, cut)];
  }
  const taken = bite(blank, feature);
  return taken === null || taken.to - taken.from < blank.thickness ? [] : taken.loops;
}

/** A rectangle that covers all of a blank beyond a line. */
function beyond(blank: Blank, { normal: [nx, ny], offset }: HalfSpace): readonly Point[] {
  const far = 2 * (blank.length + blank.width);
  const foot: Point = [nx * offset, ny * offset];
  const corner = (along: number, out: number): Point => [
    foot[0] - ny * along + nx * out,
    foot[1] + nx * along + ny * out,
  ];
  return [corner(far, 0), corner(-far, 0), corner(-far, far), corner(far, far)];
}
