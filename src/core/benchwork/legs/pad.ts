import type { Pose, Vector } from '../../geometry/shapes.ts';
import type { Feature, Joint } from '../../stock/part.ts';
import type { Instance } from '../instance.ts';
import { joint } from '../joints.ts';
import { tidy } from '../machining.ts';
import type { Span } from './corners.ts';

/** Two layers under a leg's foot, their grains crossed, as seen from before the leg's side; from the floor up, mm. */
export type PadFigures = {
  /** the leg it belongs to, and what sets it apart from the leg's other pads */
  readonly leg: string;
  readonly name: string;
  readonly material: string;
  readonly u: Span;
  readonly v: Span;
  readonly low: number;
  readonly t: number;
  readonly label: readonly [string, string];
  /** where fasteners of a caster or foot enter from below, and how wide the hole is */
  readonly holes: readonly (readonly [number, number])[];
  readonly hole: number;
};

/** Lower and upper layer. */
export function padParts(pad: PadFigures): readonly Instance[] {
  const [wide, deep] = [tidy(pad.u[1] - pad.u[0]), tidy(pad.v[1] - pad.v[0])];
  const middle = tidy(pad.low + pad.t);
  const along: Pose = { origin: [pad.u[0], pad.v[0], pad.low], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
  const inward: Pose = { origin: [pad.u[1], pad.v[0], middle], x: [0, 1, 0], y: [-1, 0, 0], z: [0, 0, 1] };
  const lower = pad.holes.map(([u, v]) => [tidy(u - pad.u[0]), tidy(v - pad.v[0])] as const);
  const upper = pad.holes.map(([u, v]) => [tidy(v - pad.v[0]), tidy(pad.u[1] - u)] as const);
  return [
    layer(pad, {
      number: 1,
      size: [wide, deep],
      pose: along,
      holes: lower,
      outside: [wide / 2, Math.min(EDGE, deep / 4)],
    }),
    layer(pad, {
      number: 2,
      size: [deep, wide],
      pose: inward,
      holes: upper,
      outside: [Math.min(EDGE, deep / 4), wide / 2],
    }),
  ];
}

type Layer = {
  readonly number: 1 | 2;
  readonly size: readonly [number, number];
  readonly pose: Pose;
  readonly holes: readonly (readonly [number, number])[];
  /** where the word for the edge at the bench's outside is written */
  readonly outside: readonly [number, number];
};

/** How far from an edge its word is written, mm. */
const EDGE = 10;

function layer(pad: PadFigures, { number, size: [length, width], pose, holes, outside }: Layer): Instance {
  return {
    id: padId(pad, number),
    role: 'leg-pad',
    material: pad.material,
    label: pad.label[number - 1] ?? '',
    blank: { length, width, thickness: pad.t, grain: 'length' },
    features: holes.map(
      (at): Feature => ({ id: '', kind: 'hole', at, diameter: pad.hole, side: 'back', depth: 'through' }),
    ),
    pose,
    marks: [
      { text: 'up', side: 'face', at: [length / 2, width / 2], kind: 'up' },
      { text: 'outside', side: 'face', at: outside, kind: 'end' },
    ],
  };
}

export function padId({ leg, name }: Pick<PadFigures, 'leg' | 'name'>, number: 1 | 2): string {
  return `${leg}.pad${name === '' ? '' : `-${name}`}-${number}`;
}

/** The two layers glued to each other, the upper one to what stands on it. */
export function padJoints(pad: PadFigures, above: readonly string[]): readonly Joint[] {
  const [lower, upper] = [padId(pad, 1), padId(pad, 2)];
  return [joint('butt', [lower, upper], 0), ...above.map((id) => joint('butt', [upper, id], 0))];
}

/** The middle of a foot's own width, moved so that a plate of this size stays on the pad. */
export function plateMiddle(pad: Span, foot: Span, plate: number): number {
  const half = plate / 2;
  const middle = (foot[0] + foot[1]) / 2;
  if (pad[1] - pad[0] < plate) return tidy((pad[0] + pad[1]) / 2);
  return tidy(Math.min(Math.max(middle, pad[0] + half), pad[1] - half));
}

/** Corners of a bolt pattern round a middle. */
export function pattern(
  [u, v]: readonly [number, number],
  [a, b]: readonly [number, number],
): readonly (readonly [number, number])[] {
  return [-1, 1].flatMap((i) => [-1, 1].map((j) => [tidy(u + (i * a) / 2), tidy(v + (j * b) / 2)] as const));
}

export const DOWN: Vector = [0, 0, -1];
export const UP: Vector = [0, 0, 1];
