import { difference } from '../core/geometry/booleans.ts';
import { rectangle } from '../core/geometry/polygon.ts';
import type { Point, Polygon } from '../core/geometry/shapes.ts';
import type { Feature, Part } from '../core/stock/part.ts';
import { chainBlock } from './bench-view.ts';
import { type Block, extentOf, joined } from './block.ts';
import { chainMarks, type Link } from './chain.ts';
import type { Dimension } from './dimension.ts';
import { betweenText } from './figures.ts';
import { polygonMark } from './outline.ts';
import { isPocket, same } from './part-groups.ts';
import type { Stage } from './part-stage.ts';
import { type Rule, ruleSpot } from './rule.ts';
import { lettering, smallText } from './text.ts';
import { paperX, paperY, type View } from './view.ts';

type Blank = Part['blank'];
type Loop = readonly Point[];

/** How far a mitre goes in from its edge, on its short side; mm. */
function insetOf({ angle }: Extract<Feature, { readonly kind: 'mitre' }>, { thickness }: Blank): number {
  return thickness / Math.tan(angle);
}

/** The wood a feature that runs from end to end takes away, as it is seen from the right end: x from the back, y up. */
function taken(feature: Feature, blank: Blank): readonly Loop[] {
  const { length, width, thickness } = blank;
  if (isPocket(feature)) {
    const { x0, x1, y0, y1 } = feature.patch;
    if (x0 > same || x1 < length - same) return [];
    const [z0, z1] = feature.side === 'face' ? [thickness - feature.depth, thickness] : [0, feature.depth];
    return [rectangle([z0, y0], [z1, y1])];
  }
  if (feature.kind !== 'mitre' || (feature.edge !== 'top' && feature.edge !== 'bottom')) return [];
  const [edge, way] = feature.edge === 'top' ? [width, -1] : [0, 1];
  const short = feature.long === 'back' ? thickness : 0;
  return [
    [
      [0, edge],
      [thickness, edge],
      [short, edge + way * insetOf(feature, blank)],
    ],
  ];
}

/** A part from its right end: what runs from end to end shows, what does not stays out of it. */
export function endProfile({ blank, features }: Pick<Part, 'blank' | 'features'>): readonly Polygon[] {
  const whole = rectangle([0, 0], [blank.thickness, blank.width]);
  return difference(
    [whole],
    features.flatMap((feature) => taken(feature, blank)),
  );
}

/** Where the short points of mitres along the part lie between its edges. */
function pointsOf({ blank, features }: Part): readonly number[] {
  return features.flatMap((feature) => {
    if (feature.kind !== 'mitre') return [];
    if (feature.edge === 'bottom') return [insetOf(feature, blank)];
    return feature.edge === 'top' ? [blank.width - insetOf(feature, blank)] : [];
  });
}

function thicknessOf(end: View, stage: Stage): Block {
  const { thickness, width } = stage.part.blank;
  const link: Link = {
    from: paperX(end, 0),
    to: paperX(end, thickness),
    text: betweenText(0, thickness, stage.unit),
  };
  const rule: Rule = { side: 'above', base: paperY(end, width) };
  const measured: Dimension = {
    measure: 'thickness',
    of: [],
    text: link.text,
    view: end.name,
    between: [0, thickness],
    ends: [ruleSpot(rule, link.from, 10), ruleSpot(rule, link.to, 10)],
    chain: null,
  };
  return { marks: chainMarks({ rule, v: 10, starts: () => 0 }, [link]), views: [], dimensions: [measured] };
}

/** The end view at the right of a block, with the thickness, the short points of mitres, and which side is the face. */
export function endView(stage: Stage, block: Block): Block {
  const { view, unit, part } = stage;
  const { thickness, width } = part.blank;
  const x = extentOf(block.marks).x1 + 12;
  const end: View = { name: `end ${stage.from}`, scale: view.scale, origin: [x, view.origin[1]], breaks: [] };
  const points = pointsOf(part);
  const base = paperX(end, thickness);
  const stops = points.length === 0 ? [] : [0, ...points, width];
  const chain = chainBlock({ name: 'points', view: end, side: 'right', stops, base, opposite: base, v: 8, unit });
  // the words stand below the arrows of a chain that has no room for them inside
  const low = chain.marks.length === 0 ? 0 : extentOf(chain.marks).y1 + smallText + 0.6;
  const foot = Math.max(paperY(end, 0) + 5, low);
  const marks = [
    ...endProfile(part).map((shape) => polygonMark(end, shape, { pen: 'edge', fill: 'wood' })),
    lettering('face', [paperX(end, thickness) + 1.2, foot], { role: 'label' }),
    lettering('back', [paperX(end, 0) - 1.2, foot], { role: 'label', anchor: 'end' }),
  ];
  return joined({ marks, views: [end], dimensions: [] }, thicknessOf(end, stage), chain);
}
