import type { Point } from '../geometry/shapes.ts';
import type { ComesDown } from './clear-way.ts';
import { bayAt } from './routing/bays.ts';
import { OFF, type Range, widened } from './routing/site.ts';
import { inward, type Under } from './under.ts';

/** What reaches this near to the deck's underside stops a wire that comes down through it, mm. */
const NEAR_DECK = 40;

/** Whether wires come down clear at a point of the notebook: into a bay, off its walls, and past what hangs there. */
export function comesDown(under: Under): ComesDown {
  const { bays } = under;
  return (point) => {
    const place = inward(under, point);
    const bay = bayAt(bays, place);
    if (bay === null) return false;
    const offWalls = [bay.x, bay.y].every(([low, high], i) => isBetween(place[i] ?? 0, [low + OFF, high - OFF]));
    return offWalls && hanging(under, place) === null;
  };
}

/** What stops a wire that would come down at a point of the notebook: a board, or what hangs or stands below; null for none. */
export function belowAt(under: Under, point: Point): string | null {
  const place = inward(under, point);
  const walls = under.site.walls.filter(({ along, faces, span }) => {
    const [x, y] = along === 'x' ? [span, faces] : [faces, span];
    return isBetween(place[0], widened(x, OFF)) && isBetween(place[1], widened(y, OFF));
  });
  const off = ({ along, faces }: (typeof walls)[number]) =>
    Math.abs(place[along === 'x' ? 1 : 0] - (faces[0] + faces[1]) / 2);
  return hanging(under, place) ?? walls.toSorted((a, b) => off(a) - off(b))[0]?.part ?? null;
}

/** What reaches up to the deck over a place of the frame; null for nothing. */
function hanging({ bench, site }: Under, place: Point): string | null {
  const found = site.obstructions.find(({ box }) => {
    const [x, y] = [widened([box.min[0], box.max[0]], OFF), widened([box.min[1], box.max[1]], OFF)];
    const inside = place[0] > x[0] && place[0] < x[1] && place[1] > y[0] && place[1] < y[1];
    return inside && box.max[2] > bench.sideTop - NEAR_DECK + OFF;
  });
  return found?.id ?? null;
}

function isBetween(value: number, [low, high]: Range): boolean {
  return value >= low && value <= high;
}
