import type { Box } from '../geometry/shapes.ts';
import type { Joint } from '../stock/part.ts';
import type { Clamping, Placing } from './assembly.ts';
import type { Body } from './body.ts';
import { boxRound } from './engagement.ts';
import type { ClampsInHand, Workshop } from './workshop.ts';

const AXES = ['x', 'y', 'z'] as const;

/** One clamp: along which axis, how far it must open (mm), and what it stands over. */
type Wanted = { readonly along: 'x' | 'y' | 'z'; readonly reach: number; readonly at: string };

/** What is glued by one move, and everything that stands once it is done. */
export type Gluing = {
  readonly placing: Placing;
  readonly joints: readonly Joint[];
  readonly standing: readonly Body[];
};

/**
 * Clamps for several moves glued in one go: one over each pocketed joint, shared by the two ends of what it
 * stands over and opened for the longer; along a glue line one every `spacing`. Laps need none. By axis, mm.
 */
export function clampsFor(glued: readonly Gluing[], workshop: Workshop): readonly Clamping[] {
  const wanted = glued.flatMap((one) => wantedBy(one, workshop));
  const found = new Map<string, Clamping>();
  for (const { along, reach, at } of wanted) {
    const key = along === 'z' ? `z ${Math.round(reach)}` : along;
    const known = found.get(key) ?? { reach, along, count: 0, at: [] };
    const over = known.at.includes(at) ? known.at : [...known.at, at];
    found.set(key, { along, reach: Math.max(reach, known.reach), count: over.length, at: over });
  }
  return [...found.values()];
}

function wantedBy({ placing, joints, standing }: Gluing, workshop: Workshop): readonly Wanted[] {
  const axis = mainAxis(placing.direction);
  const all = boxRound(standing);
  return joints.flatMap((joint): readonly Wanted[] => {
    if (joint.kind === 'lap') return [];
    const mate = joint.between.find((id) => !placing.parts.includes(id)) ?? joint.between[0];
    if (joint.kind === 'bearing' || joint.kind === 'butt') return alongLine(joint, { placing, standing, workshop });
    return [{ along: AXES[axis], reach: all.max[axis] - all.min[axis], at: mate }];
  });
}

function mainAxis(direction: readonly [number, number, number]): 0 | 1 | 2 {
  const [x, y, z] = direction.map(Math.abs);
  if ((x ?? 0) >= (y ?? 0) && (x ?? 0) >= (z ?? 0)) return 0;
  return (y ?? 0) >= (z ?? 0) ? 1 : 2;
}

type Line = { readonly placing: Placing; readonly standing: readonly Body[]; readonly workshop: Workshop };

/** Clamps along the face two parts share, square to it; the layers of one sub-assembly are clamped together. */
function alongLine(joint: Joint, { placing, standing, workshop }: Line): readonly Wanted[] {
  const [a, b] = joint.between.map((id) => standing.find((one) => one.id === id));
  if (a === undefined || b === undefined) return [];
  const axis = touchingAxis(a.box, b.box);
  const long = Math.max(...INDICES.filter((i) => i !== axis).map((i) => shared(a.box, b.box, i)));
  const over = boxRound(placing.within === null ? [a, b] : standing);
  const { spacing, inset } = workshop;
  const count = long <= 2 * inset ? 1 : Math.ceil((long - 2 * inset) / spacing - 1e-9) + 1;
  const name = placing.within === null ? b.id : placing.within;
  return Array.from({ length: count }, (_, i) => ({
    along: AXES[axis],
    reach: over.max[axis] - over.min[axis],
    at: `${name} ${i + 1} of ${count}`,
  }));
}

const INDICES = [0, 1, 2] as const;

/** The axis along which two boxes that touch share least. */
function touchingAxis(a: Box, b: Box): 0 | 1 | 2 {
  return INDICES.reduce<0 | 1 | 2>((least, i) => (shared(a, b, i) < shared(a, b, least) ? i : least), 0);
}

function shared(a: Box, b: Box, axis: 0 | 1 | 2): number {
  return Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]);
}

/** How many of the clamps in hand open far enough. */
export function inHand(clamps: ClampsInHand, reach: number): number {
  return clamps.reduce((sum, { opening, count }) => (opening >= reach ? sum + count : sum), 0);
}

/** Whether the clamps in hand do for a stage, the longest given out first; true when nobody said what is in hand. */
export function clampsSuffice(wanted: readonly Clamping[], clamps: ClampsInHand | null): boolean {
  if (clamps === null) return true;
  const rising = [...wanted].sort((a, b) => b.reach - a.reach);
  return rising.every(({ reach }, i) => {
    const asked = rising.slice(0, i + 1).reduce((sum, { count }) => sum + count, 0);
    return asked <= inHand(clamps, reach);
  });
}
