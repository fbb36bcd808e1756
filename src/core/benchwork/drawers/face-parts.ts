import type { Pose, Vector } from '../../geometry/shapes.ts';
import type { Feature, Joint, MatingMark } from '../../stock/part.ts';
import type { Instance } from '../instance.ts';
import { joint } from '../joints.ts';
import { dadoDepth, tidy } from '../machining.ts';
import { boardOf } from '../side-view.ts';
import { label } from './box-parts.ts';
import type { DrawerFigures } from './figures.ts';

const LEFT: Vector = [-1, 0, 0];
const IN: Vector = [0, 1, 0];
const OUT: Vector = [0, -1, 0];
const W: Vector = [0, 0, 1];

/** A bar to pull by: strip, finger groove below, slope above; common practice, no source. mm and radians. */
export const BAR = { long: 120, out: 30, finger: [14, 24], slope: (70 * Math.PI) / 180 } as const;
const CORNERS = ['left-bottom', 'right-bottom', 'right-top', 'left-top'] as const;

/** A pull as it is cut and where its screws go: heights and depths in the bar's own coordinates, mm. */
export type PullFigures = {
  readonly long: number;
  readonly groove: number;
  /** of the screws' middle above the bar's underside: the middle of the wood above the finger groove */
  readonly screwUp: number;
  /** wood above and below that middle */
  readonly solid: number;
  /** how far a screw may go in: to where the slope comes down to it, less the wood kept before a tip */
  readonly deep: number;
  readonly screws: readonly number[];
};

/** Figures of a bar of this thickness on a face this wide, machine set in this step. */
export function pullFigures(thickness: number, faceWide: number, step: number): PullFigures {
  const long = tidy(Math.min(BAR.long, faceWide / 2));
  const groove = dadoDepth(thickness, step);
  const screwUp = tidy((groove + thickness) / 2);
  const solid = tidy((thickness - groove) / 2);
  const deep = tidy(BAR.out - thickness / Math.tan(BAR.slope));
  return { long, groove, screwUp, solid, deep, screws: [tidy(long / 5), tidy((4 * long) / 5)] };
}

/** Middle of a face: where its pull stands. */
function middle({ face: { patch } }: DrawerFigures): readonly [number, number] {
  return [tidy((patch.x0 + patch.x1) / 2), tidy((patch.y0 + patch.y1) / 2)];
}

/** Where the pull's screws go through face and box, from the left and from the floor. */
export function pullScrews(drawer: DrawerFigures, pull: PullFigures): readonly (readonly [number, number])[] {
  const [u, w] = middle(drawer);
  return pull.screws.map((x) => [tidy(u + pull.long / 2 - x), tidy(w - drawer.t / 2 + pull.screwUp)]);
}

/** The piece that falls out of the opening, or a blank of its own laid over it; its label is the mark of its hole. */
export function facePart(drawer: DrawerFigures, holes: readonly (readonly [number, number])[], hole: number): Instance {
  const { face, input, t } = drawer;
  const { x0, x1, y0, y1 } = face.patch;
  const board = boardOf(input.side);
  const [length, width] = [tidy(x1 - x0), tidy(y1 - y0)];
  const at = ([u, w]: readonly [number, number]) => [tidy(x1 - u), tidy(w - y0)] as const;
  const corners =
    face.radius > 0
      ? CORNERS.map((corner): Feature => ({ id: '', kind: 'rounded-corner', corner, radius: face.radius }))
      : [];
  const pose: Pose = { origin: [x1, drawer.outer, y0], x: LEFT, y: W, z: IN };
  return {
    id: `${drawer.id}.face`,
    role: 'drawer-face',
    material: 'frame',
    ...(input.faces === 'cut-out' ? { from: board } : {}),
    label: label(drawer, 'F'),
    blank: { length, width, thickness: t, grain: 'length' },
    features: [...corners, ...bored(holes.map(at), hole)],
    pose,
    marks: [
      { text: board, side: 'face', at: [length / 2, width / 4], kind: 'mate' },
      { text: 'up', side: 'face', at: [length / 4, width * 0.75], kind: 'up' },
    ],
  };
}

export function bored(at: readonly (readonly [number, number])[], diameter: number): readonly Feature[] {
  return at.map((point): Feature => ({ id: '', kind: 'hole', at: point, diameter, side: 'face', depth: 'through' }));
}

/** The bar on the face's outside. */
export function pullPart(drawer: DrawerFigures, pull: PullFigures): Instance {
  const [u, w] = middle(drawer);
  const patch = { x0: 0, x1: pull.long, y0: BAR.finger[0], y1: BAR.finger[1] };
  const origin: Vector = [tidy(u + pull.long / 2), drawer.outer, tidy(w - drawer.t / 2)];
  return {
    id: `${drawer.id}.pull`,
    role: 'drawer-pull',
    material: 'frame',
    label: label(drawer, 'G'),
    blank: { length: pull.long, width: BAR.out, thickness: drawer.t, grain: 'length' },
    features: [
      { id: '', kind: 'groove', side: 'back', patch, depth: pull.groove, corner: 0 },
      { id: '', kind: 'mitre', edge: 'top', angle: BAR.slope, long: 'back' },
    ],
    pose: { origin, x: LEFT, y: OUT, z: W },
    marks: [{ text: 'up', side: 'face', at: [pull.long / 2, BAR.out / 3], kind: 'up' }],
  };
}

/** Spacers from the bay's walls to the opening's edges. */
export function spacerParts(drawer: DrawerFigures): readonly Instance[] {
  const { bay, spacer, t } = drawer;
  const [length, width] = [spacer.long, tidy(spacer.w[1] - spacer.w[0])];
  const plain = {
    role: 'drawer-spacer',
    material: 'frame',
    blank: { length, width, thickness: t, grain: 'length' },
    features: [],
  } as const;
  const edge = Math.min(20, length / 4);
  const marks = (front: number): readonly MatingMark[] => [
    { text: 'up', side: 'face', at: [length / 2, width * 0.75], kind: 'up' },
    { text: 'front', side: 'face', at: [front, width / 2], kind: 'end' },
  ];
  const left: Pose = { origin: [bay.u[0], t, spacer.w[0]], x: IN, y: W, z: [1, 0, 0] };
  const right: Pose = { origin: [bay.u[1], tidy(t + length), spacer.w[0]], x: OUT, y: W, z: LEFT };
  return [
    { ...plain, id: `spacer.${drawer.id.slice(7)}-left`, label: label(drawer, 'H'), pose: left, marks: marks(edge) },
    {
      ...plain,
      id: `spacer.${drawer.id.slice(7)}-right`,
      label: label(drawer, 'J'),
      pose: right,
      marks: marks(length - edge),
    },
  ];
}

/** Face on box, pull on face: each held by screws from inside the box. */
export function faceJoints(drawer: DrawerFigures): readonly Joint[] {
  const screwed = (a: string, b: string): Joint => ({
    ...joint('butt', [`${drawer.id}.${a}`, `${drawer.id}.${b}`], 0),
    held: 'screws',
  });
  return [screwed('front', 'face'), ...(drawer.input.pull === 'bar' ? [screwed('face', 'pull')] : [])];
}
