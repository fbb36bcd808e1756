import type { Box, HalfSpace, Point, Pose, Prism, Solid, Vector } from './shapes.ts';
import { slabs } from './slabs.ts';
import { cross, dot, minus, placed, plus, times, turned, unit } from './vector.ts';

/**
 * A convex body in the coordinates around its part: corners, the directions of its face normals and edges (each once,
 * either way round) and its box. `square` says that its faces are the box's own. mm.
 */
export type Convex = {
  readonly faces: readonly (readonly Vector[])[];
  readonly corners: readonly Vector[];
  readonly normals: readonly Vector[];
  readonly edges: readonly Vector[];
  readonly box: Box;
  readonly square: boolean;
};

const SAME_DIRECTION = 1e-9;
const ON_PLANE = 1e-9;

/** The convex pieces whose union is the solid, placed by `pose`. */
export function convexPieces(solid: Solid, pose: Pose): readonly Convex[] {
  return solid.prisms.flatMap((prism) =>
    slabs(prism.polygon)
      .map((slab) => clipped(prismFaces(slab, prism), solid.cuts))
      .filter((faces) => faces.length > 3)
      .map((faces) => convex(faces.map((face) => face.map((corner) => placed(pose, corner))))),
  );
}

/** A convex body from its faces, each a loop of corners in space. */
export function convex(faces: readonly (readonly Vector[])[]): Convex {
  const corners = faces.flat();
  const normals = directions(faces.map(faceNormal));
  const edges = directions(
    faces.flatMap((face) => face.map((corner, i) => unit(minus(face[(i + 1) % face.length] ?? corner, corner)))),
  );
  return { faces, corners, normals, edges, box: boxOf(corners), square: normals.every(isAxis) };
}

/** A convex body moved by a vector, mm. */
export function shifted(body: Convex, by: Vector): Convex {
  const faces = body.faces.map((face) => face.map((corner) => plus(corner, by)));
  const box = { min: plus(body.box.min, by), max: plus(body.box.max, by) };
  return { ...body, faces, corners: faces.flat(), box };
}

/** The smallest box around corners, mm. */
export function boxOf(corners: readonly Vector[]): Box {
  const least = (axis: 0 | 1 | 2) => corners.reduce((low, c) => Math.min(low, c[axis]), Number.POSITIVE_INFINITY);
  const most = (axis: 0 | 1 | 2) => corners.reduce((high, c) => Math.max(high, c[axis]), Number.NEGATIVE_INFINITY);
  return { min: [least(0), least(1), least(2)], max: [most(0), most(1), most(2)] };
}

/** Half-spaces of a solid's cuts as they stand around a placed part. */
export function placedCut(cut: HalfSpace, pose: Pose): HalfSpace {
  const normal = turned(pose, cut.normal);
  return { normal, offset: cut.offset + dot(normal, pose.origin) };
}

function prismFaces(slab: readonly Point[], prism: Prism): readonly (readonly Vector[])[] {
  const at = (z: number) => slab.map(([x, y]): Vector => [x, y, z]);
  const low = at(prism.from);
  const high = at(prism.to);
  const sides = low.map((corner, i): readonly Vector[] => {
    const next = (i + 1) % low.length;
    return [corner, low[next] ?? corner, high[next] ?? corner, high[i] ?? corner];
  });
  return [[...low].reverse(), high, ...sides];
}

/** Cuts a convex body, face by face, and closes each cut with a face of its own. */
function clipped(faces: readonly (readonly Vector[])[], cuts: readonly HalfSpace[]): readonly (readonly Vector[])[] {
  return cuts.reduce((body, cut) => cutBy(body, cut), faces);
}

function cutBy(faces: readonly (readonly Vector[])[], cut: HalfSpace): readonly (readonly Vector[])[] {
  const beyond = (p: Vector) => dot(cut.normal, p) - cut.offset;
  if (faces.every((face) => face.every((p) => beyond(p) <= ON_PLANE))) return faces;
  const kept = faces.map((face) => clipLoop(face, beyond)).filter((face) => face.length > 2);
  const cap = capOf(
    kept.flat().filter((p) => Math.abs(beyond(p)) <= 1e-7),
    cut.normal,
  );
  return cap.length > 2 ? [...kept, cap] : kept;
}

function clipLoop(loop: readonly Vector[], beyond: (p: Vector) => number): readonly Vector[] {
  return loop.flatMap((p, i) => {
    const next = loop[(i + 1) % loop.length] ?? p;
    const [here, there] = [beyond(p), beyond(next)];
    const inside = here <= ON_PLANE ? [p] : [];
    const crosses = (here < -ON_PLANE && there > ON_PLANE) || (here > ON_PLANE && there < -ON_PLANE);
    return crosses ? [...inside, plus(p, times(minus(next, p), here / (here - there)))] : inside;
  });
}

/** The corners of a cut in order round their middle. */
function capOf(points: readonly Vector[], normal: Vector): readonly Vector[] {
  const distinct = points.filter(
    (p, i) => points.findIndex((q) => Math.max(...minus(p, q).map(Math.abs)) < 1e-7) === i,
  );
  const first = distinct[0];
  if (first === undefined) return [];
  const middle = times(distinct.reduce(plus), 1 / distinct.length);
  const u = distinct.map((p) => unit(minus(p, middle))).find((d) => d !== null);
  if (u === undefined || u === null) return [];
  const v = cross(normal, u);
  const angle = (p: Vector) => Math.atan2(dot(minus(p, middle), v), dot(minus(p, middle), u));
  return [...distinct].sort((a, b) => angle(a) - angle(b));
}

function faceNormal(face: readonly Vector[]): Vector | null {
  const [a, ...rest] = face;
  if (a === undefined) return null;
  const sum = rest.slice(1).reduce<Vector>(
    (total, c, i) => {
      const b = rest[i] ?? a;
      return plus(total, cross(minus(b, a), minus(c, a)));
    },
    [0, 0, 0],
  );
  return unit(sum);
}

/** Each direction once, whichever way it points. */
function directions(all: readonly (Vector | null)[]): readonly Vector[] {
  const kept: Vector[] = [];
  for (const d of all) {
    if (d !== null && !kept.some((k) => Math.abs(dot(k, d)) > 1 - SAME_DIRECTION)) kept.push(d);
  }
  return kept;
}

function isAxis(d: Vector): boolean {
  return d.some((part) => Math.abs(part) > 1 - SAME_DIRECTION);
}
