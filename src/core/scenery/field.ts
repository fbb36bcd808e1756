import { allowedAt, type FormationIndex, formationIndex } from './formation.ts';
import type { Form, Path, Spot } from './land.ts';
import { BELOW, reliefAt } from './relief.ts';

/** What shapes the ground. */
export type Shaping = {
  readonly forms: readonly Form[];
  readonly spots: readonly Spot[];
  readonly spotReach: number;
  /** lines, roads and paths */
  readonly paths: readonly Path[];
};

/** Ground height from deck top at a point of the notebook's plane, mm; negative where there is none. */
export type Field = (x: number, y: number) => number;

/**
 * The height field: the highest of the forms, bent to pass through the spots, then levelled along the paths. Spots are
 * honoured exactly where no path holds the ground. Water is kept out of it: its outline is exact.
 */
export function heightField(shaping: Shaping): Field {
  const bent = bentField(shaping);
  const index = formationIndex(shaping.paths, highest(shaping) + BELOW);
  return (x, y) => levelled(bent(x, y), index, [x, y]);
}

function levelled(height: number, index: FormationIndex, [x, y]: readonly [number, number]): number {
  const { low, high } = allowedAt(index, x, y);
  return Math.min(Math.max(height, low), high);
}

function highest({ forms, spots }: Shaping): number {
  return [...forms, ...spots].reduce((most, { height }) => Math.max(most, height), 0);
}

/** The forms bent through the spots, without any path. */
export function bentField({ forms, spots, spotReach }: Shaping): Field {
  const known = spots.map((spot) => ({ ...spot, off: spot.height - reliefAt(forms, spot.x, spot.y) }));
  return (x, y) => {
    const relief = reliefAt(forms, x, y);
    return known.length === 0 ? relief : relief + bend(known, [x, y], spotReach);
  };
}

type Known = { readonly x: number; readonly y: number; readonly off: number };

/**
 * Inverse distance weights that end at `reach` (Franke and Nielson, International Journal for Numerical Methods in
 * Engineering 15, 1980), against a standing weight of 1 / reach^2 for the ground as it was, so that the bend fades out.
 */
function bend(spots: readonly Known[], [x, y]: readonly [number, number], reach: number): number {
  let [sum, weights] = [0, 1 / (reach * reach)];
  for (const spot of spots) {
    const distance = Math.hypot(x - spot.x, y - spot.y);
    if (distance === 0) return spot.off;
    if (distance >= reach) continue;
    const weight = ((reach - distance) / (reach * distance)) ** 2;
    sum += weight * spot.off;
    weights += weight;
  }
  return sum / weights;
}
