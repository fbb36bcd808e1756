import { fromWorld, standing, toWorld } from '../geometry/pose.ts';
import type { Box, Point, Pose, Vector } from '../geometry/shapes.ts';
import type { WiredBench, WiringInput } from './input.ts';
import { type Bay, baysOf, footprintOf } from './routing/bays.ts';
import type { Obstruction, Site } from './routing/site.ts';
import { wallsOf } from './routing/walls.ts';
import { solidsOf } from './solids.ts';

/**
 * What lies under the decks, square to the bench the bus starts at: `frame` leads from there to notebook coordinates.
 * Benches that stand askew to that one have no walls here.
 */
export type Under = {
  readonly frame: Pose;
  /** of the deck, mm */
  readonly underside: number;
  readonly bench: WiredBench;
  readonly site: Site;
  readonly bays: readonly Bay[];
  /** heights from the floor a bus may run at, the best first; mm */
  readonly heights: readonly number[];
};

/** A wire over an open shelf may run this close under the deck, mm; common practice, no source. */
const ABOVE_SHELF = 40;

/** Room between a bus and what it passes over, mm; common practice, no source. */
const OVER = 3;

/** Heights nearer than this are one, mm. */
const CLOSE = 8;

/** A bus that cannot run through the struts' middles runs this far under the deck, its own half counted besides; mm. */
const UNDER_DECK = 14;

/** All wires of the bus together: half of what they measure, and of the hole they need; mm. */
export type Bundle = { readonly radius: number; readonly hole: number };

/** The site a bundle finds under the deck; null without a bench. */
export function underDeck({ ground, bus }: Pick<WiringInput, 'ground' | 'bus'>, bundle: Bundle): Under | null {
  const { radius } = bundle;
  const bench = benchAt(ground.benches, bus?.from ?? [0, 0]);
  if (bench === null) return null;
  const frame = standing([bench.place.x, bench.place.y], bench.place.turn);
  const poses = ground.benches.map(({ id, place }) => ({
    bench: id,
    pose: inFrame(frame, standing([place.x, place.y], place.turn)),
  }));
  const walls = wallsOf(ground.parts, poses, ground.fasteners);
  const site: Site = {
    footprints: ground.benches.flatMap(({ id }) => footprintOf(id, walls) ?? []),
    walls,
    obstructions: [
      ...ground.spaces.flatMap((space) => obstruction(space, frame)),
      ...solidsOf(ground.parts, poses, { walls, below: bench.sideTop }),
    ],
    ...bundle,
    reach: ground.reach,
  };
  const middle = (bench.sideTop + bench.strutUnderside) / 2;
  const high = bench.sideTop - UNDER_DECK - radius;
  const low = bench.strutUnderside + (bench.sideTop - bench.strutUnderside) / 3;
  const over = site.obstructions.map(({ box }) => box.max[2] + radius + OVER).filter((z) => z > middle && z < high);
  const heights = [...spread([middle, ...over, (middle + high) / 2]), high, low];
  return { frame, underside: bench.sideTop, bench, site, bays: baysOf(site), heights };
}

/** Heights in rising order; of some that lie close together the highest, which clears what the others clear. */
function spread(heights: readonly number[]): readonly number[] {
  const rising = heights.toSorted((a, b) => a - b);
  return rising.filter((z, i) => (rising[i + 1] ?? Number.POSITIVE_INFINITY) - z > CLOSE);
}

/** The bench whose length and width hold a point, else the first. */
function benchAt(benches: readonly WiredBench[], point: Point): WiredBench | null {
  const near = benches.map((bench) => {
    const [x, y] = fromWorld(standing([bench.place.x, bench.place.y], bench.place.turn), [point[0], point[1], 0]);
    return { bench, inside: x >= 0 && y >= 0 && x <= bench.length && y <= bench.width };
  });
  return near.find(({ inside }) => inside)?.bench ?? benches[0] ?? null;
}

/** A pose given in notebook coordinates, seen from the frame. */
function inFrame(frame: Pose, pose: Pose): Pose {
  const turned = (direction: Vector): Vector => {
    const [x, y, z] = fromWorld({ ...frame, origin: [0, 0, 0] }, direction);
    return [x, y, z];
  };
  return { origin: fromWorld(frame, pose.origin), x: turned(pose.x), y: turned(pose.y), z: turned(pose.z) };
}

function obstruction({ id, kind, box }: WiringInput['ground']['spaces'][number], frame: Pose): readonly Obstruction[] {
  const corners = [
    box.min,
    box.max,
    [box.min[0], box.max[1], box.min[2]],
    [box.max[0], box.min[1], box.min[2]],
  ] as const;
  const local = corners.map((corner) => fromWorld(frame, corner));
  const edge = (pick: (...all: number[]) => number, i: 0 | 1) => pick(...local.map((corner) => corner[i]));
  const top = kind === 'shelf' ? box.max[2] - ABOVE_SHELF : box.max[2];
  if (top <= box.min[2]) return [];
  const body: Box = {
    min: [edge(Math.min, 0), edge(Math.min, 1), box.min[2]],
    max: [edge(Math.max, 0), edge(Math.max, 1), top],
  };
  return [{ id, box: body }];
}

/** A point of the frame in notebook coordinates. */
export function outward({ frame }: Pick<Under, 'frame'>, [x, y]: Point, z: number): Vector {
  return toWorld(frame, [x, y, z]);
}

/** A point of the notebook in the frame. */
export function inward({ frame }: Pick<Under, 'frame'>, [x, y]: Point): Point {
  const [u, v] = fromWorld(frame, [x, y, 0]);
  return [u, v];
}
