import { bounds } from '../../geometry/polygon.ts';
import { toWorld, within } from '../../geometry/pose.ts';
import type { Pose, Vector } from '../../geometry/shapes.ts';
import { bite } from '../../stock/bite.ts';
import type { Fastener } from '../../stock/fastener.ts';
import type { Part, Placement } from '../../stock/part.ts';
import { KEEP, OFF_SCREW, type Range, type Wall } from './site.ts';

/** Boards on edge carry a frame; these roles stand that way. */
const ON_EDGE: readonly string[] = ['strut', 'side', 'end', 'joist', 'rail', 'crosspiece'];

const JOINTS: readonly string[] = ['notch', 'dado', 'stopped-dado', 'rabbet'];

/** Directions this near to an axis are square to the others. */
const SQUARE = 1e-9;

/** A screw or a bolt in the coordinates of its bench. */
export type Screw = Pick<Fastener, 'diameter' | 'direction' | 'head' | 'length' | 'through'>;

type Standing = { readonly bench: string; readonly pose: Pose };

/** The walls of parts whose benches stand as given; boards that lie askew to the axes are left out. */
export function wallsOf(
  parts: readonly Part[],
  standing: readonly Standing[],
  fasteners: readonly Screw[] = [],
): readonly Wall[] {
  const instances = new Set(parts.flatMap(({ places }) => places.map(({ id }) => id)));
  return parts.flatMap((part) => {
    const bench = standing.find((one) => one.bench === part.bench);
    if (bench === undefined || part.phase === 'later' || !ON_EDGE.includes(part.role)) return [];
    return part.places.flatMap((place) => {
      const wall = wallOf({ part, place, instances }, within(bench.pose, place.pose));
      if (wall === null) return [];
      const screws = screwsIn(fasteners, { pose: bench.pose, wall: place.id }, wall.along === 'x' ? 0 : 1);
      return [{ ...wall, taken: [...wall.taken, ...screws] }];
    });
  });
}

type Boarded = { readonly part: Part; readonly place: Placement; readonly instances: ReadonlySet<string> };

function wallOf({ part, place, instances }: Boarded, pose: Pose): Wall | null {
  const along = axisOf(pose.x);
  if (along === null || Math.abs(Math.abs(pose.y[2]) - 1) > SQUARE) return null;
  const { length, width, thickness } = part.blank;
  const box = boxOf(pose, [0, 0, 0], [length, width, thickness]);
  const across = along === 'x' ? 1 : 0;
  return {
    part: place.id,
    bench: part.bench,
    role: part.role,
    along,
    span: box[along === 'x' ? 0 : 1],
    faces: box[across],
    z: box[2],
    taken: takenIn({ part, place, instances }, pose, along === 'x' ? 0 : 1),
  };
}

function axisOf(direction: Vector): 'x' | 'y' | null {
  if (Math.abs(Math.abs(direction[0]) - 1) < SQUARE) return 'x';
  return Math.abs(Math.abs(direction[1]) - 1) < SQUARE ? 'y' : null;
}

type Ranges = readonly [Range, Range, Range];

function boxOf(pose: Pose, low: Vector, high: Vector): Ranges {
  const [a, b] = [toWorld(pose, low), toWorld(pose, high)];
  const range = (i: 0 | 1 | 2): Range => [Math.min(a[i], b[i]), Math.max(a[i], b[i])];
  return [range(0), range(1), range(2)];
}

/** Where joints and cuts have taken wood, as boxes along the wall. */
function takenIn({ part, instances }: Boarded, pose: Pose, axis: 0 | 1): Wall['taken'] {
  return part.features.flatMap((feature) => {
    if (feature.kind === 'trim' || feature.kind === 'roundover') return [];
    const lost = bite(part.blank, feature);
    if (lost === null) return [];
    const { low, high } = bounds(lost.loops.flat());
    // where another board is let in, it stands over the whole height
    const letIn = JOINTS.includes(feature.kind) && (feature.for === undefined || instances.has(feature.for));
    const [foot, head] = letIn ? [0, part.blank.width] : [low[1], high[1]];
    const box = boxOf(pose, [low[0], foot, 0], [high[0], head, part.blank.thickness]);
    return [{ span: box[axis], z: box[2], keep: KEEP }];
  });
}

/** Where screws stand in a wall. */
function screwsIn(
  fasteners: readonly Screw[],
  { pose, wall }: { readonly pose: Pose; readonly wall: string },
  axis: 0 | 1,
): Wall['taken'] {
  return fasteners
    .filter(({ through }) => through.includes(wall))
    .map(({ diameter, direction, head, length }) => {
      const end: Vector = [
        head[0] + direction[0] * length,
        head[1] + direction[1] * length,
        head[2] + direction[2] * length,
      ];
      const [a, b] = [toWorld(pose, head), toWorld(pose, end)];
      const range = (i: 0 | 1 | 2): Range => [Math.min(a[i], b[i]) - diameter / 2, Math.max(a[i], b[i]) + diameter / 2];
      return { span: range(axis), z: range(2), keep: OFF_SCREW };
    });
}
