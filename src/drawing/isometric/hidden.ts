import { difference } from '../../core/geometry/booleans.ts';
import type { Convex } from '../../core/geometry/convex.ts';
import { convexHull } from '../../core/geometry/hull.ts';
import { area, bounds } from '../../core/geometry/polygon.ts';
import type { Point, Polygon, Vector } from '../../core/geometry/shapes.ts';
import { dot, minus, plus, times } from '../../core/geometry/vector.ts';
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

type Boxed = { readonly piece: Convex; readonly box: Box };

function boxed(shown: readonly Shown[]): readonly Boxed[] {
  return shown.flatMap((one) => one.pieces).map((piece) => ({ piece, box: flatBox(piece.corners) }));
}
type Box = { readonly low: Point; readonly high: Point };

function flatBox(corners: readonly Vector[]): Box {
  return bounds(corners.map(flat));
}

function visible(face: Face, pieces: readonly Boxed[]): readonly Polygon[] {
  const [outline, ...holes] = face.loops.map((loop) => loop.map(flat));
  return outline === undefined ? [] : uncovered(face, { outline, holes }, pieces);
}

/** What is left of an area of a face in the picture's plane when pieces stand before it. */
function uncovered(face: Face, { outline, holes }: Polygon, pieces: readonly Boxed[]): readonly Polygon[] {
  const box = bounds(outline);
  const shadows = pieces
    .filter((one) => apart(one.box, box) === false)
    .flatMap(({ piece }) => {
      const shadow = shadowOn(face, piece);
      return shadow.length > 2 ? [shadow] : [];
    });
  if (shadows.length === 0) return [{ outline, holes }];
  return difference([outline], [...holes, ...shadows]).filter((part) => area(part) > SLIVER && !isSliver(part));
}

function apart(a: Box, b: Box): boolean {
  return a.high[0] <= b.low[0] || b.high[0] <= a.low[0] || a.high[1] <= b.low[1] || b.high[1] <= a.low[1];
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
function shadowOn({ normal, offset }: Face, piece: Convex): readonly Point[] {
  const before = (p: Vector) => dot(normal, p) - offset;
  if (piece.corners.every((corner) => before(corner) <= TOUCH)) return [];
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
