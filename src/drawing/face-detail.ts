import type { Patch } from '../core/stock/part.ts';
import { type Block, joined } from './block.ts';
import { innerRound } from './corner-detail.ts';
import {
  beside,
  clipWindow,
  type DetailAsk,
  detailScale,
  openSides,
  type Size,
  sizeBlock,
  titled,
} from './detail-frame.ts';
import { cutText, sizeText } from './figures.ts';
import { clippedOutline, type Window, within } from './outline.ts';
import { isPatch, touches } from './part-groups.ts';
import { withRadius } from './radius-figure.ts';
import type { Rule } from './rule.ts';
import { outlineOf } from './scene.ts';
import { paperX, paperY, type View } from './view.ts';

/** A notch or an opening, seen on the face, with its size. */
export function faceDetail(ask: DetailAsk, box: Patch): Block {
  const { part, sizing, unit } = ask;
  const scale = detailScale({ width: box.x1 - box.x0, height: box.y1 - box.y0 + 2 * beside }, ask);
  const limits = { u: part.blank.length, v: part.blank.width };
  const window = clipWindow(box, limits, beside * scale);
  const view: View = { name: `detail ${sizing.letter}`, scale, origin: [0, 0], breaks: [] };
  const pieces = within(outlineOf(part), window);
  const style = { window, open: openSides(window, limits) };
  const marks = pieces.flatMap((piece) => clippedOutline(view, piece, style));
  const { across, upright } = facing(view, window, touches(box, part.blank));
  const size = (measure: 'size-x' | 'size-y', from: number, to: number): Size => ({
    measure,
    from,
    to,
    rule: measure === 'size-x' ? across : upright,
    text: cutText(to - from, unit),
  });
  const ids = sizing.features.map(({ id }) => id);
  const sizes = [size('size-x', box.x0, box.x1), size('size-y', box.y0, box.y1)];
  const shape: Block = { marks, views: [view], dimensions: [] };
  const sized = joined(shape, ...sizes.map((one) => sizeBlock(view, ids, one)));
  return titled(rounded(ask, box, { view, sized }), ask, scale);
}

/** The same with the radius of its inner corners, where they are round. */
function rounded(ask: DetailAsk, box: Patch, { view, sized }: { readonly view: View; readonly sized: Block }): Block {
  const { part, sizing, unit } = ask;
  const [first] = sizing.features;
  const radius = first !== undefined && isPatch(first) ? first.corner : 0;
  const round = radius > 0 ? innerRound(view, { box, radius, blank: part.blank }) : null;
  if (round === null) return sized;
  const of = sizing.features.map(({ id }) => id);
  return withRadius(sized, round, { of, text: sizeText(radius, unit), view: view.name });
}

/** Figures stand on the side the cut is open to. */
function facing(
  view: View,
  window: Window,
  open: ReturnType<typeof touches>,
): { readonly across: Rule; readonly upright: Rule } {
  const below = open.bottom && !open.top;
  const right = open.right && !open.left;
  return {
    across: below ? { side: 'below', base: paperY(view, window.y0) } : { side: 'above', base: paperY(view, window.y1) },
    upright: right ? { side: 'right', base: paperX(view, window.x1) } : { side: 'left', base: paperX(view, window.x0) },
  };
}
