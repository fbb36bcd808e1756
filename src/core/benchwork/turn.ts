import type { Point, Pose } from '../geometry/shapes.ts';
import { placed } from '../geometry/vector.ts';
import type { Blank, EdgeSide, FaceSide, Feature, MatingMark, Patch } from '../stock/part.ts';

/** Half a turn of a blank onto itself about one of its middle axes; a part may be turned, never mirrored. */
export type Turn = 'none' | 'x' | 'y' | 'z';

export const TURNS: readonly Turn[] = ['none', 'x', 'y', 'z'];

const OPPOSITE: Readonly<Record<EdgeSide, EdgeSide>> = { left: 'right', right: 'left', bottom: 'top', top: 'bottom' };

const flipsLength = (turn: Turn): boolean => turn === 'y' || turn === 'z';
const flipsWidth = (turn: Turn): boolean => turn === 'x' || turn === 'z';
const flipsFace = (turn: Turn): boolean => turn === 'x' || turn === 'y';

/** A feature as it lies after the blank is turned. */
export function turnedFeature(blank: Blank, turn: Turn, feature: Feature): Feature {
  const at = (point: Point) => turnedPoint(blank, turn, point);
  switch (feature.kind) {
    case 'trim':
      return { ...feature, edge: turnedEdge(turn, feature.edge) };
    case 'notch':
      return { ...feature, edge: turnedEdge(turn, feature.edge), patch: turnedPatch(blank, turn, feature.patch) };
    case 'dado':
    case 'stopped-dado':
    case 'rabbet':
    case 'groove':
      return { ...feature, side: turnedSide(turn, feature.side), patch: turnedPatch(blank, turn, feature.patch) };
    case 'opening':
      return { ...feature, patch: turnedPatch(blank, turn, feature.patch) };
    case 'cut-out':
      return { ...feature, outline: turnedLoop(turn, feature.outline.map(at)) };
    case 'hole':
    case 'counterbore':
      return { ...feature, side: turnedSide(turn, feature.side), at: at(feature.at) };
    case 'mitre':
      return { ...feature, edge: turnedEdge(turn, feature.edge), long: turnedSide(turn, feature.long) };
    case 'taper':
      return { ...feature, edge: turnedEdge(turn, feature.edge), from: at(feature.from), to: at(feature.to) };
    case 'roundover':
      return { ...feature, edge: turnedEdge(turn, feature.edge), side: turnedSide(turn, feature.side) };
    case 'rounded-corner':
      return { ...feature, corner: turnedCorner(turn, feature.corner) };
  }
}

export function turnedMark(blank: Blank, turn: Turn, mark: MatingMark): MatingMark {
  return { ...mark, side: turnedSide(turn, mark.side), at: turnedPoint(blank, turn, mark.at) };
}

/** The pose under which the turned part lies where it lay before. */
export function turnedPose(blank: Blank, turn: Turn, pose: Pose): Pose {
  const corner = [
    flipsLength(turn) ? blank.length : 0,
    flipsWidth(turn) ? blank.width : 0,
    flipsFace(turn) ? blank.thickness : 0,
  ] as const;
  return {
    origin: placed(pose, corner),
    x: flipsLength(turn) ? opposite(pose.x) : pose.x,
    y: flipsWidth(turn) ? opposite(pose.y) : pose.y,
    z: flipsFace(turn) ? opposite(pose.z) : pose.z,
  };
}

function opposite([x, y, z]: Pose['x']): Pose['x'] {
  return [0 - x, 0 - y, 0 - z];
}

function turnedPoint(blank: Blank, turn: Turn, [x, y]: Point): Point {
  return [flipsLength(turn) ? blank.length - x : x, flipsWidth(turn) ? blank.width - y : y];
}

function turnedPatch(blank: Blank, turn: Turn, { x0, x1, y0, y1 }: Patch): Patch {
  const [ax, ay] = turnedPoint(blank, turn, [x0, y0]);
  const [bx, by] = turnedPoint(blank, turn, [x1, y1]);
  return { x0: Math.min(ax, bx), x1: Math.max(ax, bx), y0: Math.min(ay, by), y1: Math.max(ay, by) };
}

function turnedSide(turn: Turn, side: FaceSide): FaceSide {
  if (!flipsFace(turn)) return side;
  return side === 'face' ? 'back' : 'face';
}

function turnedEdge(turn: Turn, edge: EdgeSide): EdgeSide {
  const flips = edge === 'left' || edge === 'right' ? flipsLength(turn) : flipsWidth(turn);
  return flips ? OPPOSITE[edge] : edge;
}

type CornerName = Extract<Feature, { readonly kind: 'rounded-corner' }>['corner'];

function turnedCorner(turn: Turn, corner: CornerName): CornerName {
  const left = corner.startsWith('left') !== flipsLength(turn);
  const bottom = corner.endsWith('bottom') !== flipsWidth(turn);
  if (left) return bottom ? 'left-bottom' : 'left-top';
  return bottom ? 'right-bottom' : 'right-top';
}

/** Turned over, a loop runs the other way; reversed it is counter-clockwise again. */
function turnedLoop(turn: Turn, loop: readonly Point[]): readonly Point[] {
  return flipsFace(turn) ? [...loop].reverse() : loop;
}
