import { difference } from '../../core/geometry/booleans.ts';
import type { Convex } from '../../core/geometry/convex.ts';
import { area } from '../../core/geometry/polygon.ts';
import type { Point, Polygon, Vector } from '../../core/geometry/shapes.ts';
import { cross, dot, minus, plus, times, unit } from '../../core/geometry/vector.ts';

/** A flat face on the outside of a body: loops in space, its outward normal and the plane's distance along it; mm. */
export type Face = { readonly loops: readonly (readonly Vector[])[]; readonly normal: Vector; readonly offset: number };

/** Areas below this are noise of the clipper, mm2. */
const NOISE = 1e-2;

/** A face moved by a vector, mm. */
export function shiftedFace({ loops, normal, offset }: Face, by: Vector): Face {
  return { loops: loops.map((loop) => loop.map((p) => plus(p, by))), normal, offset: offset + dot(normal, by) };
}

/** A face turned about an axis through the origin. */
export function turnedFace({ loops, normal, offset }: Face, turn: (p: Vector) => Vector): Face {
  return { loops: loops.map((loop) => loop.map(turn)), normal: turn(normal), offset };
}

type Sheet = { readonly normal: Vector; readonly offset: number; readonly out: Loop[]; readonly back: Loop[] };
type Loop = readonly Point[];

/** The outside of a body made of convex pieces: faces between pieces taken out, coplanar ones joined. */
export function surfaceOf(pieces: readonly Convex[]): readonly Face[] {
  const sheets = new Map<string, Sheet>();
  for (const piece of pieces) {
    const middle = times(piece.corners.reduce(plus), 1 / piece.corners.length);
    for (const face of piece.faces) addFace(sheets, face, middle);
  }
  return [...sheets.values()].flatMap((sheet) => [
    ...lifted(sheet, difference(sheet.out, sheet.back), 1),
    ...lifted(sheet, difference(sheet.back, sheet.out), -1),
  ]);
}

/** Notes a face on its plane, by which way the wood lies. */
function addFace(sheets: Map<string, Sheet>, face: readonly Vector[], middle: Vector): void {
  const found = normalOf(face);
  const [first] = face;
  if (found === null || first === undefined) return;
  const outward = dot(found, minus(first, middle)) > 0 ? found : times(found, -1);
  const way = firstSign(outward);
  const normal = times(outward, way);
  const offset = dot(normal, first);
  const key = [...normal.map((part) => Math.round(part * 1e6) + 0), Math.round(offset * 1e4) + 0].join(' ');
  const sheet = sheets.get(key) ?? { normal, offset, out: [], back: [] };
  sheets.set(key, sheet);
  const [u, v] = inPlane(sheet.normal);
  const loop = face.map((corner): Point => [dot(corner, u), dot(corner, v)]);
  (way > 0 ? sheet.out : sheet.back).push(loop);
}

function normalOf(face: readonly Vector[]): Vector | null {
  const [a] = face;
  if (a === undefined) return null;
  const sum = face.reduce<Vector>(
    (total, b, i) => {
      const c = face[(i + 1) % face.length] ?? a;
      return plus(total, cross(minus(b, a), minus(c, a)));
    },
    [0, 0, 0],
  );
  return unit(sum);
}

function firstSign(normal: Vector): 1 | -1 {
  const leading = normal.find((part) => Math.abs(part) > 1e-6) ?? 1;
  return leading > 0 ? 1 : -1;
}

/** Two directions in a plane, right-handed with its normal. */
function inPlane(normal: Vector): readonly [Vector, Vector] {
  const aside: Vector = Math.abs(normal[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const u = unit(cross(aside, normal)) ?? [1, 0, 0];
  return [u, cross(normal, u)];
}

function lifted({ normal, offset }: Sheet, polygons: readonly Polygon[], way: 1 | -1): readonly Face[] {
  const [u, v] = inPlane(normal);
  const inSpace = ([x, y]: Point) => plus(times(normal, offset), plus(times(u, x), times(v, y)));
  return polygons
    .filter((polygon) => area(polygon) > NOISE)
    .map(({ outline, holes }) => ({
      loops: [outline, ...holes].map((loop) => loop.map(inSpace)),
      normal: times(normal, way),
      offset: offset * way,
    }));
}
