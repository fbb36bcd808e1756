import type { Point, Vector } from '../geometry/shapes.ts';
import { cutLimits } from '../stock/cut-limits.ts';
import type { Request } from '../stock/part.ts';
import { holeFor } from './bundle.ts';
import { passage } from './routing/crossing.ts';
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
  /** distances along the bus at which it passes here */
  readonly along: readonly number[];
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

/** Room a drill with its bit needs, and an angle drill; common practice, no source. mm */
export const DRILL_ROOM = 250;
export const ANGLE_ROOM = 110;

type Met = { readonly wall: Wall; readonly at: Point; readonly along: number };

/** What a bus meets on its way: walls it passes, and what stands in its way. */
export type Crossings = {
  readonly met: readonly Met[];
  readonly clashes: readonly { readonly with: string; readonly at: Point }[];
};

/** Every wall and obstruction along a path at a height. */
export function crossings({ site }: Under, path: readonly Point[], z: number): Crossings {
  let along = 0;
  const met: Met[] = [];
  const clashes: { with: string; at: Point }[] = [];
  for (const [i, to] of path.entries()) {
    const from = path[i - 1] ?? to;
    const { holes, clashes: blocked } = passage(site, { from, to, z });
    for (const { wall, at } of holes)
      met.push({ wall, at, along: along + Math.hypot(at[0] - from[0], at[1] - from[1]) });
    for (const id of blocked) clashes.push({ with: id, at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] });
    along += Math.hypot(to[0] - from[0], to[1] - from[1]);
  }
  const once = clashes.filter((one, i) => clashes.findIndex((other) => other.with === one.with) === i);
  return { met: met.toSorted((a, b) => a.along - b.along), clashes: once };
}

/** Pairs of wires by how far along the bus each reaches, mm. */
export type Pairs = readonly { readonly district: string; readonly reach: number }[];

/** The holes of a bus, each once however often wires pass it, in the order they are met. */
export function busHoles(
  under: Under,
  met: readonly Met[],
  bus: { readonly z: number; readonly pairs: Pairs; readonly outside: number },
): readonly BusHole[] {
  const key = ({ wall, at }: Met) => `${wall.part} ${Math.round(at[0] * 10)} ${Math.round(at[1] * 10)}`;
  const groups = new Map<string, Met[]>();
  for (const one of met) groups.set(key(one), [...(groups.get(key(one)) ?? []), one]);
  return [...groups.values()].flatMap((group, i) => {
    const [first] = group;
    if (first === undefined) return [];
    const along = group.map((one) => one.along);
    const wires = along.reduce((sum, at) => sum + 2 * bus.pairs.filter(({ reach }) => reach > at - 1e-6).length, 0);
    const room = roomBeside(under, first, bus.z);
    const { wall } = first;
    const diameter = holeFor(Math.max(2, wires), bus.outside);
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
