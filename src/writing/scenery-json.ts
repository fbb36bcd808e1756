import type { Polygon } from '../core/geometry/shapes.ts';
import type { BuiltLayer, BuiltWater, SceneryModel } from '../core/scenery/model.ts';
import type { LandQuantity } from '../core/scenery/quantity.ts';
import type { BuiltStructure } from '../core/scenery/structure.ts';
import type { Request } from '../core/stock/part.ts';
import { type Json, millionth, plain, thousandth } from './rounded.ts';

/** mm3 as litres to a thousandth. */
function litres(volume: number | null): Json {
  return volume === null ? null : thousandth(volume * 1e-6);
}

function shape({ outline, holes }: Polygon) {
  return { outline: plain(outline), holes: plain(holes) };
}

function layerJson({ id, number, from, to, area, left, pieces, carveTo, joints, marks }: BuiltLayer): Json {
  return {
    ...{ id, number, from: thousandth(from), to: thousandth(to), area: thousandth(area), left: litres(left) },
    pieces: pieces.map(({ part, bench, shape: own }) => ({ part, bench, ...shape(own) })),
    carveTo: carveTo.map(shape),
    joints: plain(joints),
    marks: plain(marks, ['id', 'at', 'between']),
  };
}

function quantityJson({ stock, name, for: what, need, unit, buy, buyUnit }: LandQuantity): Json {
  return { stock, name, for: what, need: thousandth(need), unit, buy, buyUnit };
}

function waterJson(water: BuiltWater): Json {
  const {
    id,
    outline,
    surface,
    bottom,
    underside,
    depth,
    floor,
    area,
    volume,
    mixed,
    pours,
    level,
    mass,
    under,
    clear,
  } = water;
  return {
    ...{ id, outline: plain(outline) },
    ...{ surface: thousandth(surface), bottom: thousandth(bottom), underside: thousandth(underside) },
    ...{ depth: thousandth(depth), floor: thousandth(floor), area: thousandth(area) },
    ...{ volume: litres(volume), mixed: litres(mixed), mass: thousandth(mass) },
    pours: plain(pours, ['count', 'each', 'wait']),
    level: {
      ...level,
      length: thousandth(level.length),
      lean: millionth(level.lean),
      deeper: thousandth(level.deeper),
      dam: thousandth(level.dam),
      room: thousandth(level.room),
    },
    under: plain(under, ['id', 'role', 'cut', 'deep']),
    clear: plain(clear, ['move', 'smaller']),
  };
}

function structureJson({ id, bench, corners, ground, height, length, middle, turn, width }: BuiltStructure): Json {
  return plain({ id, bench, middle, turn, length, width, height, corners, ground }, [
    ...['id', 'bench', 'middle', 'turn', 'length', 'width', 'height', 'corners', 'ground', 'low', 'high'],
  ]);
}

/** The land: mm, litres, kg and kg/m2; outlines in notebook coordinates, heights from deck top. */
export function sceneryJson(scenery: SceneryModel | null): Json {
  if (scenery === null) return null;
  const { highest, layers, volumes, quantities, water, structures, masses, contours } = scenery;
  return {
    highest: thousandth(highest),
    layers: layers.map(layerJson),
    volumes: {
      bought: litres(volumes.bought),
      cut: litres(volumes.cut),
      carved: litres(volumes.carved),
      left: litres(volumes.left),
    },
    quantities: quantities.map(quantityJson),
    water: water.map(waterJson),
    structures: structures.map(structureJson),
    masses: plain(masses, ['of', 'perSquareMetre', 'outline']),
    contours: plain(contours, ['level', 'lines', 'closed', 'points']),
  };
}

/** What one room asked of another's part; `where` in notebook coordinates. */
export function requestJson({ by, part, kind, at, size, limit, outline }: Request): Json {
  return {
    ...{ by, part, kind, where: plain(at), size: plain(size) },
    limit: limit === null ? null : thousandth(limit),
    ...(outline === undefined ? {} : { outline: plain(outline) }),
  };
}
