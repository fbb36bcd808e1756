import type { Vector } from '../../geometry/shapes.ts';
import type { Envelope, Joint } from '../../stock/part.ts';
import { bored } from '../drawers/face-parts.ts';
import { type Fitting, NOTHING, type Site, together } from '../fitting.ts';
import { mitreBiscuit } from '../hardware/biscuits.ts';
import { fetched } from '../hardware/count.ts';
import { spread } from '../hardware/deck-screws.ts';
import { type Drive, screwed } from '../hardware/driven.ts';
import { clearanceHole } from '../hardware/screws.ts';
import type { Instance } from '../instance.ts';
import { joint } from '../joints.ts';
import { tidy } from '../machining.ts';
import { placedInstance } from '../placed-instance.ts';
import { boardOf, inBench, sideView } from '../side-view.ts';
import { type AngleFigures, angleFigures, mitrePoints } from './angle-figures.ts';
import { angleHalf, FLAT } from './angle-half.ts';
import { boltedOn, hole } from './bolting.ts';
import { alongEnd, alongSide, type CornerName, fromCorner, LETTERS, type Span } from './corners.ts';
import { boltHeights, type LegFigures, legThread } from './figures.ts';
import { type PadFigures, padJoints, padParts } from './pad.ts';
import { standHoles, standing } from './stand.ts';

type At = {
  readonly site: Site;
  readonly legs: LegFigures;
  readonly angle: AngleFigures;
  readonly corner: CornerName;
  readonly label: string;
};

/**
 * An angle leg under the frame's corner, its outer faces flush with the frame's: two mitred halves, square blocks in
 * dados, the pads in a rabbet at the foot, and a fin that stands up inside the frame, so that the leg comes off.
 */
export function angleLeg(
  site: Site,
  legs: LegFigures,
  corner: { readonly name: CornerName; readonly number: number },
): Fitting {
  const leg = `leg.${corner.name}`;
  const angle = angleFigures(site, legs, leg);
  const at: At = { site, legs, angle, corner: corner.name, label: `P${corner.number}` };
  const view = alongSide(corner.name);
  const pose = sideView(site.grid, view.side);
  const end = alongEnd(corner.name);
  const halves = [
    placedInstance(pose, half(at, 'side')),
    placedInstance(sideView(site.grid, end.side), half(at, 'end')),
  ];
  const pad = padOf(at);
  const inside = [...padParts(pad), ...angle.blocks.map((low, i) => block(at, { low, number: i + 1 })), fin(at)];
  const [f0, f1] = finAcross(at);
  return together([
    {
      ...NOTHING,
      instances: [...halves, ...inside.map((part) => placedInstance(pose, part))],
      joints: joints(at, leg, pad),
      envelopes: spaces(at, leg),
    },
    { ...NOTHING, ...standing(site, legs.input, { view: pose, leg, foot: leg, middle: middleOf(pad), pad }) },
    { ...NOTHING, ...finScrews(at, leg) },
    { ...NOTHING, ...mitreBiscuits(at, leg) },
    boltedOn(site, { side: view.side, u: tidy((f0 + f1) / 2), behind: [`${leg}.fin`], thick: legs.t }),
  ]);
}

/** The leg under the frame, and its fin inside it. */
function spaces(at: At, of: string): readonly Envelope[] {
  const { site, legs, angle, corner } = at;
  const { t, sideUnderside, sideTop } = site.grid;
  const view = alongSide(corner);
  const pose = sideView(site.grid, view.side);
  const [u0, u1] = fromCorner(site, view, [0, legs.width]);
  const [f0, f1] = finAcross(at);
  return [
    { id: `${of}.body`, of, kind: 'leg', ...inBench(pose, [u0, 0, angle.foot], [u1, legs.width, sideUnderside]) },
    { id: `${of}.fin`, of, kind: 'leg', ...inBench(pose, [f0, t, sideUnderside], [f1, tidy(t + legs.t), sideTop]) },
  ];
}

function half({ site, legs, angle, corner, label }: At, which: 'side' | 'end'): Instance {
  const view = which === 'side' ? alongSide(corner) : alongEnd(corner);
  const leg = `leg.${corner}`;
  const u = fromCorner(site, view, [0, legs.width]);
  return angleHalf(legs, angle, {
    id: `${leg}.half-${which}`,
    leg,
    label: `${label}${which === 'side' ? 'A' : 'B'}`,
    view,
    u,
  });
}

/** Blocks and pads lie in the corner, into both halves' dados. */
function squareAcross({ site, legs, angle, corner }: At): { readonly u: Span; readonly v: Span } {
  const near = tidy(legs.t - angle.dado);
  const span: Span = [near, tidy(near + angle.block)];
  return { u: fromCorner(site, alongSide(corner), span), v: span };
}

function padOf(at: At): PadFigures {
  const { legs, angle, corner, label } = at;
  const leg = `leg.${corner}`;
  const bare = { leg, name: '', material: legs.input.material, ...squareAcross(at), low: angle.foot, t: legs.t };
  const { at: holes, diameter } = standHoles(legs, leg, middleOf(bare));
  return { ...bare, label: [`${label}F`, `${label}G`], holes, hole: diameter };
}

function middleOf({ u, v }: { readonly u: Span; readonly v: Span }): readonly [number, number] {
  return [tidy((u[0] + u[1]) / 2), tidy((v[0] + v[1]) / 2)];
}

function block(at: At, { low, number }: { readonly low: number; readonly number: number }): Instance {
  const { u, v } = squareAcross(at);
  const { block: side, foot } = at.angle;
  const origin: Vector = [u[0], v[0], tidy(foot + low)];
  return {
    id: `leg.${at.corner}.block-${number}`,
    role: 'leg-block',
    material: at.legs.input.material,
    label: `${at.label}${LETTERS[number + 1] ?? 'C'}`,
    blank: { length: side, width: side, thickness: at.legs.t, grain: 'length' },
    features: [],
    pose: { origin, ...FLAT },
    marks: [{ text: 'up', side: 'face', at: [side / 2, side / 2], kind: 'up' }],
  };
}

function finAcross({ site, legs, angle, corner }: At): Span {
  return fromCorner(site, alongSide(corner), [legs.t, tidy(legs.t + angle.fin.wide)]);
}

function fin(at: At): Instance {
  const { site, legs, angle } = at;
  const low = tidy(angle.foot + angle.fin.low);
  const [u0] = finAcross(at);
  const { long, wide } = angle.fin;
  return {
    id: `leg.${at.corner}.fin`,
    role: 'leg-fin',
    material: legs.input.material,
    label: `${at.label}E`,
    blank: { length: long, width: wide, thickness: legs.t, grain: 'length' },
    features: [
      ...boltHeights(site).map((w) => hole([tidy(w - low), wide / 2], legThread(site.goods))),
      ...bored(finSpots(at), clearanceHole(site.goods, { through: legs.t, into: legs.t })),
    ],
    pose: { origin: [u0, site.grid.t, low], x: [0, 0, 1], y: [1, 0, 0], z: [0, 1, 0] },
    marks: [{ text: 'top', side: 'face', at: [long - 20, wide / 2], kind: 'end' }],
  };
}

/** Where the fin's screws go: up from its lower end, in the stretch that is glued, and across; even from both edges. mm. */
function finSpots({ angle }: At): readonly (readonly [number, number])[] {
  const glued = tidy(angle.length - angle.fin.low);
  const shares = [0.25, 0.75];
  return shares.flatMap((up) => shares.map((side) => [tidy(up * glued), tidy(side * angle.fin.wide)] as const));
}

/** Screws that hold the fin to the half behind it while the glue sets, and after. */
function finScrews(at: At, leg: string) {
  const { site, legs, angle, corner } = at;
  const view = alongSide(corner);
  const [u0] = finAcross(at);
  const heads = finSpots(at).map(
    ([up, side]): Vector => [tidy(u0 + side), tidy(site.grid.t + legs.t), tidy(angle.foot + angle.fin.low + up)],
  );
  const holds = `butt.${leg}.half-side.${leg}.fin`;
  const drive: Drive = {
    view: sideView(site.grid, view.side),
    holds,
    heads,
    direction: [0, -1, 0],
    through: [`${leg}.fin`, `${leg}.half-side`],
  };
  return screwed(site.goods, drive, { through: legs.t, into: legs.t });
}

/** Biscuits that keep the mitre from sliding while it is clamped; none where the sheet is too thin for one. */
function mitreBiscuits({ site, legs, angle }: At, where: string): Pick<Fitting, 'hardware' | 'findings'> {
  const biscuit = mitreBiscuit(mitrePoints(legs.width, legs.t).face);
  if (biscuit === null) return { hardware: [], findings: [] };
  return fetched(site.goods, { form: 'biscuit', length: biscuit.length, where }, spread(0, angle.length).length);
}

function joints({ site, legs, angle, corner }: At, leg: string, pad: PadFigures): readonly Joint[] {
  const of = (name: string) => `${leg}.${name}`;
  const halves = ['half-side', 'half-end'].map(of);
  const { clearance } = site.grid;
  const uneven = legs.wood.thickness.thickest - legs.t;
  const blocks = angle.blocks.map((_, i) => of(`block-${i + 1}`));
  const board = boardOf(alongSide(corner).side);
  return [
    joint('butt', [of('half-side'), of('half-end')], 0),
    // the upper pad meets the rabbet's shoulder, and its play holds what the lower sheet may be thicker
    ...halves.flatMap((one) => [
      joint('butt', [one, of('pad-1')], 0),
      joint('rabbet', [one, of('pad-2')], tidy(clearance + uneven)),
    ]),
    ...halves.flatMap((one) => blocks.map((id) => joint('dado', [one, id], clearance))),
    ...padJoints(pad, []),
    joint('bearing', [blocks[blocks.length - 1] ?? '', of('fin')], 0),
    joint('butt', [of('half-side'), of('fin')], 0),
    { ...joint('bolted', [board, of('fin')], 0), held: 'bolts' },
  ];
}
