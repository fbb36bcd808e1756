import type { Pose, Vector } from '../../geometry/shapes.ts';
import type { Feature, MatingMark, Patch } from '../../stock/part.ts';
import type { Instance } from '../instance.ts';
import { tidy } from '../machining.ts';
import type { AngleFigures } from './angle-figures.ts';
import type { CornerView, Span } from './corners.ts';
import type { LegFigures } from './figures.ts';

/** One half of an angle leg: which side it lies in, its span there, and its names. */
export type Half = {
  readonly id: string;
  readonly leg: string;
  readonly label: string;
  readonly view: CornerView;
  readonly u: Span;
};

/**
 * A half as it is cut, from foot to top: rabbet for the pads and dados for the blocks on its inner face, the mitre along
 * the leg's corner, and last the taper of its free edge, which takes away the edge that all others are measured from.
 */
export function angleHalf(legs: LegFigures, angle: AngleFigures, half: Half): Instance {
  const { t, width } = legs;
  const pose: Pose = { origin: [half.u[0], 0, angle.foot], x: [0, 0, 1], y: [1, 0, 0], z: [0, 1, 0] };
  const mates = angle.blocks.map((low, i): MatingMark => {
    return { text: `${half.leg}.block-${i + 1}`, side: 'face', at: [tidy(low + t / 2), width / 2], kind: 'mate' };
  });
  return {
    id: half.id,
    role: 'leg-half',
    material: legs.input.material,
    label: half.label,
    blank: { length: angle.length, width, thickness: t, grain: 'length' },
    features: [...pockets(legs, angle, half), ...slants(legs, angle, half)],
    pose,
    marks: [
      { text: 'top', side: 'back', at: [angle.length - 20, width / 2], kind: 'end' },
      { text: 'foot', side: 'back', at: [20, width / 2], kind: 'end' },
      ...mates,
    ],
  };
}

/** Rabbet and dados; each dado runs in from the mitred edge and stops at its block. */
function pockets(legs: LegFigures, angle: AngleFigures, { leg, view }: Half): readonly Feature[] {
  const { t, width } = legs;
  const pocket = { id: '', side: 'face', depth: angle.dado, corner: 0 } as const;
  const reach = tidy(t - angle.dado + angle.block);
  const [y0, y1] = view.hand === 'left' ? [0, reach] : [tidy(width - reach), width];
  const foot: Patch = { x0: 0, x1: angle.padSlot, y0: 0, y1: width };
  const dados = angle.blocks.map((low, i): Feature => {
    const x0 = tidy(low - (angle.slot - t) / 2);
    const patch: Patch = { x0, x1: tidy(x0 + angle.slot), y0, y1 };
    return { ...pocket, for: `${leg}.block-${i + 1}`, kind: 'stopped-dado', patch, relief: angle.relief };
  });
  return [{ ...pocket, for: `${leg}.pad-2`, kind: 'rabbet', patch: foot }, ...dados];
}

/** The mitre, then the taper. */
function slants({ width }: LegFigures, angle: AngleFigures, { view }: Half): readonly Feature[] {
  const atLeft = view.hand === 'left';
  const free = (y: number) => (atLeft ? y : tidy(width - y));
  const mitre: Feature = { id: '', kind: 'mitre', edge: atLeft ? 'bottom' : 'top', angle: Math.PI / 4, long: 'back' };
  if (angle.footWidth >= width) return [mitre];
  const [from, to] = [[0, free(angle.footWidth)] as const, [angle.taperEnd, free(width)] as const];
  return [mitre, { id: '', kind: 'taper', edge: atLeft ? 'top' : 'bottom', from, to }];
}

export const FLAT: { readonly x: Vector; readonly y: Vector; readonly z: Vector } = {
  x: [1, 0, 0],
  y: [0, 1, 0],
  z: [0, 0, 1],
};
