import { union } from '../../core/geometry/booleans.ts';
import { type Convex, convexPieces } from '../../core/geometry/convex.ts';
import { convexHull } from '../../core/geometry/hull.ts';
import { bounds, clipConvex } from '../../core/geometry/polygon.ts';
import type { Point, Polygon, Vector } from '../../core/geometry/shapes.ts';
import type { SectionPlace } from '../../core/scenery/section.ts';
import { type Site, toBench } from '../../core/scenery/site.ts';
import type { Part } from '../../core/stock/part.ts';
import type { DrawingBook } from '../book.ts';
import { onceFor } from '../once.ts';
import { type Placed, placedParts, type Seen, solidOf } from '../scene.ts';

/** A plane is looked at this far beside its own place, mm: where two bodies of one part meet on it, one of them is cut. */
const BESIDE = 1e-5;

/** An upright plane over one straight piece of a way, on a bench: where it starts, which way it runs, and its place on the section; mm. */
type Plane = { readonly start: Point; readonly along: Point; readonly length: number; readonly s: number };

/** Overlap given to neighbouring planes so that their areas join, mm. */
const LAP = 1e-4;

/** What an upright cut along a way leaves of the benches' pieces: distance along it, and height from the floor; mm. */
export function cutAlong(
  { parts }: Pick<DrawingBook, 'parts'>,
  sites: readonly Site[],
  { way, roles }: { readonly way: readonly SectionPlace[]; readonly roles: readonly string[] },
): readonly Seen[] {
  return sites.flatMap((site) => {
    const planes = way.slice(1).map((to, i) => planeOn(site, way[i] ?? to, to));
    return placedParts(parts.filter((part) => part.bench === site.bench.id && roles.includes(part.role))).flatMap(
      (one) => cutPiece(one, planes) ?? [],
    );
  });
}

function planeOn({ pose }: Site, from: SectionPlace, to: SectionPlace): Plane {
  const [start, end] = [toBench(pose, [from.x, from.y]), toBench(pose, [to.x, to.y])];
  const size = Math.hypot(end[0] - start[0], end[1] - start[1]) || 1;
  return { start, along: [(end[0] - start[0]) / size, (end[1] - start[1]) / size], length: to.s - from.s, s: from.s };
}

/** The convex pieces of a part at each of its places, the same for all sections. */
const bodiesAt = onceFor(
  (part: Part) => new Map(part.places.map((place) => [place, convexPieces(solidOf(part), place.pose)])),
);

function cutPiece({ part, place }: Placed, planes: readonly Plane[]): Seen | null {
  const bodies = bodiesAt(part).get(place) ?? [];
  const loops = planes.flatMap((plane) => bodies.flatMap((body) => cutBody(body, plane)));
  if (loops.length === 0) return null;
  const areas: readonly Polygon[] = union(loops, []);
  return { id: place.id, label: place.label, role: part.role, areas, near: 0, far: 0 };
}

/** Whether a plane's own length reaches the box of a body, seen from above: most are far off. */
function comesNear({ box: { min, max } }: Convex, { start, along, length }: Plane): boolean {
  return ([0, 1] as const).every((axis) => {
    const end = start[axis] + along[axis] * length;
    return Math.min(start[axis], end) <= max[axis] + 1 && Math.max(start[axis], end) >= min[axis] - 1;
  });
}

/** The loop in which a plane cuts a convex body, within the plane's own length; none where it misses. */
function cutBody(body: Convex, plane: Plane): readonly (readonly Point[])[] {
  if (!comesNear(body, plane)) return [];
  const off = ([x, y]: Vector) =>
    (y - plane.start[1]) * plane.along[0] - (x - plane.start[0]) * plane.along[1] - BESIDE;
  const sides = body.corners.map(off);
  if (Math.min(...sides) >= -1e-9 || Math.max(...sides) <= 1e-9) return [];
  const met = body.faces.flatMap((face) =>
    face.flatMap((p, i) => {
      const q = face[(i + 1) % face.length] ?? p;
      const [dp, dq] = [off(p), off(q)];
      if (dp > 0 === dq > 0) return [];
      const share = dp / (dp - dq);
      const at = (axis: 0 | 1 | 2) => p[axis] + (q[axis] - p[axis]) * share;
      const u = (at(0) - plane.start[0]) * plane.along[0] + (at(1) - plane.start[1]) * plane.along[1];
      return [[u, at(2)] as const];
    }),
  );
  return withinLength(convexHull(met), plane);
}

/** The part of a convex loop over the plane's own length, moved to its place on the section. */
function withinLength(loop: readonly Point[], { length, s }: Plane): readonly (readonly Point[])[] {
  const begun = clipConvex(loop, { normal: [-1, 0], offset: LAP });
  const kept = clipConvex(begun, { normal: [1, 0], offset: length + LAP });
  if (kept.length < 3) return [];
  const { low, high } = bounds(kept);
  return high[0] - low[0] < 2 * LAP ? [] : [kept.map(([u, z]): Point => [s + u, z])];
}
