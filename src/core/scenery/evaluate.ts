import { circle } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import type { Stock } from '../stock/goods.ts';
import { modelLength } from '../track/scale.ts';
import { nearest } from '../units/nearest.ts';
import { done, failed, type Result } from '../units/problem.ts';
import type { Quantity, Scope } from '../units/quantity.ts';
import { EARTH_SLOPE } from './formation-width.ts';
import type { Bank, BoardAsk, Hill, Land, Path, Ridge, Spot, Stretch, Structure, Water, Zone } from './land.ts';
import { outlineFaults } from './outline-faults.ts';
import { type Reader, readerOf } from './reader.ts';
import type { Scenery } from './schema.ts';
import { sectionAsk } from './section-ask.ts';
import { spotFaults } from './spot-faults.ts';
import { traySheet } from './tray-sheet.ts';

/** What evaluation needs besides the chapter. */
export type LandContext = {
  readonly scope: Scope;
  readonly stock: readonly Stock[];
  /** thicknesses that were measured, by stock; a sheet not among them counts as listed. mm */
  readonly measured?: Readonly<Record<string, number>>;
  readonly scale: string;
  /** ids of the benches, the first being meant where none is named */
  readonly benches: readonly string[];
};

/** How far a spot bends the ground when nobody says, mm; common practice, no source. */
const SPOT_REACH = 300;

/** Corners of a foot circle as an outline. */
const FOOT_SIDES = 96;

type Ground = NonNullable<Scenery['ground']>;

/** The chapter's quantities as numbers, ready for `sceneryModel`; every fault of every value at once. */
export function evaluateScenery(scenery: Scenery, context: LandContext): Result<Land> {
  const reader = readerOf(context.scope, context.stock);
  const ground = scenery.ground;
  const hills = ground?.hills.map((hill) => hillOf(hill, reader)) ?? [];
  const land: Land = {
    ...(ground === undefined
      ? NO_GROUND
      : groundOf(ground, { reader, hills, benches: context.benches, measured: context.measured ?? {} })),
    structures: scenery.structures.map((one, i) =>
      structureOf(one, `scenery.structures.${i}`, { reader, scale: context.scale }),
    ),
    zones: scenery.cover.map((zone, i) => zoneOf(zone, `scenery.cover.${i}`, { reader, hills })),
    ballast: scenery.ballast === undefined ? null : reader.cover(scenery.ballast, 'scenery.ballast'),
    bridges: scenery.bridges.map((one, i) => ({
      ...stretchOf(one, `scenery.bridges.${i}`, reader),
      ...(one.over === undefined ? {} : { over: one.over }),
    })),
    tunnels: scenery.tunnels.map((one, i) => stretchOf(one, `scenery.tunnels.${i}`, reader)),
    sections: ground?.sections.map((one, i) => sectionAsk(one, `scenery.ground.sections.${i}`, reader)) ?? [],
  };
  return reader.faults.length > 0 ? failed(...reader.faults) : done(land);
}

type GroundLand = Omit<Land, 'structures' | 'zones' | 'ballast' | 'bridges' | 'tunnels' | 'sections'>;

const NO_GROUND: GroundLand = {
  ...{ spots: [], spotReach: SPOT_REACH, forms: [], roads: [], slope: EARTH_SLOPE, water: [] },
  ...{ foam: null, hollow: null, boards: [] },
};

type Given = {
  readonly reader: Reader;
  readonly hills: readonly Hill[];
  readonly benches: readonly string[];
  readonly measured: Readonly<Record<string, number>>;
};

function groundOf(ground: Ground, { reader, hills, benches, measured }: Given): GroundLand {
  const reach = ground['spot-reach'];
  const slope = ground.slope === undefined ? EARTH_SLOPE : reader.above(ground.slope, 'slope');
  const at = 'scenery.ground';
  return {
    spots: spotsOf(ground, `${at}.spots`, reader),
    spotReach: reach === undefined ? SPOT_REACH : reader.above(reach, 'spot-reach'),
    forms: [
      ...hills,
      ...ground.ridges.map((ridge) => ridgeOf(ridge, reader)),
      ...ground.banks.map((bank, i) => bankOf(bank, `${at}.banks.${i}`, reader)),
    ],
    roads: ground.roads.map((road) => roadOf(road, slope, reader)),
    slope,
    water: ground.water.map((water, i) => waterOf(water, `${at}.water.${i}`, { reader, measured })),
    foam: ground.foam === undefined ? null : reader.sheet(ground.foam, `${at}.foam`),
    hollow: ground.hollow === undefined ? null : reader.above(ground.hollow, 'hollow'),
    boards: ground.boards.flatMap((board, i) => boardOf(board, `${at}.boards.${i}`, { reader, benches })),
  };
}

function spotsOf({ spots }: Ground, at: string, reader: Reader): readonly Spot[] {
  const before = reader.faults.length;
  const read = spots.map((spot, i) => spotOf(spot, `${at}.${i}`, reader));
  if (reader.faults.length === before) reader.faults.push(...spotFaults(read));
  return read;
}

function spotOf([x, y, height]: Ground['spots'][number], at: string, reader: Reader): Spot {
  return { x: reader.number(x), y: reader.number(y), height: reader.height(height, 'height'), at };
}

function hillOf(hill: Ground['hills'][number], reader: Reader): Hill {
  return {
    kind: 'hill',
    id: hill.id,
    form: hill.form,
    top: reader.point(hill.top),
    height: heightOf(hill.height, reader),
    footRadius: reader.above(hill['foot-radius'], 'foot-radius'),
  };
}

/** The height of a form: more than nothing, and no more than a room has. */
function heightOf(quantity: Quantity, reader: Reader): number {
  const before = reader.faults.length;
  const value = reader.above(quantity, 'height');
  return reader.faults.length === before ? reader.height(quantity, 'height') : value;
}

function ridgeOf(ridge: Ground['ridges'][number], reader: Reader): Ridge {
  return {
    kind: 'ridge',
    id: ridge.id,
    form: ridge.form,
    along: ridge.along.map(reader.point),
    height: heightOf(ridge.height, reader),
    half: reader.above(ridge['half-width'], 'half-width'),
  };
}

function loopOf(outline: readonly (readonly [Quantity, Quantity])[], at: string, reader: Reader): readonly Point[] {
  const before = reader.faults.length;
  const loop = outline.map(reader.point);
  if (reader.faults.length === before) reader.faults.push(...outlineFaults(loop, at));
  return loop;
}

function bankOf(bank: Ground['banks'][number], at: string, reader: Reader): Bank {
  return {
    kind: 'bank',
    id: bank.id,
    outline: loopOf(bank.outline, `${at}.outline`, reader),
    height: heightOf(bank.height, reader),
    slope: reader.above(bank.slope, 'slope'),
  };
}

function roadOf(road: Ground['roads'][number], slope: number, reader: Reader): Path {
  const points = road.along.map(([x, y, z]) => ({
    x: reader.number(x),
    y: reader.number(y),
    z: reader.height(z, 'height'),
  }));
  let at = 0;
  return {
    id: road.id,
    points: points.map((point, i) => {
      const before = points[i - 1];
      if (before !== undefined) at += Math.hypot(point.x - before.x, point.y - before.y);
      return { at, ...point };
    }),
    half: reader.above(road.width, 'width') / 2,
    slope,
    free: [],
  };
}

type Pouring = Pick<Given, 'reader' | 'measured'>;

/** A tray's floor and walls are as thick as the sheet they are cut from: as measured, else as listed. */
function waterOf(water: Ground['water'][number], at: string, { reader, measured }: Pouring): Water {
  const written = reader.above(water.floor, 'floor');
  const tray = traySheet(water, written, { at, reader });
  const floor = tray === null ? written : (measured[tray.id] ?? tray.thickness.listed);
  return {
    id: water.id,
    at,
    outline: loopOf(water.outline, `${at}.outline`, reader),
    surface: reader.number(water.surface),
    depth: reader.above(water.depth, 'depth'),
    floor,
    pour: reader.above(water.pour, 'pour'),
    resin: water.resin === undefined ? null : reader.cover(water.resin, `${at}.resin`),
    tray: tray === null ? null : { ...tray, thickness: { ...tray.thickness, listed: floor } },
  };
}

type Boarding = { readonly reader: Reader; readonly benches: readonly string[] };

function boardOf(board: Ground['boards'][number], at: string, { reader, benches }: Boarding): readonly BoardAsk[] {
  const stock = reader.sheet(board.stock, `${at}.stock`);
  const bench = board.bench ?? benches[0] ?? '';
  if (board.bench !== undefined && !benches.includes(board.bench)) {
    const what = `no bench is called '${board.bench}'`;
    reader.faults.push({ rule: 'board-bench', at: `${at}.bench`, what, mend: `name one of ${benches.join(', ')}` });
  }
  return stock === null ? [] : [{ id: board.id, at, bench, edge: board.edge, stock }];
}

type Covering = { readonly reader: Reader; readonly hills: readonly Hill[] };

function zoneOf(zone: Scenery['cover'][number], at: string, { reader, hills }: Covering): Zone {
  return {
    id: zone.id,
    at,
    outline:
      typeof zone.outline === 'string'
        ? footOf(zone.outline, `${at}.outline`, { reader, hills })
        : loopOf(zone.outline, `${at}.outline`, reader),
    of: zone.of.flatMap((id, i) => reader.cover(id, `${at}.of.${i}`) ?? []),
    trees: zone.trees === undefined ? 0 : reader.above(zone.trees, 'trees'),
  };
}

/** The foot circle that `hill.foot` names; a name that stands for none is a fault. */
function footOf(name: string, at: string, { reader, hills }: Covering): readonly Point[] {
  const hill = hills.find(({ id }) => `${id}.foot` === name);
  if (hill !== undefined) return circle(hill.top, hill.footRadius, FOOT_SIDES);
  const known = hills.map(({ id }) => `${id}.foot`);
  const near = nearest(name, known);
  const hint = near === null ? '' : `write \`${near}\`, or `;
  const what = `\`${name}\` is not the foot of a hill`;
  reader.faults.push({ rule: 'unknown-name', at, what, mend: `${hint}write its corners as [x, y]` });
  return [];
}

type Modelling = { readonly reader: Reader; readonly scale: string };

/** A building in the size it is modelled in: as written, or the real one's by the scale. */
function structureOf(one: Scenery['structures'][number], at: string, { reader, scale }: Modelling): Structure {
  const size = 'model' in one ? one.model : one.prototype;
  const modelled = (mm: number) => ('model' in one ? mm : modelLength(mm, scale));
  return {
    ...{ id: one.id, at, middle: reader.point(one.at), turn: one.turn === undefined ? 0 : reader.number(one.turn) },
    length: modelled(reader.above(size.length, 'length')),
    width: modelled(reader.above(size.width, 'width')),
    height: modelled(reader.above(size.height, 'height')),
  };
}

function stretchOf(one: Scenery['tunnels'][number], at: string, reader: Reader): Stretch {
  return { id: one.id, line: one.line, from: reader.number(one.from), to: reader.number(one.to), at };
}
