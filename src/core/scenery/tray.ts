import { grown } from '../geometry/offset.ts';
import { bounds, directed } from '../geometry/polygon.ts';
import type { Point, Pose } from '../geometry/shapes.ts';
import type { SheetStock } from '../stock/goods.ts';
import type { Part } from '../stock/part.ts';
import { shapedBy } from './layer-parts.ts';
import { type Site, toBench } from './site.ts';
import type { WaterModel } from './water.ts';

/** Walls lower than this are left out: the floor is glued straight under the deck; mm. */
const LEAST_WALL = 2;

/** The tray under a water as parts: a floor, and a wall under the deck along each side of the outline. */
export function trayParts(water: WaterModel, sheet: SheetStock, site: Site): readonly Part[] {
  const loop = directed(
    water.outline.map((point) => toBench(site.pose, point)),
    1,
  );
  return [floorPart({ water, sheet, site, loop }), ...wallParts({ water, sheet, site, loop })];
}

type Tray = {
  readonly water: WaterModel;
  readonly sheet: SheetStock;
  readonly site: Site;
  /** the outline on the bench's plane, counter-clockwise */
  readonly loop: readonly Point[];
};

function named({ water, sheet, site }: Tray, tail: string) {
  const { bench } = site;
  return {
    ...{ id: `tray.${water.id}-${tail}`, label: `T-${water.id}-${tail}`, role: 'tray', chapter: 'scenery' as const },
    ...{ bench: bench.id, stock: sheet.id, cutAfterMeasuring: false, phase: bench.phase },
  };
}

/** Under the walls, so larger than the outline by a wall all round. */
function floorPart(tray: Tray): Part {
  const { water, sheet, site, loop } = tray;
  const outline = grown([loop], water.floor)[0]?.outline ?? loop;
  const { low, high } = bounds(outline);
  const [length, width] = [high[0] - low[0], high[1] - low[1]];
  const own = outline.map(([x, y]): Point => [x - low[0], y - low[1]]);
  const base = named(tray, 'floor');
  const origin = [low[0], low[1], site.bench.deckTop + water.underside] as const;
  const pose: Pose = { origin, x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
  return {
    ...base,
    blank: { length, width, thickness: sheet.thickness.listed, grain: 'any' },
    features: shapedBy({ outline: own, holes: [] }, { length, width }),
    places: [{ id: base.id, label: base.label, pose, marks: [] }],
  };
}

/** From the floor up to the deck's underside, outside the outline; each runs past the next at an outer corner. */
function wallParts(tray: Tray): readonly Part[] {
  const { water, sheet, site, loop } = tray;
  const { deckTop, sideTop } = site.bench;
  const width = sideTop - deckTop - water.bottom;
  if (width < LEAST_WALL) return [];
  return loop.map((from, i): Part => {
    const to = loop[(i + 1) % loop.length] ?? from;
    const next = loop[(i + 2) % loop.length] ?? to;
    const side = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const along: Point = [(to[0] - from[0]) / side, (to[1] - from[1]) / side];
    const outer = along[0] * (next[1] - to[1]) - along[1] * (next[0] - to[0]) > 0;
    const base = named(tray, `wall-${i + 1}`);
    const pose: Pose = {
      origin: [from[0], from[1], deckTop + water.bottom],
      x: [along[0], along[1], 0],
      y: [0, 0, 1],
      z: [along[1], -along[0], 0],
    };
    return {
      ...base,
      blank: {
        length: side + (outer ? water.floor : -water.floor),
        width,
        thickness: sheet.thickness.listed,
        grain: 'any',
      },
      features: [],
      places: [{ id: base.id, label: base.label, pose, marks: [] }],
    };
  });
}
