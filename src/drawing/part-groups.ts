import { bounds } from '../core/geometry/polygon.ts';
import type { Point } from '../core/geometry/shapes.ts';
import type { Blank, Feature, Part, Patch } from '../core/stock/part.ts';

export type PatchFeature = Extract<Feature, { readonly patch: Patch }>;
export type PocketFeature = Extract<Feature, { readonly kind: 'dado' | 'stopped-dado' | 'rabbet' | 'groove' }>;
export type BoredFeature = Extract<Feature, { readonly kind: 'hole' | 'counterbore' }>;

/** Features of one part that are alike but for their position, with the letter they carry on the drawing. */
export type FeatureGroup = { readonly letter: string; readonly features: readonly Feature[] };

/** How near two coordinates count as the same edge, mm. */
export const same = 0.02;

export function isPatch(feature: Feature): feature is PatchFeature {
  return 'patch' in feature;
}

export function isPocket(feature: Feature): feature is PocketFeature {
  return (
    feature.kind === 'dado' || feature.kind === 'stopped-dado' || feature.kind === 'rabbet' || feature.kind === 'groove'
  );
}

export function isBored(feature: Feature): feature is BoredFeature {
  return feature.kind === 'hole' || feature.kind === 'counterbore';
}

/** A patch with what lies beyond the blank taken off. */
export function withinBlank(patch: Patch, blank: Blank): Patch {
  return {
    x0: Math.max(0, patch.x0),
    x1: Math.min(blank.length, patch.x1),
    y0: Math.max(0, patch.y0),
    y1: Math.min(blank.width, patch.y1),
  };
}

/** Which edges of the blank a patch is open to. */
export function touches(patch: Patch, blank: Blank) {
  return {
    left: patch.x0 <= same,
    right: patch.x1 >= blank.length - same,
    bottom: patch.y0 <= same,
    top: patch.y1 >= blank.width - same,
  };
}

function hull(points: readonly Point[]): Patch {
  const { low, high } = bounds(points);
  return { x0: low[0], x1: high[0], y0: low[1], y1: high[1] };
}

function cornerBounds(
  { corner, radius }: Extract<Feature, { kind: 'rounded-corner' }>,
  { length, width }: Blank,
): Patch {
  const [x0, y0] = [corner.startsWith('left') ? 0 : length - radius, corner.endsWith('bottom') ? 0 : width - radius];
  return { x0, x1: x0 + radius, y0, y1: y0 + radius };
}

/** The rectangle that holds a feature, on the blank; a side edge is a rectangle without width. */
export function boundsOf(feature: Feature, blank: Blank): Patch {
  if (isPatch(feature)) return withinBlank(feature.patch, blank);
  if (isBored(feature)) {
    const [[x, y], r] = [feature.at, feature.diameter / 2];
    return { x0: x - r, x1: x + r, y0: y - r, y1: y + r };
  }
  if (feature.kind === 'cut-out') return hull(feature.outline);
  if (feature.kind === 'taper') return hull([feature.from, feature.to]);
  if (feature.kind === 'rounded-corner') return cornerBounds(feature, blank);
  if (feature.edge === 'left') return { x0: 0, x1: 0, y0: 0, y1: blank.width };
  if (feature.edge === 'right') return { x0: blank.length, x1: blank.length, y0: 0, y1: blank.width };
  return { x0: 0, x1: blank.length, y0: 0, y1: blank.width };
}

function thousandth(value: number): string {
  const rounded = Math.round(value * 1000);
  return String(rounded === 0 ? 0 : rounded);
}

function patchKey(feature: PatchFeature, blank: Blank): string {
  const patch = withinBlank(feature.patch, blank);
  const open = touches(patch, blank);
  const ends = open.left && open.right ? 'through' : open.left || open.right ? 'end' : 'inside';
  const size = [patch.x1 - patch.x0, patch.y1 - patch.y0, feature.corner].map(thousandth);
  const pocket = isPocket(feature) ? [feature.side, thousandth(feature.depth), thousandth(feature.relief ?? 0)] : [];
  return [
    ends,
    open.bottom,
    open.top,
    ...size,
    ...pocket,
    'edge' in feature && ends === 'inside' ? feature.edge : '',
  ].join(' ');
}

/** Features with the same key are drawn once and counted. */
function keyOf(feature: Feature, blank: Blank): string {
  if (isPatch(feature)) return `${feature.kind} ${patchKey(feature, blank)}`;
  if (isBored(feature))
    return [feature.kind, feature.side, thousandth(feature.diameter), String(feature.depth)].join(' ');
  if (feature.kind === 'roundover') return `roundover ${feature.side} ${thousandth(feature.radius)}`;
  if (feature.kind === 'rounded-corner') return `rounded-corner ${thousandth(feature.radius)}`;
  if (feature.kind === 'mitre') return `mitre ${feature.long} ${thousandth(feature.angle)}`;
  return feature.id;
}

/** A to Z, then AA, AB and on; I and O are left out so that nobody reads 1 and 0. */
export function letterOf(index: number): string {
  const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ';
  const last = letters[index % letters.length] ?? '';
  return index < letters.length ? last : letterOf(Math.floor(index / letters.length) - 1) + last;
}

/** The part's features in groups, lettered from the left end and the bottom edge on. */
export function featureGroups(part: Pick<Part, 'blank' | 'features'>): readonly FeatureGroup[] {
  const byKey = new Map<string, Feature[]>();
  const place = (feature: Feature) => boundsOf(feature, part.blank);
  const ordered = part.features.toSorted((a, b) => place(a).x0 - place(b).x0 || place(a).y0 - place(b).y0);
  for (const feature of ordered) {
    const key = keyOf(feature, part.blank);
    byKey.set(key, [...(byKey.get(key) ?? []), feature]);
  }
  return [...byKey.values()].map((features, index) => ({ letter: letterOf(index), features }));
}
