import { difference } from '../../core/geometry/booleans.ts';
import type { Convex } from '../../core/geometry/convex.ts';
import { convexHull } from '../../core/geometry/hull.ts';
import { area } from '../../core/geometry/polygon.ts';
import type { Point, Polygon, Vector } from '../../core/geometry/shapes.ts';
import { dot, minus, plus, times } from '../../core/geometry/vector.ts';
import { once, onceFor } from '../once.ts';
import { flat, TOWARD } from './gaze.ts';
import { type Face, surfaceOf } from './surface.ts';

/** A thing in the picture: convex pieces that make one body, and the faces on its outside. */
export type Shown = { readonly id: string; readonly pieces: readonly Convex[]; readonly faces: readonly Face[] };

/** A body with its outside worked out. */
export function surfaced<One extends { readonly pieces: readonly Convex[] }>(one: One): One & Pick<Shown, 'faces'> {
  return { ...one, faces: surfaceOf(one.pieces) };
}

/** What is seen of one face of a body, in the plane of the picture; mm. */
export type Seen = { readonly id: string; readonly face: Face; readonly area: Polygon };

/** A piece nearer than this in front of a face only touches it, mm. */
const TOUCH = 1e-4;
/** Slivers are noise of the clipper: mm2 of the model. */
const SLIVER = 0.2;

/**
 * What is seen of every body, hidden faces gone. A convex piece hides of a face exactly the shadow of what of the piece
 * lies in front of the face's plane, since the line of sight from a point of a face leaves its plane at once and for good.
 */
export function seenOf(shown: readonly Shown[]): readonly Seen[] {
  return seenAmong(shown, boxed(shown));
}

/** What is seen when bodies join others of which is known what was seen: only the new ones hide what was seen before. */
export function seenJoined(
  before: readonly Seen[],
  standing: readonly Shown[],
  joining: readonly Shown[],
): readonly Seen[] {
  const fresh = boxed(joining);
  const left = before.flatMap(({ id, face, area: { outline, holes } }) =>
    uncovered(face, { outline, holes }, fresh).map((part): Seen => ({ id, face, area: part })),
  );
  return [...left, ...seenAmong(joining, [...boxed(standing), ...fresh])];
}

function seenAmong(shown: readonly Shown[], pieces: readonly Boxed[]): readonly Seen[] {
  return shown.flatMap(({ id, faces }) =>
    faces
      .filter(({ normal }) => dot(normal, TOWARD) > 1e-9)
      .flatMap((face) => visible(face, pieces).map((part): Seen => ({ id, face, area: part }))),
  );
}

/** A convex piece, what its picture spans, and its whole shadow. */
type Boxed = { readonly piece: Convex; readonly spans: Spans; readonly silhouette: () => Loop };
type Loop = readonly Point[];

/** The pieces of a body made ready, the same for every picture it is in. */
const boxedPieces = onceFor(({ pieces }: Shown) =>
  pieces.map((piece): Boxed => {
    const corners = piece.corners.map(flat);
    return { piece, spans: spansOf(corners), silhouette: once(() => convexHull(corners)) };
  }),
);

function boxed(shown: readonly Shown[]): readonly Boxed[] {
  return shown.flatMap(boxedPieces);
}

/** Square to the pictures of the three axes: what a square piece covers in the picture has no other edges than along them. */
const ACROSS: readonly Point[] = [
  [1, 0],
  [1 / 2, Math.sqrt(3) / 2],
  [1 / 2, -Math.sqrt(3) / 2],
];

/** From and to along each of the three directions, mm. */
type Spans = readonly (readonly [number, number])[];

function spansOf(points: Loop): Spans {
  return ACROSS.map(([u, v]) => {
    let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const [x, y] of points) {
      const along = x * u + y * v;
      if (along < from) from = along;
      if (along > to) to = along;
    }
    return [from, to];
  });
}

function isApart(a: Spans, b: Spans): boolean {
  return a.some(([from, to], i) => {
    const [low, high] = b[i] ?? [from, to];
    return to <= low || high <= from;
  });
}

function visible(face: Face, pieces: readonly Boxed[]): readonly Polygon[] {
  const [outline, ...holes] = face.loops.map((loop) => loop.map(flat));
  return outline === undefined ? [] : uncovered(face, { outline, holes }, pieces);
}

/** What is left of an area of a face in the picture's plane when pieces stand before it. */
function uncovered(face: Face, { outline, holes }: Polygon, pieces: readonly Boxed[]): readonly Polygon[] {
  const spans = spansOf(outline);
  const shadows: Loop[] = [];
  for (const one of pieces) {
    if (isApart(one.spans, spans)) continue;
    const shadow = shadowOn(face, one);
    if (shadow.length < 3) continue;
    if (liesIn(outline, shadow)) return [];
    shadows.push(shadow);
  }
  if (shadows.length === 0) return [{ outline, holes }];
  return difference([outline], [...holes, ...shadows]).filter((part) => area(part) > SLIVER && !isSliver(part));
}

/** Whether points lie in a convex loop that runs counter-clockwise. */
function liesIn(points: Loop, loop: Loop): boolean {
  return loop.every(([ax, ay], i) => {
    const [bx, by] = loop[(i + 1) % loop.length] ?? [ax, ay];
    return points.every(([x, y]) => (bx - ax) * (y - ay) >= (by - ay) * (x - ax));
  });
}

/** Thinner than a hundredth of a millimetre along all its length. */
function isSliver(polygon: Polygon): boolean {
  const around = polygon.outline.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = polygon.outline[(i + 1) % polygon.outline.length] ?? [x, y];
    return sum + Math.hypot(nextX - x, nextY - y);
  }, 0);
  return area(polygon) < around * 0.01;
}

/** The shadow that the part of a convex piece in front of a face's plane throws on it along the line of sight. */
function shadowOn({ normal, offset }: Face, { piece, silhouette }: Boxed): Loop {
  const before = (p: Vector) => dot(normal, p) - offset;
  if (piece.corners.every((corner) => before(corner) <= TOUCH)) return [];
  if (piece.corners.every((corner) => before(corner) >= 0)) return silhouette();
  const front = piece.faces.flatMap((loop) =>
    loop.flatMap((p, i): readonly Vector[] => {
      const next = loop[(i + 1) % loop.length] ?? p;
      const [here, there] = [before(p), before(next)];
      const kept = here >= 0 ? [p] : [];
      return here * there < 0 ? [...kept, plus(p, times(minus(next, p), here / (here - there)))] : kept;
    }),
  );
  return convexHull(front.map(flat));
}
