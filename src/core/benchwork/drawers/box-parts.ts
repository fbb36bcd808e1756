import type { Pose, Vector } from '../../geometry/shapes.ts';
import type { Feature, Joint, MatingMark } from '../../stock/part.ts';
import type { Instance } from '../instance.ts';
import { joint } from '../joints.ts';
import { tidy } from '../machining.ts';
import { BOTTOM_UNDER, backAt, boxFront, type DrawerFigures } from './figures.ts';

const U: Vector = [1, 0, 0];
const V: Vector = [0, 1, 0];
const W: Vector = [0, 0, 1];
const LEFT: Vector = [-1, 0, 0];
const OUT: Vector = [0, -1, 0];

/** The five pieces of a drawer's box, each inner side a face, in the coordinates of whoever stands before it. */
export function boxParts(drawer: DrawerFigures): readonly Instance[] {
  const { box } = drawer;
  const left: Pose = { origin: [box.u[0], box.v[0], box.w[0]], x: V, y: W, z: U };
  const right: Pose = { origin: [box.u[1], box.v[1], box.w[0]], x: OUT, y: W, z: LEFT };
  return [
    { ...boxSide(drawer, 'front-first'), id: `${drawer.id}.side-left`, label: label(drawer, 'A'), pose: left },
    { ...boxSide(drawer, 'back-first'), id: `${drawer.id}.side-right`, label: label(drawer, 'B'), pose: right },
    boxEnd(drawer, 'front'),
    boxEnd(drawer, 'back'),
    boxBottom(drawer),
  ];
}

/** `DR2A`: a drawer's number as it stands in its bay, and a letter for the piece; other sides have their own letter before it. */
export function label({ number, input }: DrawerFigures, piece: string): string {
  const side = { front: 'DR', back: 'DRB', left: 'DRL', right: 'DRR' }[input.side];
  return `${side}${number}${piece}`;
}

type Plain = Omit<Instance, 'id' | 'label' | 'pose'>;

function boxSide(drawer: DrawerFigures, order: 'front-first' | 'back-first'): Plain {
  const { box, input } = drawer;
  const long = tidy(box.v[1] - box.v[0]);
  const high = tidy(box.w[1] - box.w[0]);
  const turn = (x: number) => (order === 'front-first' ? x : tidy(long - x));
  const seat = (kind: 'rabbet' | 'dado', from: number, mate: string): Feature => {
    const [a, b] = [turn(from), turn(tidy(from + box.slot))];
    const patch = { x0: Math.min(a, b), x1: Math.max(a, b), y0: 0, y1: high };
    return { id: '', for: mate, kind, side: 'face', patch, depth: box.corner, corner: 0 };
  };
  const back = `${drawer.id}.back`;
  const behind =
    input.corners === 'dado'
      ? seat('dado', tidy(long - box.t - box.slot), back)
      : seat('rabbet', tidy(long - box.slot), back);
  return {
    role: 'drawer-side',
    material: input.material,
    blank: { length: long, width: high, thickness: box.t, grain: 'length' },
    features: [seat('rabbet', 0, `${drawer.id}.front`), behind, groove(drawer, long)],
    marks: [
      mate(`${drawer.id}.front`, [turn(box.slot / 2), high / 2]),
      mate(back, [turn(long - box.slot / 2), high / 2]),
      up(long, high),
    ],
  };
}

function groove({ id, box }: DrawerFigures, long: number): Feature {
  const { up: y0, wide, deep } = box.groove;
  const patch = { x0: 0, x1: long, y0, y1: tidy(y0 + wide) };
  return { id: '', for: `${id}.bottom`, kind: 'groove', side: 'face', patch, depth: deep, corner: 0 };
}

function mate(text: string, at: readonly [number, number]): MatingMark {
  return { text, side: 'face', at, kind: 'mate' };
}

function up(long: number, high: number): MatingMark {
  return { text: 'up', side: 'back', at: [long / 2, high * 0.75], kind: 'up' };
}

function boxEnd(drawer: DrawerFigures, end: 'front' | 'back'): Instance {
  const { box, input } = drawer;
  const length = boxFront(box);
  const high = tidy(box.w[1] - box.w[0]);
  const inset = tidy(box.t - box.corner);
  const [v0, v1] = end === 'front' ? [box.v[0], tidy(box.v[0] + box.t)] : backAt(box, input.corners);
  const pose: Pose =
    end === 'front'
      ? { origin: [tidy(box.u[1] - inset), v0, box.w[0]], x: LEFT, y: W, z: V }
      : { origin: [tidy(box.u[0] + inset), v1, box.w[0]], x: U, y: W, z: OUT };
  const sides = [`${drawer.id}.side-right`, `${drawer.id}.side-left`];
  const [first = '', last = ''] = end === 'front' ? sides : [...sides].reverse();
  return {
    id: `${drawer.id}.${end}`,
    role: 'drawer-end',
    material: input.material,
    label: label(drawer, end === 'front' ? 'C' : 'D'),
    blank: { length, width: high, thickness: box.t, grain: 'length' },
    features: [groove(drawer, length)],
    pose,
    marks: [mate(first, [box.corner / 2, high / 2]), mate(last, [length - box.corner / 2, high / 2]), up(length, high)],
  };
}

function boxBottom(drawer: DrawerFigures): Instance {
  const { box, input } = drawer;
  const [in0, in1] = [tidy(box.u[0] + box.t), tidy(box.u[1] - box.t)];
  const [near, far] = [tidy(box.v[0] + box.t), backAt(box, input.corners)[0]];
  const into = tidy(box.groove.deep - BOTTOM_UNDER / 2);
  const [length, width] = [tidy(in1 - in0 + 2 * into), tidy(far - near + 2 * into)];
  const origin: Vector = [tidy(in0 - into), tidy(near - into), tidy(box.w[0] + box.groove.up)];
  return {
    id: `${drawer.id}.bottom`,
    role: 'drawer-bottom',
    material: input.bottom,
    label: label(drawer, 'E'),
    blank: { length, width, thickness: box.bottom.thickness.mean, grain: 'length' },
    features: [],
    pose: { origin, x: U, y: V, z: W },
    marks: [
      { text: 'up', side: 'face', at: [length / 2, width / 2], kind: 'up' },
      { text: 'front', side: 'face', at: [length / 2, Math.min(20, width / 4)], kind: 'end' },
    ],
  };
}

/** Corners glued, the bottom loose in its grooves. */
export function boxJoints(drawer: DrawerFigures): readonly Joint[] {
  const of = (name: string) => `${drawer.id}.${name}`;
  const { clearance } = drawer.box;
  const sides = ['side-left', 'side-right'].map(of);
  const back = drawer.input.corners;
  return [
    ...sides.map((side) => joint('rabbet', [side, of('front')], clearance)),
    ...sides.map((side) => joint(back, [side, of('back')], clearance)),
    ...[...sides, of('front'), of('back')].map(
      (side): Joint => ({
        ...joint('groove', [side, of('bottom')], clearance),
        relief: BOTTOM_UNDER / 2,
        held: 'loose',
      }),
    ),
  ];
}
