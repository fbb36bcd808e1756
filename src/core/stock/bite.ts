import { circle, rectangle } from '../geometry/polygon.ts';
import type { Point } from '../geometry/shapes.ts';
import type { Blank, EdgeSide, FaceSide, Feature, Patch } from './part.ts';

/** Wood a feature takes away: loops in the part's plane, through part of the thickness; mm. */
export type Bite = { readonly loops: readonly (readonly Point[])[]; readonly from: number; readonly to: number };

type Pocket = Extract<Feature, { readonly kind: 'dado' | 'stopped-dado' | 'rabbet' | 'groove' }>;
type RoundedCorner = Extract<Feature, { readonly kind: 'rounded-corner' }>;

/** Corners of a full circle; a relief needs fewer, since only a sliver of it lies outside its pocket. */
const SIDES = 24;
const RELIEF_SIDES = 8;

/** What a feature takes out of a blank across its plane; tapers, mitres and roundovers cut at a slant and take nothing here. */
export function bite(blank: Blank, feature: Feature): Bite | null {
  const through = (...loops: readonly (readonly Point[])[]): Bite => ({ loops, from: 0, to: blank.thickness });
  switch (feature.kind) {
    case 'trim':
      return through(loopOf(trimmed(blank, feature.edge, feature.by)));
    case 'notch':
    case 'opening':
      return through(rounded(blank, feature.patch, feature.corner));
    case 'cut-out':
      return through(feature.outline);
    case 'dado':
    case 'stopped-dado':
    case 'rabbet':
    case 'groove':
      return { loops: pocketLoops(blank, feature), ...layer(blank, feature.side, feature.depth) };
    case 'hole':
    case 'counterbore':
      return bored(blank, feature);
    case 'rounded-corner':
      return through(cornerLoop(blank, feature));
    case 'mitre':
    case 'taper':
    case 'roundover':
      return null;
  }
}

function layer(blank: Blank, side: FaceSide, depth: number): { readonly from: number; readonly to: number } {
  const deep = Math.min(depth, blank.thickness);
  return side === 'face' ? { from: blank.thickness - deep, to: blank.thickness } : { from: 0, to: deep };
}

function bored(blank: Blank, feature: Extract<Feature, { readonly kind: 'hole' | 'counterbore' }>): Bite {
  const depth = feature.depth === 'through' ? blank.thickness : feature.depth;
  return { loops: [circle(feature.at, feature.diameter / 2, SIDES)], ...layer(blank, feature.side, depth) };
}

function trimmed(blank: Blank, edge: EdgeSide, by: number): Patch {
  const all = { x0: 0, x1: blank.length, y0: 0, y1: blank.width };
  if (edge === 'left') return { ...all, x1: by };
  if (edge === 'right') return { ...all, x0: blank.length - by };
  return edge === 'bottom' ? { ...all, y1: by } : { ...all, y0: blank.width - by };
}

function loopOf(patch: Patch): readonly Point[] {
  return rectangle([patch.x0, patch.y0], [patch.x1, patch.y1]);
}

function pocketLoops(blank: Blank, pocket: Pocket): readonly (readonly Point[])[] {
  const radius = pocket.relief ?? 0;
  const reliefs = radius > 0 ? innerCorners(blank, pocket.patch).map((corner) => relief(corner, radius)) : [];
  return [rounded(blank, pocket.patch, pocket.corner), ...reliefs];
}

/** A corner of a patch and the way into the patch from it. */
type Corner = { readonly at: Point; readonly inward: Point };

function corners(patch: Patch): readonly Corner[] {
  return [
    { at: [patch.x0, patch.y0], inward: [1, 1] },
    { at: [patch.x1, patch.y0], inward: [-1, 1] },
    { at: [patch.x1, patch.y1], inward: [-1, -1] },
    { at: [patch.x0, patch.y1], inward: [1, -1] },
  ];
}

function isInner(blank: Blank, { at: [x, y] }: Corner): boolean {
  return x > 0 && x < blank.length && y > 0 && y < blank.width;
}

function innerCorners(blank: Blank, patch: Patch): readonly Corner[] {
  return corners(patch).filter((corner) => isInner(blank, corner));
}

/** The bit's circle through a corner, its centre r / sqrt 2 inside each edge (plane geometry). */
function relief({ at, inward }: Corner, radius: number): readonly Point[] {
  const inside = radius * Math.SQRT1_2;
  return circle([at[0] + inward[0] * inside, at[1] + inward[1] * inside], radius, RELIEF_SIDES);
}

/** A patch whose corners inside the blank keep the bit's radius. */
function rounded(blank: Blank, patch: Patch, radius: number): readonly Point[] {
  const most = Math.min(radius, (patch.x1 - patch.x0) / 2, (patch.y1 - patch.y0) / 2);
  return corners(patch).flatMap((corner) => (most > 0 && isInner(blank, corner) ? arc(corner, most) : [corner.at]));
}

/** A quarter circle that rounds a corner, counter-clockwise round the patch. */
function arc({ at, inward }: Corner, radius: number): readonly Point[] {
  const centre: Point = [at[0] + inward[0] * radius, at[1] + inward[1] * radius];
  const start = Math.atan2(-inward[1], -inward[0]) - Math.PI / 4;
  const steps = SIDES / 4;
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const turn = start + ((Math.PI / 2) * i) / steps;
    return [centre[0] + radius * Math.cos(turn), centre[1] + radius * Math.sin(turn)];
  });
}

/** The wood outside a rounded corner of the blank. */
function cornerLoop(blank: Blank, feature: RoundedCorner): readonly Point[] {
  const at: Point = [
    feature.corner.startsWith('left') ? 0 : blank.length,
    feature.corner.endsWith('bottom') ? 0 : blank.width,
  ];
  const inward: Point = [at[0] === 0 ? 1 : -1, at[1] === 0 ? 1 : -1];
  return [at, ...[...arc({ at, inward }, feature.radius)].reverse()];
}
