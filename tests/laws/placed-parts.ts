import type { BenchworkModel } from '../../src/core/benchwork/input.ts';
import { boxOf, type Convex, convexPieces } from '../../src/core/geometry/convex.ts';
import { holds } from '../../src/core/geometry/polygon.ts';
import type { Box, Solid, Vector } from '../../src/core/geometry/shapes.ts';
import { dot, minus } from '../../src/core/geometry/vector.ts';
import type { Part, Placement } from '../../src/core/stock/part.ts';
import { partSolid } from '../../src/core/stock/solid.ts';

/** An instance as a body in its bench, from its part's solid alone. */
export type Body = {
  readonly id: string;
  readonly part: Part;
  readonly place: Placement;
  readonly solid: Solid;
  readonly pieces: readonly Convex[];
  readonly box: Box;
};

export function bodies(model: BenchworkModel): readonly Body[] {
  return model.parts.flatMap((part) => {
    const solid = partSolid(part);
    return part.places.map((place) => {
      const pieces = convexPieces(solid, place.pose);
      return { id: place.id, part, place, solid, pieces, box: boxOf(pieces.flatMap(({ corners }) => corners)) };
    });
  });
}

/** The stretches of wood through a body along the part's own thickness, at a point given in the bench: from and to, mm. */
export function throughThickness(body: Body, point: Vector): readonly (readonly [number, number])[] {
  const { pose } = body.place;
  const from = minus(point, pose.origin);
  const here = [dot(from, pose.x), dot(from, pose.y)] as const;
  const stretches: [number, number][] = [];
  for (const layer of [...body.solid.prisms].sort((a, b) => a.from - b.from)) {
    if (!holds(layer.polygon, here)) continue;
    const last = stretches[stretches.length - 1];
    if (last !== undefined && layer.from - last[1] < 1e-9) last[1] = layer.to;
    else stretches.push([layer.from, layer.to]);
  }
  return stretches;
}

/** Where a line across a loop of straight edges is inside it: pairs of from and to along the other axis, mm. */
export function chords(
  loop: readonly (readonly [number, number])[],
  axis: 0 | 1,
  at: number,
): readonly (readonly [number, number])[] {
  const other = axis === 0 ? 1 : 0;
  const crossings = loop
    .flatMap((p, i) => {
      const q = loop[(i + 1) % loop.length] ?? p;
      if (p[axis] > at === q[axis] > at) return [];
      return [p[other] + ((at - p[axis]) / (q[axis] - p[axis])) * (q[other] - p[other])];
    })
    .sort((a, b) => a - b);
  return Array.from(
    { length: crossings.length / 2 },
    (_, i) => [crossings[2 * i] ?? 0, crossings[2 * i + 1] ?? 0] as const,
  );
}
