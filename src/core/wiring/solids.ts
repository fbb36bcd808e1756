import { toWorld, within } from '../geometry/pose.ts';
import type { Box, Pose } from '../geometry/shapes.ts';
import type { Part } from '../stock/part.ts';
import { meets, type Obstruction, outlineOf, type Range, type Wall } from './routing/site.ts';

/** Slides fill what is left between a drawer's side and what they hang on, up to this much; mm. */
const SLIDE = 40;

type Standing = { readonly bench: string; readonly pose: Pose };

/** What stands below a height and is no wall that a hole may go through: legs, drawers with their slides, shelves, trays, strips. */
export function solidsOf(
  parts: readonly Part[],
  standing: readonly Standing[],
  { walls, below }: { readonly walls: readonly Wall[]; readonly below: number },
): readonly Obstruction[] {
  const drilled = new Set(walls.map(({ part }) => part));
  const solids = parts.flatMap((part) => {
    const bench = standing.find((one) => one.bench === part.bench);
    if (bench === undefined || part.phase === 'later') return [];
    return part.places
      .filter(({ id }) => !drilled.has(id))
      .map(({ id, pose }) => ({ id, role: part.role, box: boxOf(part, within(bench.pose, pose)) }))
      .filter(({ box }) => box.min[2] < below - 1e-6);
  });
  const hung = [...solids.filter(({ role }) => role === 'drawer-spacer').map(({ box }) => box), ...walls.map(wallBox)];
  const slides = solids
    .filter(({ role }) => role === 'drawer-side')
    .flatMap(({ id, box }) =>
      hung.flatMap((other) => slideBetween(box, other)).map((gap) => ({ id: `${id}.slide`, box: gap })),
    );
  return [...solids.map(({ id, box }) => ({ id, box })), ...slides];
}

function boxOf({ blank }: Part, pose: Pose): Box {
  const corners = [0, blank.length].flatMap((x) =>
    [0, blank.width].flatMap((y) => [0, blank.thickness].map((z) => toWorld(pose, [x, y, z]))),
  );
  const edge = (pick: (...all: number[]) => number, i: 0 | 1 | 2) => pick(...corners.map((corner) => corner[i]));
  return {
    min: [edge(Math.min, 0), edge(Math.min, 1), edge(Math.min, 2)],
    max: [edge(Math.max, 0), edge(Math.max, 1), edge(Math.max, 2)],
  };
}

function wallBox(wall: Wall): Box {
  const { x, y } = outlineOf(wall);
  return { min: [x[0], y[0], wall.z[0]], max: [x[1], y[1], wall.z[1]] };
}

/** The slot between a drawer's side and what stands beside it, where they face each other; nothing where it is too wide. */
function slideBetween(side: Box, other: Box): readonly Box[] {
  const across = side.max[0] - side.min[0] < side.max[1] - side.min[1] ? 0 : 1;
  const along = across === 0 ? 1 : 0;
  const range = (box: Box, i: 0 | 1 | 2): Range => [box.min[i], box.max[i]];
  if (!meets(range(side, along), range(other, along)) || !meets(range(side, 2), range(other, 2))) return [];
  const [low, high] = side.min[across] > other.min[across] ? [other, side] : [side, other];
  const gap = high.min[across] - low.max[across];
  if (gap < 1e-6 || gap > SLIDE) return [];
  const slot = (i: 0 | 1 | 2): Range =>
    i === across
      ? [low.max[i], high.min[i]]
      : [Math.max(side.min[i], other.min[i]), Math.min(side.max[i], other.max[i])];
  const [x, y, z] = [slot(0), slot(1), slot(2)];
  return [{ min: [x[0], y[0], z[0]], max: [x[1], y[1], z[1]] }];
}
