import { fromWorld, standing } from '../geometry/pose.ts';
import type { Point, Vector } from '../geometry/shapes.ts';
import type { WiredBench } from './input.ts';
import { nearestBay } from './routing/bays.ts';
import { type BusSpot, type Limb, partingOf, pointAlong } from './routing/limbs.ts';
import { type LaidLimbs, type Tap, tapFor } from './routing/tap.ts';
import { outward, type Under } from './under.ts';
import { roomNear, UNIT_SIZE } from './unit-room.ts';
import type { UnitWanted } from './units.ts';

/** A unit in its place: where its wires leave the bus, and whether there is room for it. */
export type LaidUnit = UnitWanted & {
  readonly tap: Tap;
  /** its middle, notebook coordinates, mm */
  readonly place: Vector;
  readonly clear: boolean;
  /** the bench it hangs under, and where from that bench's front left corner, mm */
  readonly bench: string;
  readonly onBench: Point;
};

type Asked = {
  readonly unit: UnitWanted;
  /** where its feeders meet the bus */
  readonly spots: readonly BusSpot[];
  /** where it has to stand, frame coordinates, mm; null: near its feeders */
  readonly near: Point | null;
  readonly benches: readonly WiredBench[];
};

/** A unit near where the ways to its feeders part, or where it has to stand; null where the bus is not near. */
export function layUnit(under: Under, laid: LaidLimbs, { unit, spots, near: asked, benches }: Asked): LaidUnit | null {
  const meeting = partingOf(laid.limbs, spots);
  const limb = laid.limbs[meeting?.limb ?? -1];
  const near = asked ?? (meeting === null || limb === undefined ? null : pointAlong(limb, meeting.along));
  if (near === null) return null;
  const room = roomNear(under, laid, near);
  const at = room ?? near;
  const own = asked === null ? atMeeting(under, laid, { id: unit.id, at, meeting }) : null;
  const tap = own ?? tapFor(under, laid, { id: unit.id, at }) ?? bareTap(under, laid.limbs, { id: unit.id, meeting });
  if (tap === null) return null;
  const place = outward(under, at, under.underside - UNIT_SIZE[2] / 2);
  const bench = benches.find(({ id }) => id === nearestBay(under.bays, at)?.bay.bench) ?? under.bench;
  const [x, y] = fromWorld(standing([bench.place.x, bench.place.y], bench.place.turn), place);
  return { ...unit, tap, place, clear: room !== null, bench: bench.id, onBench: [x, y] };
}

type Meeting = { readonly id: string; readonly at: Point; readonly meeting: BusSpot | null };

/** Joined where the ways to its feeders part, so that its own pair begins there; null where nothing leads there. */
function atMeeting(under: Under, { limbs, z }: LaidLimbs, { at, id, meeting }: Meeting): Tap | null {
  const limb = limbs[meeting?.limb ?? -1];
  if (meeting === null || limb === undefined) return null;
  const point = pointAlong(limb, meeting.along);
  const only = { path: [point, point], of: null, from: meeting.along };
  const tap = tapFor(under, { limbs: [only], z }, { id, at });
  return tap === null ? null : { ...tap, ...meeting };
}

/** Right where the ways part, for a unit that finds no room. */
function bareTap(
  { bays }: Under,
  limbs: readonly Limb[],
  { id, meeting }: { readonly id: string; readonly meeting: BusSpot | null },
): Tap | null {
  const limb = limbs[meeting?.limb ?? -1];
  if (meeting === null || limb === undefined) return null;
  const at = pointAlong(limb, meeting.along);
  return { drop: id, ...meeting, at, way: [at, at], across: 0, bay: nearestBay(bays, at)?.bay.id ?? '' };
}
