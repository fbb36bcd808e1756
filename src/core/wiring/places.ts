import { fromWorld } from '../geometry/pose.ts';
import type { Point } from '../geometry/shapes.ts';
import { baysAlong } from './bus-run.ts';
import type { BusHole } from './holes.ts';
import type { WiringInput } from './input.ts';
import { type Bay, nearestBay } from './routing/bays.ts';
import { inward } from './under.ts';
import type { Wired } from './wire-list.ts';

/** What is under one bay of a bench, by id; its corners in the coordinates of the bench the bus starts at, mm. */
export type PlaceBelow = {
  readonly bay: string;
  readonly bench: string;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly bus: boolean;
  readonly feeders: readonly string[];
  readonly loads: readonly string[];
  readonly turnouts: readonly string[];
  readonly holes: readonly string[];
  /** drawers, motors, legs and water whose space reaches into it */
  readonly spaces: readonly string[];
};

/** Every bay with what the wiring has there. */
export function placesBelow(input: WiringInput, wired: Wired, holes: readonly BusHole[]): readonly PlaceBelow[] {
  const { under, taps } = wired;
  const passed = baysAlong(wired.path, under.bays);
  const inBay = (bay: Bay, at: Point) => nearestBay(under.bays, inward(under, at))?.bay === bay;
  return under.bays.map((bay) => ({
    bay: bay.id,
    bench: bay.bench,
    x: bay.x,
    y: bay.y,
    bus: passed.includes(bay.id),
    feeders: wired.feeders.filter(({ id }) => taps.get(id)?.bay === bay.id).map(({ id }) => id),
    loads: wired.loads.filter(({ drop }) => taps.get(drop)?.bay === bay.id).map(({ id }) => id),
    turnouts: input.rails.turnouts.filter(({ at }) => inBay(bay, at)).map(({ id }) => id),
    holes: holes.filter(({ at }) => bounds(bay, fromWorld(under.frame, at))).map(({ id }) => id),
    spaces: under.site.obstructions
      .filter(
        ({ box }) => box.min[0] < bay.x[1] && box.max[0] > bay.x[0] && box.min[1] < bay.y[1] && box.max[1] > bay.y[0],
      )
      .map(({ id }) => id),
  }));
}

/** A hole in one of a bay's walls. */
function bounds(bay: Bay, [x, y]: readonly [number, number, number]): boolean {
  const off = 60;
  const outside = x < bay.x[0] - off || x > bay.x[1] + off || y < bay.y[0] - off || y > bay.y[1] + off;
  const beside = (x >= bay.x[0] && x <= bay.x[1]) || (y >= bay.y[0] && y <= bay.y[1]);
  return !outside && beside;
}
