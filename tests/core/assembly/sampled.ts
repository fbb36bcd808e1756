import type { Placing } from '../../../src/core/assembly/assembly.ts';
import { holds } from '../../../src/core/geometry/polygon.ts';
import type { Solid, Vector } from '../../../src/core/geometry/shapes.ts';
import { dot, minus, placed, plus, times } from '../../../src/core/geometry/vector.ts';
import type { Part, Placement } from '../../../src/core/stock/part.ts';
import { partSolid } from '../../../src/core/stock/solid.ts';

type Standing = { readonly solid: Solid; readonly place: Placement; readonly points: readonly Vector[] };

/** Inside of the skin by this, so that faces that touch do not count, mm. */
const SKIN = 1e-3;

/**
 * Where sampled points of what moves lie inside sampled solids of what stands, at steps along the path: by point in
 * polygon on the parts' own prisms, with none of the code that finds the path. One sentence a hit.
 */
export function hitsOnPath(
  parts: readonly Part[],
  order: readonly Placing[],
  steps: readonly number[],
): readonly string[] {
  const all = new Map(parts.flatMap((part) => part.places.map((place) => [place.id, standing(part, place)] as const)));
  const placedIds: string[] = [];
  return order.flatMap((placing) => {
    const hits = placing.parts.flatMap((id) =>
      steps.flatMap((back) => {
        const by = times(placing.direction, -back);
        const points = (all.get(id)?.points ?? []).map((point) => plus(point, by));
        return placedIds
          .filter((other) => points.some((point) => isInside(all.get(other), point)))
          .map((other) => `${id} in ${other} at ${back}`);
      }),
    );
    placedIds.push(...placing.parts);
    return hits;
  });
}

function standing(part: Part, place: Placement): Standing {
  const solid = partSolid(part);
  return { solid, place, points: pointsIn(part, solid).map((point) => placed(place.pose, point)) };
}

/** A grid through the blank, and points just inside every corner of every prism, as far as they lie in the part. */
function pointsIn({ blank }: Part, solid: Solid): readonly Vector[] {
  const shares = (count: number) => Array.from({ length: count }, (_, i) => (i + 0.5) / count);
  const grid = shares(41).flatMap((x) =>
    shares(9).flatMap((y) => shares(3).map((z): Vector => [x * blank.length, y * blank.width, z * blank.thickness])),
  );
  const corners = solid.prisms.flatMap(({ polygon, from, to }) =>
    [...polygon.outline, ...polygon.holes.flat()].flatMap(([x, y]) =>
      [-0.01, 0.01].flatMap((dx) =>
        [-0.01, 0.01].flatMap((dy) => [from + 0.01, to - 0.01].map((z): Vector => [x + dx, y + dy, z])),
      ),
    ),
  );
  return [...grid, ...corners].filter((point) => inSolid(solid, point));
}

function inSolid(solid: Solid, [x, y, z]: Vector): boolean {
  return solid.prisms.some(
    ({ polygon, from, to }) =>
      z > from + SKIN &&
      z < to - SKIN &&
      [-SKIN, SKIN].every((d) => holds(polygon, [x + d, y + d]) && holds(polygon, [x + d, y - d])),
  );
}

function isInside(one: Standing | undefined, point: Vector): boolean {
  if (one === undefined) return false;
  const { pose } = one.place;
  const from = minus(point, pose.origin);
  return inSolid(one.solid, [dot(from, pose.x), dot(from, pose.y), dot(from, pose.z)]);
}
