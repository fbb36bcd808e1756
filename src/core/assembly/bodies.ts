import { convexPieces } from '../geometry/convex.ts';
import type { Pose, Vector } from '../geometry/shapes.ts';
import { turned } from '../geometry/vector.ts';
import type { Shape } from '../stock/outline.ts';
import type { Feature, Part } from '../stock/part.ts';
import { partSolid } from '../stock/solid.ts';
import { type Body, body } from './body.ts';

/**
 * One body an instance, in bench coordinates. What only takes wood away where no mate comes is left in: reliefs of the
 * bit, rounded outer corners, holes that nothing named enters; a body is then never smaller than its part, so a path
 * found free is free. Round corners that a pocket or notch keeps stay, since a square mate would not seat on them.
 */
export function bodiesOf(parts: readonly Part[]): readonly Body[] {
  const entering = new Set(parts.flatMap((part) => part.places.map(({ id }) => id)));
  return parts.flatMap((part) => {
    const solid = partSolid(plainShape(part, entering));
    const slants = solid.cuts.map(({ normal }) => normal);
    return part.places.map(({ id, pose }) => body(id, convexPieces(solid, pose), axesOf(pose, slants)));
  });
}

function axesOf(pose: Pose, slants: readonly Vector[]): readonly Vector[] {
  return [pose.x, pose.y, pose.z, ...slants.map((normal) => turned(pose, normal))];
}

function plainShape(part: Part, entering: ReadonlySet<string>): Shape {
  return { blank: part.blank, features: part.features.filter((one) => isCut(one, entering)).map(withoutRelief) };
}

function isCut(feature: Feature, entering: ReadonlySet<string>): boolean {
  if (feature.kind === 'rounded-corner') return false;
  if (feature.kind !== 'hole' && feature.kind !== 'counterbore') return true;
  return feature.for !== undefined && entering.has(feature.for);
}

function withoutRelief(feature: Feature): Feature {
  if (!('relief' in feature)) return feature;
  const { relief: _bit, ...square } = feature;
  return square;
}
