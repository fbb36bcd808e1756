import type { Vector } from '../../geometry/shapes.ts';
import type { Joint } from '../../stock/part.ts';
import { type Fitting, NOTHING, type Site, together } from '../fitting.ts';
import type { Instance } from '../instance.ts';
import { joint } from '../joints.ts';
import { tidy } from '../machining.ts';
import { placedInstance } from '../placed-instance.ts';
import { boardOf, inBench, sideView } from '../side-view.ts';
import { boltedOn, hole } from './bolting.ts';
import { bracketed } from './brackets.ts';
import { alongSide, type CornerName, fromCorner, LETTERS, type Span } from './corners.ts';
import { boltHeights, type LegFigures, legThread } from './figures.ts';
import { footMiddle, padUnder } from './foot.ts';
import { padJoints, padParts } from './pad.ts';
import { standing } from './stand.ts';

/** A post in the frame's corner, its layers face to face inward from the side, on a doubled pad; up to the deck. */
export function post(
  site: Site,
  legs: LegFigures,
  corner: { readonly name: CornerName; readonly number: number },
): Fitting {
  const { grid } = site;
  const view = alongSide(corner.name);
  const pose = sideView(grid, view.side);
  const id = `leg.${corner.name}`;
  const thick = tidy(legs.input.layers * legs.t);
  const u = fromCorner(site, view, [grid.t, tidy(grid.t + legs.width)]);
  const v: Span = [grid.t, tidy(grid.t + thick)];
  const pad = padUnder(legs, { id, labels: padLabels(`P${corner.number}`, legs.input.layers), u, v });
  const low = tidy(pad.low + 2 * legs.t);
  const layers = Array.from({ length: legs.input.layers }, (_, i) =>
    postLayer(site, legs, { id, i, u, low, number: corner.number }),
  );
  const parts = [...layers, ...padParts(pad)];
  const ids = layers.map((layer) => layer.id);
  const under = { view: pose, leg: id, foot: id, middle: footMiddle(legs, { id, u, v, pad }), pad };
  const stand = standing(site, legs.input, under);
  const upright = ids[ids.length - 1] ?? '';
  const brackets = bracketed(site, { view: pose, where: id, upright, u, behind: v[1], pad });
  const bolts = boltedOn(site, { side: view.side, u: tidy((u[0] + u[1]) / 2), behind: ids, thick });
  const body = inBench(pose, [u[0], v[0], pad.low], [u[1], v[1], grid.sideTop]);
  return together([
    {
      ...NOTHING,
      instances: parts.map((part) => placedInstance(pose, part)),
      joints: [...postJoints(boardOf(view.side), ids), ...padJoints(pad, ids)],
      envelopes: [{ id: `${id}.body`, of: id, kind: 'leg', ...body }],
    },
    { ...NOTHING, ...stand },
    { ...NOTHING, ...brackets },
    bolts,
  ]);
}

/** The pad's layers are named on after the post's. */
function padLabels(leg: string, layers: number): readonly [string, string] {
  return [`${leg}${LETTERS[layers] ?? 'Y'}`, `${leg}${LETTERS[layers + 1] ?? 'Z'}`];
}

type Layer = {
  readonly id: string;
  readonly i: number;
  readonly u: Span;
  readonly low: number;
  readonly number: number;
};

function postLayer(site: Site, legs: LegFigures, { id, i, u, low, number }: Layer): Instance {
  const { grid } = site;
  const length = tidy(grid.sideTop - low);
  const origin: Vector = [u[0], tidy(grid.t + i * legs.t), low];
  return {
    id: `${id}.layer-${i + 1}`,
    role: 'leg-layer',
    material: legs.input.material,
    label: `P${number}${LETTERS[i] ?? 'A'}`,
    blank: { length, width: legs.width, thickness: legs.t, grain: 'length' },
    features: boltHeights(site).map((w) => hole([tidy(w - low), legs.width / 2], legThread(site.goods))),
    pose: { origin, x: [0, 0, 1], y: [1, 0, 0], z: [0, 1, 0] },
    marks: [
      { text: 'top', side: 'face', at: [length - 20, legs.width / 2], kind: 'end' },
      { text: 'foot', side: 'face', at: [20, legs.width / 2], kind: 'end' },
    ],
  };
}

/** Layers glued face to face; the first bolted to the side. */
function postJoints(board: string, layers: readonly string[]): readonly Joint[] {
  const glued = layers.slice(1).map((id, i) => joint('butt', [layers[i] ?? '', id], 0));
  const first = layers[0] ?? '';
  return [{ ...joint('bolted', [board, first], 0), held: 'bolts' }, ...glued];
}
