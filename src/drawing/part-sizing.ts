import { isAskew } from '../core/geometry/polygon.ts';
import type { Point } from '../core/geometry/shapes.ts';
import type { Blank, EdgeSide, Feature } from '../core/stock/part.ts';
import { boundsOf, type FeatureGroup, isBored, isPatch, isPocket, same, touches } from './part-groups.ts';

/** How a group's sizes are told: in an enlarged detail, or by ordinates of both edges. */
export type Sizing = {
  readonly letter: string;
  readonly features: readonly Feature[];
  readonly detail: 'none' | 'face' | 'outline' | 'across' | 'along' | 'edge' | 'corner';
};

/** A position to print, from the left end or the bottom edge; `inner` is where on the other axis its edge lies. */
export type Position = {
  readonly feature: string;
  readonly letter: string;
  readonly axis: 'x' | 'y';
  /** null where only the group's letter has to stand: the feature reaches from edge to edge */
  readonly measure: 'x0' | 'x1' | 'y0' | 'y1' | 'x' | 'y' | null;
  readonly at: number;
  /** extent on the other axis, mm */
  readonly from: number;
  readonly to: number;
};

/** Features narrower than this on paper get an enlarged detail, mm. */
const readable = 12;

/** Whether an edge's angle or radius can be drawn: it leaves something of the edge, and is no sliver. */
function isEdgeDrawn(feature: Feature, { length, width, thickness }: Blank): boolean {
  if (feature.kind === 'roundover') return feature.radius <= Math.min(thickness, length, width);
  return feature.kind === 'mitre' && feature.angle > Math.PI / 18 && feature.angle < Math.PI / 2 - 1e-6;
}

/** Whether a pocket runs across the part: from edge to edge where it is open at both, else by its longer side. */
function runsUp(feature: Feature, blank: Blank): boolean {
  const box = boundsOf(feature, blank);
  const open = touches(box, blank);
  const [across, along] = [open.top && open.bottom, open.left && open.right];
  return across === along ? box.x1 - box.x0 <= box.y1 - box.y0 : across;
}

/** Chooses for each group how its sizes are told; pockets always show their section, edges their profile. */
export function sizingOf(group: FeatureGroup, blank: Blank, scale: number): Sizing {
  const first = group.features[0];
  if (first === undefined) return { ...group, detail: 'none' };
  if (first.kind === 'rounded-corner') return { ...group, detail: 'corner' };
  if (isEdgeDrawn(first, blank)) return { ...group, detail: 'edge' };
  const { x0, x1, y0, y1 } = boundsOf(first, blank);
  if (first.kind === 'cut-out' && !followsCurve(first.outline) && hasListedCorners(first.outline)) {
    return { ...group, detail: Math.max(x1 - x0, y1 - y0) / scale < readable ? 'outline' : 'none' };
  }
  if (!isPatch(first)) return { ...group, detail: 'none' };
  if (isPocket(first)) return { ...group, detail: runsUp(first, blank) ? 'across' : 'along' };
  const small = Math.min(x1 - x0, y1 - y0) / scale < readable;
  return { ...group, detail: small ? 'face' : 'none' };
}

function patchPositions(sizing: Sizing, feature: Feature, blank: Blank): readonly Position[] {
  const box = boundsOf(feature, blank);
  const open = touches(box, blank);
  const sized = {
    x: sizing.detail === 'face' || sizing.detail === 'across',
    y: sizing.detail === 'face' || sizing.detail === 'along',
  };
  const base = { feature: feature.id, letter: sizing.letter };
  const alongX = { ...base, axis: 'x', from: box.y0, to: box.y1 } as const;
  const alongY = { ...base, axis: 'y', from: box.x0, to: box.x1 } as const;
  const needsX1 = !open.right && !sized.x;
  const needsY1 = !open.top && !sized.y;
  return [
    ...(open.left || (sized.x && open.right) ? [] : [{ ...alongX, measure: 'x0' as const, at: box.x0 }]),
    ...(needsX1 ? [{ ...alongX, measure: 'x1' as const, at: box.x1 }] : []),
    ...(open.bottom || (sized.y && open.top) ? [] : [{ ...alongY, measure: 'y0' as const, at: box.y0 }]),
    ...(needsY1 ? [{ ...alongY, measure: 'y1' as const, at: box.y1 }] : []),
  ];
}

/** Corners of a cut; a coordinate on the blank's own edge needs no figure. */
function cornerPositions(
  sizing: Sizing,
  { id, points }: { readonly id: string; readonly points: readonly Point[] },
  blank: Blank,
): readonly Position[] {
  const ends = { x: blank.length, y: blank.width };
  return points
    .flatMap((point, i) => pointPositions(sizing, `${id}#${i}`, point))
    .filter(({ axis, at }) => at > same && at < ends[axis] - same);
}

function pointPositions(sizing: Sizing, id: string, [x, y]: readonly [number, number]): readonly Position[] {
  const base = { feature: id, letter: sizing.letter };
  return [
    { ...base, axis: 'x', measure: 'x', at: x, from: y, to: y },
    { ...base, axis: 'y', measure: 'y', at: y, from: x, to: x },
  ];
}

function printedPositions(sizing: Sizing, feature: Feature, blank: Blank): readonly Position[] {
  if (isPatch(feature)) return patchPositions(sizing, feature, blank);
  if (isBored(feature)) return pointPositions(sizing, feature.id, feature.at);
  const { id } = feature;
  if (feature.kind === 'cut-out') {
    return hasListedCorners(feature.outline) ? [] : cornerPositions(sizing, { id, points: feature.outline }, blank);
  }
  if (feature.kind === 'taper') return cornerPositions(sizing, { id, points: [feature.from, feature.to] }, blank);
  return [];
}

type Letter = Omit<Position, 'at' | 'axis'>;

function atEdge(base: Letter, edge: EdgeSide, blank: Blank): Position {
  if (edge === 'left' || edge === 'right')
    return { ...base, axis: 'x', at: edge === 'left' ? 0 : blank.length, to: blank.width };
  return { ...base, axis: 'y', at: edge === 'bottom' ? 0 : blank.width, to: blank.length };
}

/** Corners of a cut-out that its view can carry figures for; more of them stand in the notes. */
const mostCorners = 8;

function followsCurve(outline: readonly Point[]): boolean {
  return outline.length > mostCorners;
}

/** Whether an outline follows a curve or stands askew, so that its corners are listed: no figure of one axis pairs them. */
export function hasListedCorners(outline: readonly Point[]): boolean {
  return followsCurve(outline) || isAskew(outline);
}

function edgeOf(feature: Feature, blank: Blank): EdgeSide | null {
  if (feature.kind === 'rounded-corner') return feature.corner.startsWith('left') ? 'left' : 'right';
  if (feature.kind === 'trim' || feature.kind === 'mitre' || feature.kind === 'roundover') return feature.edge;
  if (!isPatch(feature)) return null;
  const open = touches(boundsOf(feature, blank), blank);
  if (open.bottom && open.top) return open.left ? 'left' : 'right';
  return open.bottom ? 'bottom' : 'top';
}

/** A letter at the end or edge that a feature without any printed position lies along. */
function letterPosition(sizing: Sizing, feature: Feature, blank: Blank): readonly Position[] {
  const { x0, y0, y1 } = boundsOf(feature, blank);
  if (feature.kind === 'cut-out') {
    return [{ feature: feature.id, letter: sizing.letter, measure: null, axis: 'x', at: x0, from: y0, to: y1 }];
  }
  const edge = edgeOf(feature, blank);
  const base = { feature: feature.id, letter: sizing.letter, measure: null, from: 0, to: 0 };
  return edge === null ? [] : [atEdge(base, edge, blank)];
}

/** Every position that must be printed so that the feature can be marked out; at least its letter. */
export function positionsOf(sizing: Sizing, feature: Feature, blank: Blank): readonly Position[] {
  const printed = printedPositions(sizing, feature, blank);
  return printed.length > 0 ? printed : letterPosition(sizing, feature, blank);
}

/** Positions on one axis that fall together are printed once. */
export type Tally = { readonly at: number; readonly positions: readonly Position[] };

export function tallied(positions: readonly Position[]): readonly Tally[] {
  const ordered = positions.toSorted((a, b) => a.at - b.at);
  const starts = ordered.flatMap((position, i) => {
    const before = ordered[i - 1];
    return before === undefined || position.at - before.at > same ? [i] : [];
  });
  return starts.map((start, i) => {
    const together = ordered.slice(start, starts[i + 1] ?? ordered.length);
    return { at: together[0]?.at ?? 0, positions: together };
  });
}
