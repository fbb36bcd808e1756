import type { Point, Vector } from '../geometry/shapes.ts';
import type { WiredBench } from './input.ts';
import { onBench } from './on-bench.ts';
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
  const meeting = meetingOf(laid.limbs, spots);
  const near = asked ?? meeting?.at ?? null;
  if (near === null) return null;
  const room = roomNear(under, laid, near);
  const at = room ?? near;
  const { id } = unit;
  const parting = asked === null && meeting !== null ? atMeeting(under, laid.z, { id, at, meeting }) : null;
  const bare = meeting === null ? null : bareTap(under, id, meeting);
  const tap = parting ?? tapFor(under, laid, { id, at }) ?? bare;
  if (tap === null) return null;
  const place = outward(under, at, under.underside - UNIT_SIZE[2] / 2);
  const own = onBench(under, benches, at);
  return { ...unit, tap, place, clear: room !== null, bench: own.bench, onBench: own.place };
}

/** Where the ways to a unit's feeders part. */
type Meeting = { readonly spot: BusSpot; readonly at: Point };

function meetingOf(limbs: readonly Limb[], spots: readonly BusSpot[]): Meeting | null {
  const spot = partingOf(limbs, spots);
  const limb = limbs[spot?.limb ?? -1];
  return spot === null || limb === undefined ? null : { spot, at: pointAlong(limb, spot.along) };
}

type ToMeet = { readonly id: string; readonly at: Point; readonly meeting: Meeting };

/** Joined where the ways to its feeders part, so that its own pair begins there; null where nothing leads there. */
function atMeeting(under: Under, z: number, { at, id, meeting }: ToMeet): Tap | null {
  const only = { path: [meeting.at, meeting.at], of: null, from: meeting.spot.along };
  const tap = tapFor(under, { limbs: [only], z }, { id, at });
  return tap === null ? null : { ...tap, ...meeting.spot };
}

/** Right where the ways part, for a unit that finds no room. */
function bareTap({ bays }: Under, id: string, { at, spot }: Meeting): Tap {
  return { drop: id, ...spot, at, way: [at, at], across: 0, bay: nearestBay(bays, at)?.bay.id ?? '' };
}
