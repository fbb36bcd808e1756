import type { ComesDown } from './clear-way.ts';
import { bayAt } from './routing/bays.ts';
import { OFF, widened } from './routing/site.ts';
import { inward, type Under } from './under.ts';

/** What reaches this near to the deck's underside stops a wire that comes down through it, mm. */
const NEAR_DECK = 40;

/** Whether wires come down clear at a point of the notebook: into a bay, off its walls, and past what hangs there. */
export function comesDown(under: Under): ComesDown {
  const { site, bays, bench } = under;
  return (point) => {
    const place = inward(under, point);
    const bay = bayAt(bays, place);
    if (bay === null) return false;
    const offWalls = [bay.x, bay.y].every(([low, high], i) => {
      const at = place[i] ?? 0;
      return at >= low + OFF && at <= high - OFF;
    });
    const blocked = site.obstructions.some(({ box }) => {
      const [x, y] = [widened([box.min[0], box.max[0]], OFF), widened([box.min[1], box.max[1]], OFF)];
      const inside = place[0] > x[0] && place[0] < x[1] && place[1] > y[0] && place[1] < y[1];
      return inside && box.max[2] > bench.sideTop - NEAR_DECK + OFF;
    });
    return offWalls && !blocked;
  };
}
