import { type Line, stretchInside } from '../geometry/line.ts';
import type { Box, Vector } from '../geometry/shapes.ts';
import { plus, times } from '../geometry/vector.ts';
import type { Joint } from '../stock/part.ts';
import type { Clamping, Placing } from './assembly.ts';
import type { Body } from './body.ts';
import type { ClampsInHand, Workshop } from './workshop.ts';

const NAMES = ['x', 'y', 'z'] as const;
const AXES = [0, 1, 2] as const;
type Axis = (typeof AXES)[number];

/** What is glued by one move, and everything that stands once it is done. */
export type Gluing = {
  readonly placing: Placing;
  readonly joints: readonly Joint[];
  readonly standing: readonly Body[];
};

/** Where a clamp is to press: along which axis, through which point, and what it stands over. */
type Spot = { readonly axis: Axis; readonly at: Vector; readonly over: string };

/** Coordinates of a clamp's jaws along its axis, mm. */
type Jaws = { readonly from: number; readonly to: number };

/** A clamp that is set. */
type Clamp = Jaws & { readonly axis: Axis; readonly at: Vector; readonly over: readonly string[] };

/**
 * Clamps for several moves glued in one go, set once all their pieces are in. One over each pocketed joint, along the way
 * its mate went in: common practice, no source. Along a glue line one every `spacing`, `inset` from its ends. A clamp
 * presses `inset` to each side; its opening is the wood between its jaws, on the solids. Laps need none. mm.
 */
export function clampsFor(glued: readonly Gluing[], workshop: Workshop): readonly Clamping[] {
  const standing = glued.at(-1)?.standing ?? [];
  const set: Clamp[] = [];
  for (const spot of glued.flatMap((one) => spotsOf(one, workshop))) {
    const { from, to } = jaws(spot, standing);
    const near = set.findIndex((clamp) => presses(clamp, { ...spot, from, to }, workshop.inset));
    const known = set[near];
    if (known === undefined) set.push({ axis: spot.axis, at: spot.at, from, to, over: [spot.over] });
    else set[near] = shared(known, { ...spot, from, to });
  }
  return bySize(set);
}

/** One clamp for two spots, half way between them. */
function shared(clamp: Clamp, { at, from, to, over }: Spot & Jaws): Clamp {
  return {
    axis: clamp.axis,
    at: times(plus(clamp.at, at), 1 / 2),
    from: Math.min(from, clamp.from),
    to: Math.max(to, clamp.to),
    over: [...new Set([...clamp.over, over])],
  };
}

/** Clamps that open alike along one axis, counted; the longest first. */
function bySize(set: readonly Clamp[]): readonly Clamping[] {
  const found = new Map<string, Clamping>();
  for (const { axis, from, to, over } of set) {
    const key = `${axis} ${Math.round(to - from)}`;
    const known = found.get(key) ?? { along: NAMES[axis], reach: 0, count: 0, at: [] };
    const at = [...new Set([...known.at, ...over])];
    found.set(key, { ...known, reach: Math.max(known.reach, to - from), count: known.count + 1, at });
  }
  return [...found.values()].sort((a, b) => b.reach - a.reach);
}

function spotsOf({ placing, joints, standing }: Gluing, workshop: Workshop): readonly Spot[] {
  return joints.flatMap((joint): readonly Spot[] => {
    const [a, b] = joint.between.map((id) => standing.find((one) => one.id === id));
    if (joint.kind === 'lap' || a === undefined || b === undefined) return [];
    const goesIn = placing.parts.includes(a.id) ? a.id : b.id;
    if (joint.kind === 'bearing' || joint.kind === 'butt') return alongLine([a.box, b.box], goesIn, workshop);
    return [{ axis: mainAxis(placing.direction), at: middleOf(a.box, b.box), over: goesIn === a.id ? b.id : a.id }];
  });
}

function mainAxis(direction: Vector): Axis {
  return AXES.reduce<Axis>((most, i) => (Math.abs(direction[i]) > Math.abs(direction[most]) ? i : most), 0);
}

/** Spots along the face two parts share, square to it. */
function alongLine([a, b]: readonly [Box, Box], over: string, { spacing, inset }: Workshop): readonly Spot[] {
  const axis = AXES.reduce<Axis>((least, i) => (overlap(a, b, i) < overlap(a, b, least) ? i : least), 0);
  const line = AXES.filter((i) => i !== axis).reduce((most, i) => (overlap(a, b, i) > overlap(a, b, most) ? i : most));
  const long = overlap(a, b, line);
  const count = long <= 2 * inset ? 1 : Math.ceil((long - 2 * inset) / spacing - 1e-9) + 1;
  const first = Math.max(a.min[line], b.min[line]);
  return Array.from({ length: count }, (_, i) => {
    const along = count === 1 ? long / 2 : inset + (i * (long - 2 * inset)) / (count - 1);
    const middle = middleOf(a, b);
    const at: Vector = [
      line === 0 ? first + along : middle[0],
      line === 1 ? first + along : middle[1],
      line === 2 ? first + along : middle[2],
    ];
    return { axis, at, over };
  });
}

function overlap(a: Box, b: Box, axis: Axis): number {
  return Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]);
}

function middleOf(a: Box, b: Box): Vector {
  const middle = (i: Axis) => (Math.max(a.min[i], b.min[i]) + Math.min(a.max[i], b.max[i])) / 2;
  return [middle(0), middle(1), middle(2)];
}

/** Pieces further apart than this on a clamp's line are not pressed together, mm: more than any clearance, less than any part. */
const APART = 1.5;

/** The pieces on a clamp's line that are pressed together through its spot; coordinates along the axis, mm. */
function jaws({ axis, at }: Spot, standing: readonly Body[]): Jaws {
  const direction: Vector = [axis === 0 ? 1 : 0, axis === 1 ? 1 : 0, axis === 2 ? 1 : 0];
  const stretches = standing.flatMap((one) => onLine(one, { point: at, direction })).sort((a, b) => a[0] - b[0]);
  let [from, to] = [0, 0];
  for (const [low, high] of stretches) if (low <= to + APART) to = Math.max(to, high);
  for (const [low, high] of stretches.toSorted((a, b) => b[1] - a[1]))
    if (high >= from - APART) from = Math.min(from, low);
  return { from: at[axis] + from, to: at[axis] + to };
}

/** The stretch that a piece takes up on a line: it is stiff, so a slot or a hole in it breaks no pressure. */
function onLine({ pieces }: Body, line: Line): readonly (readonly [from: number, to: number])[] {
  const inside = pieces.flatMap((piece) => [stretchInside(piece, line)]).filter((one) => one !== null);
  return inside.length === 0
    ? []
    : [[Math.min(...inside.map(([low]) => low)), Math.max(...inside.map(([, high]) => high))]];
}

/** Whether a clamp that is set does for another spot: the same way, near its line, over the same wood. */
function presses(clamp: Clamp, spot: Omit<Clamp, 'over'>, inset: number): boolean {
  if (clamp.axis !== spot.axis || clamp.to < spot.from || spot.to < clamp.from) return false;
  const aside = AXES.filter((i) => i !== clamp.axis).map((i) => clamp.at[i] - spot.at[i]);
  return Math.hypot(...aside) <= inset;
}

/** How many of the clamps in hand open far enough. */
export function inHand(clamps: ClampsInHand, reach: number): number {
  return clamps.reduce((sum, { opening, count }) => (opening >= reach ? sum + count : sum), 0);
}

/** Whether the clamps in hand do for a stage, the longest given out first; true when nobody said what is in hand. */
export function clampsSuffice(wanted: readonly Clamping[], clamps: ClampsInHand | null): boolean {
  return clamps === null || borrowed([wanted], clamps).length === 0;
}

/** Clamps that are missing in stages done one after the other: how many that open so far, the longest first. */
export function borrowed(
  stages: readonly (readonly Clamping[])[],
  clamps: ClampsInHand,
): readonly { readonly reach: number; readonly count: number }[] {
  const sizes = [...new Set(stages.flatMap((wanted) => wanted.map(({ reach }) => reach)))].sort((a, b) => b - a);
  let there = 0;
  return sizes.flatMap((reach) => {
    const asked = Math.max(...stages.map((wanted) => askedFor(wanted, reach)));
    const count = asked - inHand(clamps, reach) - there;
    if (count <= 0) return [];
    there += count;
    return [{ reach, count }];
  });
}

/** Clamps of a stage that open a length or more. */
function askedFor(wanted: readonly Clamping[], reach: number): number {
  return wanted.reduce((sum, one) => (one.reach >= reach ? sum + one.count : sum), 0);
}
