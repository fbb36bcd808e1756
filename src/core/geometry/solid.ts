import { boxOf, convexPieces } from './convex.ts';
import { area } from './polygon.ts';
import type { Box, Pose, Solid, Vector } from './shapes.ts';
import { cross, dot, minus } from './vector.ts';

const AT_HOME: Pose = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

/** Volume of a solid whose prisms share no inside, mm3. */
export function volume(solid: Solid): number {
  if (solid.cuts.length === 0) {
    return solid.prisms.reduce((sum, prism) => sum + area(prism.polygon) * (prism.to - prism.from), 0);
  }
  return convexPieces(solid, AT_HOME).reduce((sum, piece) => sum + volumeInside(piece.faces), 0);
}

/** Volume inside the faces of a convex body, by the pyramids from its first corner; mm3. */
function volumeInside(faces: readonly (readonly Vector[])[]): number {
  const apex = faces[0]?.[0] ?? [0, 0, 0];
  return faces.reduce((sum, face) => sum + Math.abs(pyramid(apex, face)), 0);
}

function pyramid(apex: Vector, face: readonly Vector[]): number {
  const first = face[0] ?? apex;
  return face.slice(2).reduce((sum, corner, i) => {
    const before = face[i + 1] ?? first;
    return sum + dot(minus(first, apex), cross(minus(before, first), minus(corner, first))) / 6;
  }, 0);
}

/** The smallest box around a placed solid, in the coordinates of its pose; mm. */
export function placedBox(solid: Solid, pose: Pose): Box {
  return boxOf(convexPieces(solid, pose).flatMap((piece) => piece.corners));
}
