import { difference } from '../core/geometry/booleans.ts';
import type { Point } from '../core/geometry/shapes.ts';
import { partOutline } from '../core/stock/outline.ts';
import type { Blank, Feature, Patch } from '../core/stock/part.ts';
import type { Block } from './block.ts';
import { beside, clipWindow, type DetailAsk, detailScale, openSides, titled } from './detail-frame.ts';
import { sizeText } from './figures.ts';
import { clippedOutline, within } from './outline.ts';
import { same, touches } from './part-groups.ts';
import { type Round, withRadius } from './radius-figure.ts';
import { onPaper, type View } from './view.ts';

type RoundedCorner = Extract<Feature, { readonly kind: 'rounded-corner' }>;

/** The square a rounded corner lies in, and the way from it into the part. */
function cornerOf({ corner, radius }: RoundedCorner, { length, width }: Blank): { box: Patch; inward: Point } {
  const [left, bottom] = [corner.startsWith('left'), corner.endsWith('bottom')];
  const [x0, y0] = [left ? 0 : length - radius, bottom ? 0 : width - radius];
  return { box: { x0, x1: x0 + radius, y0, y1: y0 + radius }, inward: [left ? 1 : -1, bottom ? 1 : -1] };
}

/** A round corner of that radius whose square corner is `at`, with the side its circle's middle lies on. */
function roundAt(
  view: View,
  at: Point,
  { radius, inward }: { readonly radius: number; readonly inward: Point },
): Round {
  const off = radius * (1 - Math.SQRT1_2);
  const spot = (by: number) => onPaper(view, [at[0] + inward[0] * by, at[1] + inward[1] * by]);
  return { centre: spot(radius), on: spot(off) };
}

/** Chords of a quarter of a circle: at the largest enlargement none shows. */
const CHORDS = 24;

/** What the arc leaves of a corner's square, as a loop. */
function beyondArc([x, y]: Point, radius: number, [ux, uy]: Point): readonly Point[] {
  const arc = Array.from({ length: CHORDS + 1 }, (_, i): Point => {
    const turn = (Math.PI / 2) * (i / CHORDS);
    return [x + ux * radius * (1 - Math.sin(turn)), y + uy * radius * (1 - Math.cos(turn))];
  });
  return [[x, y], ...arc];
}

/** A rounded corner of the part, enlarged, with its radius; null where another cut takes the corner away. */
export function cornerDetail(ask: DetailAsk): Block | null {
  const { part, sizing, unit } = ask;
  const [first] = sizing.features;
  if (first?.kind !== 'rounded-corner') return null;
  const { box, inward } = cornerOf(first, part.blank);
  const scale = detailScale({ width: first.radius, height: first.radius + 2 * beside }, ask);
  const limits = { u: part.blank.length, v: part.blank.width };
  const window = clipWindow(box, limits, beside * scale);
  const view: View = { name: `corner ${sizing.letter}`, scale, origin: [0, 0], breaks: [] };
  const style = { window, open: openSides(window, limits) };
  const at: Point = [inward[0] > 0 ? box.x0 : box.x1, inward[1] > 0 ? box.y0 : box.y1];
  const square = { ...part, features: part.features.filter(({ id }) => id !== first.id) };
  const { outline } = partOutline(square);
  if (!outline.some(([x, y]) => Math.hypot(x - at[0], y - at[1]) < same)) return null;
  const pieces = difference([outline], [beyondArc(at, first.radius, inward)]);
  const marks = pieces.flatMap((piece) => within(piece, window)).flatMap((piece) => clippedOutline(view, piece, style));
  const fixes = { of: sizing.features.map(({ id }) => id), text: sizeText(first.radius, unit), view: view.name };
  const round = roundAt(view, at, { radius: first.radius, inward });
  return titled(withRadius({ marks, views: [view], dimensions: [] }, round, fixes), ask, scale);
}

/** A notch's or an opening's round inner corner: the first that does not run out at the blank's edge. */
export function innerRound(
  view: View,
  { box, radius, blank }: { box: Patch; radius: number; blank: Blank },
): Round | null {
  const open = touches(box, blank);
  if ((open.left && open.right) || (open.bottom && open.top)) return null;
  const at: Point = [open.right ? box.x0 : box.x1, open.top ? box.y0 : box.y1];
  return roundAt(view, at, { radius, inward: [open.right ? 1 : -1, open.top ? 1 : -1] });
}
