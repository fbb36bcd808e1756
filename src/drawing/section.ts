import { union } from '../core/geometry/booleans.ts';
import { clipConvex, rectangle } from '../core/geometry/polygon.ts';
import type { Point, Polygon, Solid } from '../core/geometry/shapes.ts';

/** A plane across a part: x or y of the part held at a value, mm. */
export type SectionPlane = { readonly axis: 'x' | 'y'; readonly at: number };

/** Where a line at `at` runs inside a loop's even-odd area, as sorted crossings on the other axis. */
function crossings(loops: readonly (readonly Point[])[], { axis, at }: SectionPlane): readonly number[] {
  const [held, other] = axis === 'x' ? ([0, 1] as const) : ([1, 0] as const);
  const found = loops.flatMap((loop) =>
    loop.flatMap((a, i): readonly number[] => {
      const b = loop[(i + 1) % loop.length] ?? a;
      if (a[held] > at === b[held] > at) return [];
      return [a[other] + ((at - a[held]) / (b[held] - a[held])) * (b[other] - a[other])];
    }),
  );
  return found.toSorted((a, b) => a - b);
}

/** A rectangle of the cut face without what the solid's slanted cuts take off it. */
function slantCut(loop: readonly Point[], { cuts }: Solid, { axis, at }: SectionPlane): readonly Point[] {
  return cuts.reduce<readonly Point[]>((left, { normal: [x, y, z], offset }) => {
    const [held, other] = axis === 'x' ? [x, y] : [y, x];
    return clipConvex(left, { normal: [other, z], offset: offset - held * at });
  }, loop);
}

/** The cut face of a solid by a plane across it: u along the part's other axis, v through the thickness; mm. */
export function sectionOf(solid: Solid, plane: SectionPlane): readonly Polygon[] {
  const rectangles = solid.prisms.flatMap(({ polygon, from, to }) => {
    const us = crossings([polygon.outline, ...polygon.holes], plane);
    return us.flatMap((u, i): readonly (readonly Point[])[] => {
      const end = us[i + 1];
      return i % 2 === 1 || end === undefined || end - u < 1e-9 ? [] : [rectangle([u, from], [end, to])];
    });
  });
  const loops = rectangles.map((loop) => slantCut(loop, solid, plane)).filter((loop) => loop.length > 2);
  return union(loops, []);
}
