import type { Point } from '../geometry/shapes.ts';
import type { AreaMass } from '../stock/part.ts';
import { clipped, regionArea } from './clip.ts';
import type { Grid } from './grid.ts';
import type { Region, Zone } from './land.ts';
import { cellsWithin } from './mask.ts';
import { coverQuantity, type LandQuantity } from './quantity.ts';
import { slopeRatio } from './volume.ts';

/** A zone as it lies on the benches: its plan, how much larger its surface is, and what it takes. */
export type CoveredZone = {
  readonly id: string;
  readonly region: Region;
  /** mm2 */
  readonly plan: number;
  readonly surface: number;
  readonly trees: number;
  readonly quantities: readonly LandQuantity[];
  readonly masses: readonly AreaMass[];
};

export type Covering = {
  readonly grid: Grid;
  readonly within: readonly (readonly Point[])[];
  readonly without: readonly (readonly Point[])[];
  /** strips where no tree may stand */
  readonly treeless: readonly (readonly Point[])[];
};

/** A zone cut to the benches, measured on the slope of its ground. */
export function coveredZone(zone: Zone, { grid, within, without, treeless }: Covering): CoveredZone {
  const region = within.flatMap((loop) => clipped([{ outline: zone.outline, holes: [] }], loop, without));
  const plan = regionArea(region);
  const open = zone.trees === 0 ? region : region.flatMap((piece) => clipped([piece], piece.outline, treeless));
  const mask = cellsWithin(
    grid,
    region.map(({ outline }) => outline),
    region.flatMap(({ holes }) => holes),
  );
  const ratio = slopeRatio(grid, mask);
  const surface = plan * ratio;
  const trees = treesOn(regionArea(open), zone.trees);
  return {
    ...{ id: zone.id, region, plan, surface, trees },
    quantities: [...zone.of.map((stock) => coverQuantity(stock, surface, zone.id)), ...treeQuantity(zone.id, trees)],
    masses: region.flatMap(({ outline }) =>
      zone.of.flatMap(({ id, massPerSquareMetre }): readonly AreaMass[] =>
        massPerSquareMetre === null ? [] : [{ of: id, outline, perSquareMetre: massPerSquareMetre * ratio }],
      ),
    ),
  };
}

/** Trees on so much plan, mm2, at so many a square metre. */
export function treesOn(plan: number, perSquareMetre: number): number {
  return Math.round((plan / 1e6) * perSquareMetre);
}

function treeQuantity(zone: string, trees: number): readonly LandQuantity[] {
  return trees === 0
    ? []
    : [{ stock: null, name: 'Trees', for: zone, need: trees, unit: 'count', buy: null, buyUnit: null }];
}
