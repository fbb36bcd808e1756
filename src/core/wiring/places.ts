import { bounds } from '../geometry/polygon.ts';
import { fromWorld } from '../geometry/pose.ts';
import type { Box, Point, Vector } from '../geometry/shapes.ts';
import type { BusHole } from './holes.ts';
import type { WiringInput } from './input.ts';
import { type Bay, nearestBay } from './routing/bays.ts';
import { baysAlong } from './routing/tap.ts';
import { inward, outward } from './under.ts';
import { type Wire, wiresOfPair } from './wire.ts';
import type { Wired } from './wired.ts';

/** What is under one bay of a bench, by id; its corners in the coordinates of the bench the bus starts at, mm. */
export type PlaceBelow = {
  readonly bay: string;
  readonly bench: string;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  /** the same from above in notebook coordinates, mm */
  readonly low: Point;
  readonly high: Point;
  readonly bus: boolean;
  readonly feeders: readonly string[];
  readonly loads: readonly string[];
  readonly turnouts: readonly string[];
  /** reversers and switches that are screwed up here */
  readonly units: readonly string[];
  readonly holes: readonly string[];
  /** drawers, motors, legs and water whose space reaches into it */
  readonly spaces: readonly string[];
  /** height of the bus from the floor where it passes; null where it does not, mm */
  readonly busHeight: number | null;
  /** labels of the wires that run or end here, as written on both their ends */
  readonly wires: readonly string[];
  /** where thin wires are joined to the bus */
  readonly joints: readonly { readonly drop: string; readonly labels: readonly string[]; readonly at: Vector }[];
  /** what reaches into it, from and to which height above the floor, mm */
  readonly below: readonly { readonly id: string; readonly from: number; readonly to: number }[];
};

/** Every bay with what the wiring has there. */
export function placesBelow(
  input: WiringInput,
  wired: Wired,
  { holes, wires }: { readonly holes: readonly BusHole[]; readonly wires: readonly Wire[] },
): readonly PlaceBelow[] {
  const { under, taps } = wired;
  // boards are told as parts of their own
  const spaces = new Set(input.ground.spaces.map(({ id }) => id));
  const passed = wired.limbs.flatMap(({ path }) => baysAlong(path, under.bays));
  const inBay = (bay: Bay, at: Point) => nearestBay(under.bays, inward(under, at))?.bay === bay;
  return under.bays.map((bay) => {
    const reaching = under.site.obstructions.filter(({ box, id }) => spaces.has(id) && overlaps(bay, box));
    const joints = jointsIn(wired, wires, bay);
    return {
      ...{ bay: bay.id, bench: bay.bench, x: bay.x, y: bay.y },
      ...boxOf(wired, bay),
      bus: passed.includes(bay.id),
      feeders: wired.feeders.filter(({ id }) => taps.get(id)?.bay === bay.id).map(({ id }) => id),
      loads: wired.loads.filter(({ drop }) => taps.get(drop)?.bay === bay.id).map(({ id }) => id),
      turnouts: input.rails.turnouts.filter(({ at }) => inBay(bay, at)).map(({ id }) => id),
      units: wired.units.filter(({ place: [x, y] }) => inBay(bay, [x, y])).map(({ id }) => id),
      holes: holes.filter(({ at }) => inWalls(bay, fromWorld(under.frame, at))).map(({ id }) => id),
      spaces: reaching.map(({ id }) => id),
      busHeight: passed.includes(bay.id) ? wired.z : null,
      wires: wires.filter(({ path }) => passes(wired, path, bay)).map(({ label }) => label),
      joints,
      below: reaching.map(({ box, id }) => ({ id, from: box.min[2], to: box.max[2] })),
    };
  });
}

/** Benches stand square to the one the bus starts at; from above the box is as wide as the notebook's axes see it. */
function boxOf({ under }: Wired, { x, y }: Bay): Pick<PlaceBelow, 'low' | 'high'> {
  const corners = x.flatMap((u) => y.map((v) => outward(under, [u, v], 0)));
  return bounds(corners.map(([u, v]): Point => [u, v]));
}

function overlaps({ x, y }: Bay, { max, min }: Box): boolean {
  return min[0] < x[1] && max[0] > x[0] && min[1] < y[1] && max[1] > y[0];
}

function passes({ under }: Wired, path: readonly Vector[], bay: Bay): boolean {
  const flat = path.map(([x, y]) => inward(under, [x, y]));
  return baysAlong(flat, under.bays).includes(bay.id);
}

/** Every joint to the bus in a bay, thin wires' and units', in the order the bus meets them. */
function jointsIn({ taps, under, units, z }: Wired, wires: readonly Wire[], bay: Bay): PlaceBelow['joints'] {
  const thin = [...taps.values()]
    .filter(({ drop }) => !units.some(({ id }) => id === drop))
    .map((tap) => ({ tap, pair: tap.drop.replace('load.', '') }));
  return [...thin, ...units.map(({ id, tap }) => ({ tap, pair: `${id}-in` }))]
    .filter(({ tap }) => tap.bay === bay.id)
    .toSorted((a, b) => a.tap.limb - b.tap.limb || a.tap.along - b.tap.along)
    .map(({ pair, tap: { at, drop } }) => {
      const labels = wiresOfPair(wires, pair).map(({ label }) => label);
      return { drop, labels, at: outward(under, at, z) };
    });
}

/** A hole in one of a bay's walls. */
function inWalls(bay: Bay, [x, y]: readonly [number, number, number]): boolean {
  const off = 60;
  const outside = x < bay.x[0] - off || x > bay.x[1] + off || y < bay.y[0] - off || y > bay.y[1] + off;
  const beside = (x >= bay.x[0] && x <= bay.x[1]) || (y >= bay.y[0] && y <= bay.y[1]);
  return !outside && beside;
}
