import { bounds, loopArea } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import type { AreaMass } from '../stock/part.ts';
import { bothUnits } from '../units/reading.ts';
import type { Water } from './land.ts';
import { damHeight, deeperAt, type Pours, pours, RESIN_DENSITY, RESIN_WASTE, UNSEEN_LEAN } from './pours.ts';
import { type LandQuantity, volumeQuantity } from './quantity.ts';

/** A water as it is built; heights from deck top, mm; volumes mm3. */
export type WaterModel = {
  readonly id: string;
  readonly outline: readonly Point[];
  readonly surface: number;
  /** top of the floor sheet */
  readonly bottom: number;
  /** underside of the floor sheet */
  readonly underside: number;
  readonly floor: number;
  readonly depth: number;
  readonly area: number;
  readonly volume: number;
  /** with what is lost in the cups */
  readonly mixed: number;
  readonly pours: Pours;
  readonly level: LevelCheck;
  /** kg */
  readonly mass: number;
};

/** What a lean of the table does: the low end's extra depth, the dam that holds it, and the height there is. mm. */
export type LevelCheck = {
  readonly length: number;
  readonly lean: number;
  readonly deeper: number;
  readonly dam: number;
  readonly room: number;
};

/** A sheet under water weighs about this, kg/m3: hardboard, assumed. */
const FLOOR_DENSITY = 900;

/** Depths, volumes and pours of one water. */
export function waterModel(water: Water): WaterModel {
  const { id, outline, surface, depth, floor, pour } = water;
  const area = Math.abs(loopArea(outline));
  const volume = area * depth;
  const bottom = surface - depth;
  const { low, high } = bounds(outline);
  const length = Math.hypot(high[0] - low[0], high[1] - low[1]);
  const litres = volume * 1e-6;
  return {
    ...{ id, outline, surface, bottom, underside: bottom - floor, floor, depth, area, volume },
    mixed: volume * (1 + RESIN_WASTE),
    pours: pours(depth, pour),
    level: {
      length,
      lean: UNSEEN_LEAN,
      deeper: deeperAt(length, UNSEEN_LEAN),
      dam: damHeight(depth, length, UNSEEN_LEAN),
      room: Math.max(0, -bottom),
    },
    mass: litres * RESIN_DENSITY + area * floor * 1e-9 * FLOOR_DENSITY,
  };
}

/** Resin with its waste, floor sheet and wall strips. */
export function waterQuantities(water: Water, model: WaterModel): readonly LandQuantity[] {
  const floor: LandQuantity = {
    ...{ stock: null, name: `Sheet ${bothUnits(water.floor)} thick for floor and walls`, for: water.id },
    need: (model.area + wallArea(model)) / 1e6,
    ...{ unit: 'm2', buy: null, buyUnit: null },
  };
  const { resin, tray } = water;
  const poured: LandQuantity =
    resin === null
      ? {
          stock: null,
          name: 'Casting resin',
          for: water.id,
          need: model.mixed / 1e6,
          unit: 'litre',
          buy: null,
          buyUnit: null,
        }
      : volumeQuantity(resin, model.mixed, water.id);
  return tray === null ? [poured, floor] : [poured];
}

/** Walls from the deck's top down to the floor all round. */
function wallArea({ outline, bottom }: WaterModel): number {
  const round = outline.reduce((sum, [x, y], i) => {
    const [px, py] = outline[(i + outline.length - 1) % outline.length] ?? [x, y];
    return sum + Math.hypot(x - px, y - py);
  }, 0);
  return round * Math.max(0, -bottom);
}

/** The water's mass over its outline. */
export function waterMass(model: WaterModel): AreaMass {
  return { of: model.id, outline: model.outline, perSquareMetre: model.mass / (model.area * 1e-6) };
}
