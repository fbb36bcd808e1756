import type { Point } from '../../geometry/shapes.ts';
import { KEEP, meets, outlineOf, type Range, type Site, type Wall, widened } from './site.ts';

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
  const x: Range = [Math.min(from[0], to[0]), Math.max(from[0], to[0])];
  const y: Range = [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
  const { radius } = site;
  const spaces = site.obstructions.filter(
    ({ box }) =>
      overlaps(x, [box.min[0], box.max[0]], radius) &&
      overlaps(y, [box.min[1], box.max[1]], radius) &&
      overlaps([z, z], [box.min[2], box.max[2]], radius),
  );
  const met = site.walls.filter((wall) => {
    const outline = outlineOf(wall);
    return overlaps(x, outline.x, radius) && overlaps(y, outline.y, radius) && overlaps([z, z], wall.z, radius);
  });
  const through = met.map((wall) => ({ wall, at: drilled({ x, y }, wall, { z, radius }) }));
  return {
    holes: through.flatMap(({ wall, at }) => (at === null ? [] : [{ wall, at }])),
    clashes: [...through.flatMap(({ wall, at }) => (at === null ? [wall.part] : [])), ...spaces.map(({ id }) => id)],
  };
}

function overlaps(a: Range, b: Range, radius: number): boolean {
  return meets(widened(a, radius), b);
}

/** The middle of a hole through a wall; null where the stretch runs along it or meets a joint. */
function drilled(
  { x, y }: { readonly x: Range; readonly y: Range },
  wall: Wall,
  { z, radius }: { readonly z: number; readonly radius: number },
): Point | null {
  const [across, beside] = wall.along === 'x' ? [y, x] : [x, y];
  const goesThrough = across[0] < wall.faces[0] && across[1] > wall.faces[1] && beside[0] === beside[1];
  const place = beside[0];
  const room = radius + KEEP;
  const fits =
    place - room >= wall.span[0] && place + room <= wall.span[1] && z - radius > wall.z[0] && z + radius < wall.z[1];
  const free = !wall.taken.some(
    ({ span, z: high }) => meets(widened([place, place], room), span) && meets(widened([z, z], radius), high),
  );
  if (!goesThrough || !fits || !free) return null;
  const middle = (wall.faces[0] + wall.faces[1]) / 2;
  return wall.along === 'x' ? [place, middle] : [middle, place];
}
