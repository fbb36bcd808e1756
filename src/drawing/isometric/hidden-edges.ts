import { union } from '../../core/geometry/booleans.ts';
import type { Point, Polygon } from '../../core/geometry/shapes.ts';
import { dot } from '../../core/geometry/vector.ts';
import { flat, TOWARD } from './gaze.ts';
import type { Seen, Shown } from './hidden.ts';

/** A straight line in the plane of the picture, mm. */
export type Edge = readonly [from: Point, to: Point];

/** Everything a body would cover of the picture if nothing stood before it. */
export function silhouette({ faces }: Pick<Shown, 'faces'>): readonly Polygon[] {
  const front = faces.filter(({ normal }) => dot(normal, TOWARD) > 1e-9).flatMap(({ loops }) => loops.slice(0, 1));
  return union(
    front.map((loop) => loop.map(flat)),
    [],
  );
}

/** The outline of a body where others cover it: what of its own edges bounds nothing that is seen. */
export function hiddenEdges(one: Pick<Shown, 'faces'>, seen: readonly Seen[]): readonly Edge[] {
  const shown = seen.flatMap(({ area: { outline, holes } }) => [outline, ...holes].flatMap(edgesOf));
  return silhouette(one)
    .flatMap(({ outline, holes }) => [outline, ...holes].flatMap(edgesOf))
    .flatMap((edge) => withoutStretches(edge, shown));
}

function edgesOf(loop: readonly Point[]): readonly Edge[] {
  return loop.map((from, i): Edge => [from, loop[(i + 1) % loop.length] ?? from]);
}

/** The clipper's rounding leaves an edge within this of where it was, mm; what is shorter is no line. */
const NEAR = 1e-2;

/** What is left of an edge when the stretches that others share with it are taken out. */
function withoutStretches(edge: Edge, others: readonly Edge[]): readonly Edge[] {
  const [[ax, ay], [bx, by]] = edge;
  const long = Math.hypot(bx - ax, by - ay);
  if (long < NEAR) return [];
  const [ux, uy] = [(bx - ax) / long, (by - ay) / long];
  const off = ([x, y]: Point) => Math.abs(ux * (y - ay) - uy * (x - ax));
  const along = ([x, y]: Point) => ux * (x - ax) + uy * (y - ay);
  const taken = others
    .filter(([from, to]) => off(from) < NEAR && off(to) < NEAR)
    .map(([from, to]) => [along(from), along(to)].sort((a, b) => a - b))
    .sort(([a = 0], [b = 0]) => a - b);
  const left: Edge[] = [];
  let at = 0;
  for (const [from = 0, to = 0] of [...taken, [long, long]]) {
    const until = Math.min(from, long);
    if (until - at > NEAR)
      left.push([
        [ax + ux * at, ay + uy * at],
        [ax + ux * until, ay + uy * until],
      ]);
    at = Math.max(at, to);
  }
  return left;
}
