import type { Site } from '../fitting.ts';
import type { DrawersInput, Material } from '../input.ts';
import { dadoDepth, onStep, slotWidth, tidy } from '../machining.ts';
import { viewLength } from '../side-view.ts';
import { betweenRabbets } from '../spans.ts';
import type { Bay } from './bays.ts';
import { boxWidth } from './box.ts';
import { type BitPath, faceOf, openingOf, type Rounded } from './face.ts';

/** Common practice, no source, all of these; mm. */
export const LEAST_LIGAMENT = 30;
/** From the opening's edge to the box: below so that it does not drag, above so that it can be tipped onto its slides. */
const BOX_GAP = { below: 6, above: 12 };
/** Wood an overlaid face has beyond its opening, all round. */
const OVERLAP = 12;
/** Behind a slide, so that its end never decides how deep a drawer closes. */
export const BEHIND_SLIDE = 2;
/** A slide is a strip this tall. */
export const SLIDE_TALL = 45;
const SPACER_TALL = 60;
const GROOVE_UP = 10;
const GROOVE_DEEP = 6.35;
/** A bottom is this much smaller than its grooves, so that it floats. */
export const BOTTOM_UNDER = 1.6;
/** A path rounds its corners by this many bits, so that the face keeps a corner of its own. */
const PATH_BITS = 2;

/** A range along one direction, mm. */
export type Span = readonly [number, number];

/** Everything a drawer is cut from, as seen from before its side: u from the left, v inward, w up from the floor; mm. */
export type DrawerFigures = {
  readonly id: string;
  readonly number: number;
  readonly input: DrawersInput;
  /** clear of the bay */
  readonly bay: { readonly u: Span; readonly deep: number };
  readonly opening: Rounded;
  readonly face: Rounded;
  /** thickness of the board the opening is in, and of a spacer */
  readonly t: number;
  /** outer face of the drawer's face */
  readonly outer: number;
  readonly box: BoxFigures;
  readonly spacer: { readonly w: Span; readonly long: number };
};

export type BoxFigures = {
  readonly u: Span;
  readonly v: Span;
  readonly w: Span;
  readonly wood: Material;
  readonly bottom: Material;
  /** thickness of its wood, depth of its corner joints, width of the slots they and the bottom go into */
  readonly t: number;
  readonly corner: number;
  readonly slot: number;
  readonly groove: { readonly up: number; readonly wide: number; readonly deep: number };
  readonly clearance: number;
};

/** Gaps below and above a box, and how far an overlaid face reaches past its opening: as written, else as usual; mm. */
export function gapsOf({ gaps }: Pick<DrawersInput, 'gaps'>) {
  return {
    below: gaps?.under ?? BOX_GAP.below,
    above: gaps?.liftOut ?? BOX_GAP.above,
    overlap: gaps?.overlap ?? OVERLAP,
  };
}

/** Where the opening may lie: heights from the floor, mm. */
export function openingHeights({ grid }: Site, input: DrawersInput): Span {
  const hang = tidy(grid.side - grid.strut);
  const asked = input.ligament ?? LEAST_LIGAMENT;
  const below = Math.max(asked, hang);
  const above = input.ligament ?? below;
  if (input.opening === null) return [tidy(grid.sideUnderside + below), tidy(grid.sideTop - above)];
  const low = Math.max(hang, tidy((grid.side - input.opening) / 2));
  return [tidy(grid.sideUnderside + low), tidy(grid.sideUnderside + low + input.opening)];
}

/** A drawer's figures in a bay; null when the bit leaves no face. */
export function drawerFigures(site: Site, input: DrawersInput, bay: Bay): DrawerFigures | null {
  const { grid, materials } = site;
  const [wood, bottom] = [materials[input.material], materials[input.bottom]];
  if (wood === undefined || bottom === undefined) return null;
  const u = bayAcross(site, bay);
  const path = pathFor([tidy(u[0] + grid.t), tidy(u[1] - grid.t)], openingHeights(site, input), input.bit);
  const opening = openingOf(path, input.bit);
  const face = input.faces === 'cut-out' ? faceOf(path, input.bit) : overlaid(opening, gapsOf(input).overlap);
  if (face === null) return null;
  const back = input.faces === 'cut-out' ? grid.t : 0;
  const box = boxFigures(site, { input, opening, back, wood, bottom });
  const middle = tidy((box.w[0] + box.w[1]) / 2);
  const half = Math.min(SPACER_TALL, opening.patch.y1 - opening.patch.y0) / 2;
  return {
    id: `drawer.${bay.side}-${bay.number}`,
    number: bay.number,
    input,
    bay: { u, deep: bay.deep },
    opening,
    face,
    t: grid.t,
    outer: tidy(back - grid.t),
    box,
    spacer: {
      w: [Math.max(tidy(middle - half), opening.patch.y0), Math.min(tidy(middle + half), opening.patch.y1)],
      long: Math.min(input.slides.length, bay.deep),
    },
  };
}

/** A bay's clear width from the left of whoever stands before its side. */
export function bayAcross({ grid }: Site, { side, min, max }: Bay): Span {
  const long = viewLength(grid, side);
  if (side === 'front') return [min[0], max[0]];
  if (side === 'right') return [min[1], max[1]];
  const axis = side === 'back' ? 0 : 1;
  return [tidy(long - max[axis]), tidy(long - min[axis])];
}

/** The bit's path for an opening of these sides; its corners are rounder than the bit. */
function pathFor(u: Span, w: Span, bit: number): BitPath {
  const half = bit / 2;
  return {
    patch: { x0: tidy(u[0] + half), x1: tidy(u[1] - half), y0: tidy(w[0] + half), y1: tidy(w[1] - half) },
    // no rounder than the face's own half
    radius: tidy(Math.min(PATH_BITS * bit, (w[1] - w[0] - bit) / 2, (u[1] - u[0] - bit) / 2)),
  };
}

function overlaid({ patch: { x0, x1, y0, y1 } }: Rounded, by: number): Rounded {
  return { patch: { x0: tidy(x0 - by), x1: tidy(x1 + by), y0: tidy(y0 - by), y1: tidy(y1 + by) }, radius: 0 };
}

type BoxIn = {
  readonly input: DrawersInput;
  readonly opening: Rounded;
  readonly back: number;
  readonly wood: Material;
  readonly bottom: Material;
};

function boxFigures({ grid, step }: Site, { input, opening, back, wood, bottom }: BoxIn): BoxFigures {
  const { x0, x1, y0, y1 } = opening.patch;
  const wide = boxWidth(tidy(x1 - x0), input.slides.clearance);
  const left = tidy(x0 + input.slides.clearance);
  const t = wood.thickness.mean;
  const gaps = gapsOf(input);
  return {
    u: [left, tidy(left + wide)],
    v: [back, tidy(back + input.slides.length)],
    w: [tidy(y0 + gaps.below), tidy(y1 - gaps.above)],
    wood,
    bottom,
    t,
    corner: dadoDepth(t, step),
    slot: slotWidth(wood.thickness.thickest, grid.clearance),
    groove: {
      up: GROOVE_UP,
      wide: slotWidth(bottom.thickness.thickest, grid.clearance),
      deep: Math.min(onStep(GROOVE_DEEP, step), tidy(t / 2)),
    },
    clearance: grid.clearance,
  };
}

/** Length of a box's front and back, between the joints of its sides; mm. */
export function boxFront({ u, t, corner }: BoxFigures): number {
  return betweenRabbets(tidy(u[1] - u[0]), t, corner);
}

/** Inner face of the box's back, from the outer face of the bench's side; a dado leaves the box's own thickness behind it. */
export function backAt({ v, t }: BoxFigures, corners: 'dado' | 'rabbet'): Span {
  const end = corners === 'dado' ? tidy(v[1] - t) : v[1];
  return [tidy(end - t), end];
}
