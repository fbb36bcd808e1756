import { bounds } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import type { Part } from '../stock/part.ts';
import type { Path } from './land.ts';
import { type Site, toBench } from './site.ts';
import { type Standing, standingOn, trayOutline } from './under-water.ts';
import type { WaterModel } from './water.ts';

/** Ways to keep a water clear of everything but the deck, on its bench's plane; null where there is none. mm. */
export type ClearWays = {
  /** the shortest move along x or y */
  readonly move: Point | null;
  /** the largest rectangle of its box that cuts nothing, as from and to along x and y */
  readonly smaller: { readonly low: Point; readonly high: Point } | null;
};

/** More obstacles than this and the water is no longer made smaller but moved. */
const MOST_OBSTACLES = 8;

type Box = { readonly low: Point; readonly high: Point };

/** What a water must keep clear of: pieces of the benches, and the lines of track, which no move may put it under. */
export type Beside = { readonly parts: readonly Part[]; readonly lines: readonly Path[] };

/** The nearest place and the largest smaller outline at which a water cuts no strut, side or end. */
export function clearWays(water: WaterModel, site: Site, { parts, lines }: Beside): ClearWays {
  const obstacles = standingOn(parts, site.bench.id)
    .filter(
      ({ part, max, min }) =>
        part.role !== 'deck' && max[2] > site.bench.deckTop + water.underside && min[2] < site.bench.deckTop,
    )
    .map(boxOf);
  const tray = bounds(trayOutline(water, site));
  const beds = lines.flatMap((line) => bedBoxes(line, site));
  return { move: shortestMove(tray, { obstacles, beds, site }), smaller: smallerBox(water, { tray, obstacles, site }) };
}

function boxOf({ min, max }: Standing): Box {
  return { low: [min[0], min[1]], high: [max[0], max[1]] };
}

function meets(a: Box, b: Box): boolean {
  return ([0, 1] as const).every((axis) => a.low[axis] < b.high[axis] - 1e-6 && b.low[axis] < a.high[axis] - 1e-6);
}

function inside(box: Box, { bench }: Site): boolean {
  return box.low[0] >= 0 && box.low[1] >= 0 && box.high[0] <= bench.length && box.high[1] <= bench.width;
}

/** Moves are rounded away from the obstacle to whole millimetres, as a builder would set them out. */
function outward(by: number): number {
  return by === 0 ? 0 : Math.sign(by) * Math.ceil(Math.abs(by) - 1e-6);
}

/** Boxes about the points of a line as wide as its bed; its points lie closer together than a bed is wide. */
function bedBoxes({ points, bed = 0 }: Path, { pose }: Site): readonly Box[] {
  return points.map(({ x, y }) => {
    const [u, v] = toBench(pose, [x, y]);
    return { low: [u - bed, v - bed], high: [u + bed, v + bed] };
  });
}

type Room = { readonly obstacles: readonly Box[]; readonly beds: readonly Box[]; readonly site: Site };

function shortestMove(tray: Box, { obstacles, beds, site }: Room): Point | null {
  const moves = obstacles.flatMap((box): readonly Point[] => [
    [outward(box.low[0] - tray.high[0]), 0],
    [outward(box.high[0] - tray.low[0]), 0],
    [0, outward(box.low[1] - tray.high[1])],
    [0, outward(box.high[1] - tray.low[1])],
  ]);
  const open = moves.filter((by) => {
    const there = moved(tray, by);
    return inside(there, site) && ![...obstacles, ...beds].some((box) => meets(there, box));
  });
  return open.reduce<Point | null>((best, by) => (best === null || span(by) < span(best) ? by : best), null);
}

function moved({ low, high }: Box, [dx, dy]: Point): Box {
  return { low: [low[0] + dx, low[1] + dy], high: [high[0] + dx, high[1] + dy] };
}

function span([dx, dy]: Point): number {
  return Math.abs(dx) + Math.abs(dy);
}

type Shrinking = { readonly tray: Box; readonly obstacles: readonly Box[]; readonly site: Site };

/** The largest rectangle left of the tray between its own edges and the obstacles, less the room its walls take. */
function smallerBox(water: WaterModel, { tray, obstacles: all, site }: Shrinking): Box | null {
  const obstacles = all.filter((box) => meets(box, tray));
  if (obstacles.length > MOST_OBSTACLES) return null;
  const own = bounds(water.outline);
  const wall = (tray.high[0] - tray.low[0] - (own.high[0] - own.low[0])) / 2;
  const stops = (axis: 0 | 1) =>
    [tray.low[axis], tray.high[axis], ...obstacles.flatMap(({ low, high }) => [low[axis], high[axis]])]
      .filter((at) => at >= tray.low[axis] && at <= tray.high[axis])
      .sort((a, b) => a - b);
  const pairs = (axis: 0 | 1) =>
    stops(axis).flatMap((from, i) =>
      stops(axis)
        .slice(i + 1)
        .map((to) => [from, to] as const),
    );
  const boxes = pairs(0).flatMap(([x0, x1]) => pairs(1).map(([y0, y1]): Box => ({ low: [x0, y0], high: [x1, y1] })));
  const open = boxes.filter((box) => inside(box, site) && !obstacles.some((other) => meets(box, other)));
  const best = open.reduce<Box | null>((most, box) => (most === null || size(box) > size(most) ? box : most), null);
  if (best === null || size(best) <= 0) return null;
  const box = inward({
    low: [best.low[0] + wall, best.low[1] + wall],
    high: [best.high[0] - wall, best.high[1] - wall],
  });
  return box.high[0] > box.low[0] && box.high[1] > box.low[1] ? box : null;
}

/** To whole millimetres inside it, so that what is printed still clears. */
function inward({ low, high }: Box): Box {
  const up = (at: number) => Math.ceil(at - 1e-6);
  const down = (at: number) => Math.floor(at + 1e-6);
  return { low: [up(low[0]), up(low[1])], high: [down(high[0]), down(high[1])] };
}

function size({ low, high }: Box): number {
  return (high[0] - low[0]) * (high[1] - low[1]);
}
