import type { Point } from '../../geometry/shapes.ts';
import { KEEP, type Range, type Site, type Wall } from './site.ts';

/** A straight piece of wire square to the axes, and its height; mm. */
export type Stretch = { readonly from: Point; readonly to: Point; readonly z: number };

/** What a stretch meets: walls it goes through, where, and what it cannot pass. */
export type Passage = {
  readonly holes: readonly { readonly wall: Wall; readonly at: Point }[];
  /** ids of parts and of spaces in the way */
  readonly clashes: readonly string[];
};

/** The walls a stretch passes through and what stands in its way; square to the axes, else every wall is in the way. */
export function passage(site: Site, { from, to, z }: Stretch): Passage {
  const { radius } = site;
  const swept: Swept = {
    x: [Math.min(from[0], to[0]) - radius, Math.max(from[0], to[0]) + radius],
    y: [Math.min(from[1], to[1]) - radius, Math.max(from[1], to[1]) + radius],
    z: [z - radius, z + radius],
  };
  const clashes: string[] = [];
  const holes: { readonly wall: Wall; readonly at: Point }[] = [];
  for (const wall of site.walls) {
    const [x, y] = wall.along === 'x' ? [wall.span, wall.faces] : [wall.faces, wall.span];
    if (!overlaps(swept.x, x) || !overlaps(swept.y, y) || !overlaps(swept.z, wall.z)) continue;
    const at = drilled({ from, to }, wall, { z, radius: site.hole });
    if (at === null) clashes.push(wall.part);
    else holes.push({ wall, at });
  }
  for (const { box, id } of site.obstructions) {
    const { min, max } = box;
    if (apart(swept.x, min[0], max[0]) || apart(swept.y, min[1], max[1]) || apart(swept.z, min[2], max[2])) continue;
    clashes.push(id);
  }
  return { holes, clashes };
}

type Swept = { readonly x: Range; readonly y: Range; readonly z: Range };

/** Less than this is only a touch, mm. */
const TOUCH = 1e-6;

function apart(range: Range, low: number, high: number): boolean {
  return range[1] - low <= TOUCH || high - range[0] <= TOUCH;
}

function overlaps(range: Range, [low, high]: Range): boolean {
  return !apart(range, low, high);
}

/** The middle of a hole through a wall; null where the stretch runs along it, near its edge or near another cut. */
function drilled(
  { from, to }: Omit<Stretch, 'z'>,
  wall: Wall,
  { z, radius }: { readonly z: number; readonly radius: number },
): Point | null {
  const x: Range = [Math.min(from[0], to[0]), Math.max(from[0], to[0])];
  const y: Range = [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
  const [across, beside] = wall.along === 'x' ? [y, x] : [x, y];
  const goesThrough = across[0] < wall.faces[0] && across[1] > wall.faces[1] && beside[0] === beside[1];
  const place = beside[0];
  const room = radius + KEEP;
  // a hole that leaves less wood than half its own width breaks out
  const wood = 2 * radius;
  const fits =
    place - room >= wall.span[0] && place + room <= wall.span[1] && z - wood >= wall.z[0] && z + wood <= wall.z[1];
  if (!goesThrough || !fits || isTaken(wall, { place, z, radius })) return null;
  const middle = (wall.faces[0] + wall.faces[1]) / 2;
  return wall.along === 'x' ? [place, middle] : [middle, place];
}

/** Whether a hole comes too near to a joint, another cut or a screw. */
function isTaken(
  { taken }: Wall,
  { place, radius, z }: { readonly place: number; readonly radius: number; readonly z: number },
): boolean {
  return taken.some(({ keep, span, z: high }) => {
    const room = radius + keep - TOUCH;
    return place + room > span[0] && place - room < span[1] && z + room > high[0] && z - room < high[1];
  });
}
