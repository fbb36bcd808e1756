import type { Point, Vector } from '../geometry/shapes.ts';
import { cutLimits } from '../stock/cut-limits.ts';
import type { Request } from '../stock/part.ts';
import { holeFor } from './bundle.ts';
import type { Net } from './nets.ts';
import { passage } from './routing/crossing.ts';
import { type BusSpot, type Limb, passing } from './routing/limbs.ts';
import type { Range, Wall } from './routing/site.ts';
import { outward, type Under } from './under.ts';

/** How a hole can be drilled: in place, with a drill that works round a corner, or only before the frame goes together. */
export type DrillAccess = 'in place' | 'angle drill' | 'before assembly';

/** One hole for the bus through a board on edge; notebook coordinates, mm. */
export type BusHole = {
  readonly id: string;
  /** the instance it goes through */
  readonly part: string;
  readonly bench: string;
  readonly at: Vector;
  readonly diameter: number;
  readonly wires: number;
  /** where along the bus it passes here */
  readonly along: readonly BusSpot[];
  /** clear room along the hole's axis, on its roomier side */
  readonly room: number;
  readonly access: DrillAccess;
  /** the largest hole the board should have */
  readonly limit: number;
  /** how far its middle is above the board's, below where negative */
  readonly off: number;
  /** wood left between it and the nearer edge */
  readonly wood: number;
};

/** What is written beside a hole: `H1` of `hole-1`. */
export function holeTag(id: string): string {
  return id.replace('hole-', 'H');
}

/** Room a drill with its bit needs, and an angle drill; common practice, no source. mm */
export const DRILL_ROOM = 250;
export const ANGLE_ROOM = 110;

type Met = BusSpot & { readonly wall: Wall; readonly at: Point };

/** What a bus meets on its way: walls it passes, and what stands in its way. */
export type Crossings = {
  readonly met: readonly Met[];
  readonly clashes: readonly { readonly with: string; readonly at: Point }[];
};

/** Every wall and obstruction along the limbs of a bus at a height, limb by limb. */
export function crossings({ site }: Under, limbs: readonly Limb[], z: number): Crossings {
  const all = limbs.map((limb, i) => crossed(site, limb, { limb: i, z }));
  const clashes = all.flatMap((one) => one.clashes);
  const once = clashes.filter((one, i) => clashes.findIndex((other) => other.with === one.with) === i);
  return { met: all.flatMap(({ met }) => met.toSorted((a, b) => a.along - b.along)), clashes: once };
}

function crossed(
  site: Under['site'],
  { path, from: start }: Limb,
  { limb, z }: { readonly limb: number; readonly z: number },
): Crossings {
  let along = start;
  const met: Met[] = [];
  const clashes: { with: string; at: Point }[] = [];
  for (const [i, to] of path.entries()) {
    const from = path[i - 1] ?? to;
    const { holes, clashes: blocked } = passage(site, { from, to, z });
    for (const { wall, at } of holes)
      met.push({ wall, at, limb, along: along + Math.hypot(at[0] - from[0], at[1] - from[1]) });
    for (const id of blocked) clashes.push({ with: id, at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] });
    along += Math.hypot(to[0] - from[0], to[1] - from[1]);
  }
  return { met, clashes };
}

/** The holes of a bus, each once however often wires pass it, in the order they are met. */
export function busHoles(
  under: Under,
  met: readonly Met[],
  bus: { readonly z: number; readonly nets: readonly Net[]; readonly outside: number; readonly show: 'mm' | 'in' },
): readonly BusHole[] {
  const key = ({ wall, at }: Met) => `${wall.part} ${Math.round(at[0] * 10)} ${Math.round(at[1] * 10)}`;
  const groups = new Map<string, Met[]>();
  for (const one of met) groups.set(key(one), [...(groups.get(key(one)) ?? []), one]);
  return [...groups.values()].flatMap((group, i) => {
    const [first] = group;
    if (first === undefined) return [];
    const along = group.map(({ limb, along: at }) => ({ limb, along: at }));
    const wires = along.reduce(
      (sum, at) => sum + 2 * bus.nets.filter((net) => passing(net.stretches, at) !== null).length,
      0,
    );
    const room = roomBeside(under, first, bus.z);
    const { wall } = first;
    const diameter = holeFor(Math.max(2, wires), bus.outside, bus.show);
    return [
      {
        ...{ id: `hole-${i + 1}`, part: wall.part, bench: wall.bench, wires, along, room },
        at: outward(under, first.at, bus.z),
        diameter,
        access: accessFor(room),
        limit: cutLimits(wall.z[1] - wall.z[0]).hole,
        off: bus.z - (wall.z[0] + wall.z[1]) / 2,
        wood: Math.min(bus.z - wall.z[0], wall.z[1] - bus.z) - diameter / 2,
      },
    ];
  });
}

export function accessFor(room: number): DrillAccess {
  if (room >= DRILL_ROOM) return 'in place';
  return room >= ANGLE_ROOM ? 'angle drill' : 'before assembly';
}

/** Clear length along the hole's axis to the next wall, on the roomier side; an outer side has all the room there is. */
function roomBeside({ site }: Under, { wall, at }: Met, z: number): number {
  const axis = wall.along === 'x' ? 1 : 0;
  const others = site.walls.filter(
    (one) =>
      one !== wall &&
      one.along === wall.along &&
      one.span[0] <= at[1 - axis === 1 ? 1 : 0] &&
      one.span[1] >= at[1 - axis === 1 ? 1 : 0] &&
      z > one.z[0] &&
      z < one.z[1],
  );
  const gap = (beyond: (faces: Range) => number) =>
    others.reduce(
      (least, { faces }) => (beyond(faces) >= -1e-6 ? Math.min(least, beyond(faces)) : least),
      Number.POSITIVE_INFINITY,
    );
  const [low, high] = [gap((faces) => wall.faces[0] - faces[1]), gap((faces) => faces[0] - wall.faces[1])];
  const most = Math.max(low, high);
  return Number.isFinite(most) ? most : DRILL_ROOM;
}

/** What the holes ask of the parts they go through. */
export function holeRequests(holes: readonly BusHole[]): readonly Request[] {
  return holes.map(({ part, at, diameter, limit }) => ({
    by: 'bus',
    part,
    kind: 'hole',
    at,
    size: [diameter, diameter],
    limit,
    chapter: 'wiring',
  }));
}
