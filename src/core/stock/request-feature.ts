import { bounds } from '../geometry/polygon.ts';
import { fromWorld } from '../geometry/pose.ts';
import type { Point, Pose, Vector } from '../geometry/shapes.ts';
import type { Blank, EdgeSide, Feature, Patch, Request } from './part.ts';

/** Edges and faces this near are met; mm. */
const NEAR = 1e-6;

/** What a request takes out of one placed part, in the part's own coordinates; null when it misses the part. */
export function requestFeature(blank: Blank, pose: Pose, request: Request): Feature | null {
  const [x, y] = fromWorld(pose, request.at);
  if (request.kind === 'cut-out') return cutOut(blank, pose, request);
  if (request.kind === 'notch') return notch(blank, [x, y], request);
  if (request.kind === 'hole') return hole(blank, [x, y], request);
  const patch = clipped(blank, about([x, y], request.size));
  return patch === null ? null : { ...purpose(request), kind: 'opening', patch, corner: 0 };
}

function purpose(request: Request): { readonly id: string; readonly for: string } {
  return { id: '', for: request.by };
}

function about([x, y]: Point, [along, across]: readonly [number, number]): Patch {
  return { x0: x - along / 2, x1: x + along / 2, y0: y - across / 2, y1: y + across / 2 };
}

function clipped(blank: Blank, patch: Patch): Patch | null {
  const { length, width } = blank;
  const [x0, x1] = [Math.max(0, patch.x0), Math.min(length, patch.x1)];
  const [y0, y1] = [Math.max(0, patch.y0), Math.min(width, patch.y1)];
  return x1 - x0 > NEAR && y1 - y0 > NEAR ? { x0, x1, y0, y1 } : null;
}

/** A cut-out given by its outline keeps it; one given by its size is a rectangle that lies with the notebook's axes. */
function cutOut(blank: Blank, pose: Pose, request: Request): Feature | null {
  const [cx, cy, z] = request.at;
  const [dx, dy] = [request.size[0] / 2, request.size[1] / 2];
  const square: readonly Point[] = [
    [cx - dx, cy - dy],
    [cx + dx, cy - dy],
    [cx + dx, cy + dy],
    [cx - dx, cy + dy],
  ];
  const outline = (request.outline ?? square).map(([px, py]): Point => flat(fromWorld(pose, [px, py, z])));
  const { low, high } = bounds(outline);
  const inside = clipped(blank, { x0: low[0], x1: high[0], y0: low[1], y1: high[1] });
  return inside === null ? null : { ...purpose(request), kind: 'cut-out', outline };
}

function flat([x, y]: Vector): Point {
  return [x, y];
}

/** A notch opens to the edge its point lies on; its depth runs into the part from there. */
function notch(blank: Blank, at: Point, request: Request): Feature | null {
  const edge = nearestEdge(blank, at);
  const [along, deep] = request.size;
  const flatwise = edge === 'top' || edge === 'bottom';
  const middle = flatwise ? at[0] : at[1];
  const [from, to] = [middle - along / 2, middle + along / 2];
  const reach: readonly [number, number] =
    edge === 'bottom' || edge === 'left'
      ? [0, deep]
      : flatwise
        ? [blank.width - deep, blank.width]
        : [blank.length - deep, blank.length];
  const patch = flatwise
    ? clipped(blank, { x0: from, x1: to, y0: reach[0], y1: reach[1] })
    : clipped(blank, { x0: reach[0], x1: reach[1], y0: from, y1: to });
  return patch === null ? null : { ...purpose(request), kind: 'notch', edge, patch, corner: 0 };
}

function nearestEdge(blank: Blank, [x, y]: Point): EdgeSide {
  const off: readonly (readonly [EdgeSide, number])[] = [
    ['top', Math.abs(blank.width - y)],
    ['bottom', Math.abs(y)],
    ['left', Math.abs(x)],
    ['right', Math.abs(blank.length - x)],
  ];
  return off.reduce((best, one) => (one[1] < best[1] - NEAR ? one : best))[0];
}

function hole(blank: Blank, at: Point, request: Request): Feature | null {
  const [diameter] = request.size;
  const inside = clipped(blank, about(at, request.size));
  return inside === null ? null : { ...purpose(request), kind: 'hole', at, diameter, side: 'face', depth: 'through' };
}
