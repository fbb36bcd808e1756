import type { Joint } from '../../stock/part.ts';
import { type Fitting, NOTHING, type Site, together } from '../fitting.ts';
import type { Instance } from '../instance.ts';
import { joint } from '../joints.ts';
import { dadoDepth, slotWidth, tidy } from '../machining.ts';
import { placedInstance } from '../placed-instance.ts';
import { boardOf, inBench, sideView } from '../side-view.ts';
import { boltedOn, hole } from './bolting.ts';
import { bracketed } from './brackets.ts';
import { alongEnd, type CornerName, type CornerView, fromCorner, type Span } from './corners.ts';
import { boltHeights, type LegFigures, legThread } from './figures.ts';
import { footKey, footMiddle, padUnder } from './foot.ts';
import { padJoints, padParts } from './pad.ts';
import { standing } from './stand.ts';

/** The lower rail above the pads, mm; common practice, no source. */
const LOW_RAIL = 150;

type At = {
  readonly site: Site;
  readonly legs: LegFigures;
  readonly end: 'left' | 'right';
  readonly id: string;
  readonly label: string;
  /** undersides of the two rails above the floor */
  readonly rails: readonly number[];
};

/** A trestle inside one end: two uprights up to the deck, bolted to the end, and two rails in dados across them. */
export function trestle(
  site: Site,
  legs: LegFigures,
  { end, number }: { readonly end: 'left' | 'right'; readonly number: number },
): Fitting {
  const id = `leg.${end}`;
  const rails = railHeights(site, legs, id);
  const at: At = { site, legs, end, id, label: `P${number}`, rails };
  const pose = sideView(site.grid, end);
  const feet = (['front', 'back'] as const).map((foot) => upright(at, foot));
  const rail = rails.map((_, i) => railPart(at, i + 1));
  return together([
    ...feet,
    {
      ...NOTHING,
      instances: rail.map((part) => placedInstance(pose, part)),
      joints: rail.flatMap((part) =>
        ['front', 'back'].map((foot) => joint('dado', [`${id}.upright-${foot}`, part.id], site.grid.clearance)),
      ),
    },
  ]);
}

/** The low rail above the pads, the high one right under the frame or what of it hangs lowest. */
export function railHeights({ grid, flangeStrips }: Site, legs: LegFigures, id: string): readonly number[] {
  const pads = ['front', 'back'].map(
    (name) => padUnder(legs, { id, name, labels: ['', ''], u: [0, legs.width], v: [0, legs.t] }).low,
  );
  const low = Math.max(...pads);
  const hangs = flangeStrips === null ? grid.sideUnderside : tidy(grid.strutUnderside - grid.t);
  return [tidy(low + 2 * legs.t + LOW_RAIL), tidy(Math.min(grid.sideUnderside, hangs) - legs.width)];
}

function upright(at: At, foot: 'front' | 'back'): Fitting {
  const { site, legs, id, end, label } = at;
  const { grid } = site;
  const view: CornerView = alongEnd(`${foot}-${end}` satisfies CornerName);
  const pose = sideView(grid, end);
  const u = fromCorner(site, view, [grid.t, tidy(grid.t + legs.width)]);
  const v: Span = [grid.t, tidy(grid.t + legs.t)];
  const [own, lower, upper] = foot === 'front' ? 'AEF' : 'BGH';
  const labels = [`${label}${lower}`, `${label}${upper}`] as const;
  const where = { id, name: foot, labels, u, v };
  const pad = padUnder(legs, where);
  const part = uprightPart(at, { foot, u, low: tidy(pad.low + 2 * legs.t), label: `${label}${own}` });
  const middle = footMiddle(legs, { id: footKey(where), u, v, pad });
  const under = { view: pose, leg: id, foot: footKey(where), middle, pad };
  const body = inBench(pose, [u[0], v[0], pad.low], [u[1], tidy(v[1] + legs.t), grid.sideTop]);
  const bolts = boltedOn(site, { side: end, u: tidy((u[0] + u[1]) / 2), behind: [part.id], thick: legs.t });
  const joints: readonly Joint[] = [
    { ...joint('bolted', [boardOf(end), part.id], 0), held: 'bolts' },
    ...padJoints(pad, [part.id]),
  ];
  return together([
    {
      ...NOTHING,
      instances: [part, ...padParts(pad)].map((one) => placedInstance(pose, one)),
      joints,
      envelopes: [{ id: `${id}.body-${foot}`, of: id, kind: 'leg', ...body }],
    },
    { ...NOTHING, ...standing(site, legs.input, under) },
    { ...NOTHING, ...bracketed(site, { view: pose, where: id, upright: part.id, u, behind: v[1], pad }) },
    bolts,
  ]);
}

type Upright = { readonly foot: 'front' | 'back'; readonly u: Span; readonly low: number; readonly label: string };

function uprightPart({ site, legs, id, rails }: At, { foot, u, low, label }: Upright): Instance {
  const { grid, step } = site;
  const length = tidy(grid.sideTop - low);
  const wide = slotWidth(legs.width, grid.clearance);
  const spare = tidy((wide - legs.width) / 2);
  const depth = dadoDepth(legs.t, step);
  return {
    id: `${id}.upright-${foot}`,
    role: 'leg-upright',
    material: legs.input.material,
    label,
    blank: { length, width: legs.width, thickness: legs.t, grain: 'length' },
    features: [
      ...rails.map((rail, i) => {
        const x0 = tidy(rail - low - spare);
        const patch = { x0, x1: tidy(x0 + wide), y0: 0, y1: legs.width };
        return { id: '', for: `${id}.rail-${i + 1}`, kind: 'dado', side: 'face', patch, depth, corner: 0 } as const;
      }),
      ...boltHeights(site).map((w) => hole([tidy(w - low), legs.width / 2], legThread(site.goods))),
    ],
    pose: { origin: [u[0], grid.t, low], x: [0, 0, 1], y: [1, 0, 0], z: [0, 1, 0] },
    marks: [
      { text: 'top', side: 'back', at: [length - 20, legs.width / 2], kind: 'end' },
      ...rails.map(
        (rail, i) =>
          ({
            text: `${id}.rail-${i + 1}`,
            side: 'face',
            at: [tidy(rail - low + legs.width / 2), legs.width / 2],
            kind: 'mate',
          }) as const,
      ),
    ],
  };
}

function railPart({ site, legs, id, label, rails, end }: At, number: number): Instance {
  const { grid, step } = site;
  const inner = tidy(grid.t + legs.t - dadoDepth(legs.t, step) + legs.t);
  const long = tidy(grid.width - 2 * grid.t);
  const { hand } = alongEnd(`front-${end}`);
  return {
    id: `${id}.rail-${number}`,
    role: 'leg-rail',
    material: legs.input.material,
    label: `${label}${number === 1 ? 'C' : 'D'}`,
    blank: { length: long, width: legs.width, thickness: legs.t, grain: 'length' },
    features: [],
    pose: { origin: [grid.t, inner, rails[number - 1] ?? 0], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] },
    marks: [
      { text: hand === 'left' ? 'front' : 'back', side: 'back', at: [30, legs.width / 2], kind: 'end' },
      { text: 'up', side: 'back', at: [long / 2, legs.width * 0.75], kind: 'up' },
    ],
  };
}
