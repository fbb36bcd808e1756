import type { Polygon } from '../core/geometry/shapes.ts';
import type { Part, Patch } from '../core/stock/part.ts';
import { type Block, emptyBlock, joined } from './block.ts';
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
import type { DrawingUnit } from './drawing.ts';
import { cutText } from './figures.ts';
import { hatchMarks } from './hatch.ts';
import { clippedOutline, type Window, within } from './outline.ts';
import { isPocket, type PocketFeature, same } from './part-groups.ts';
import type { Sizing } from './part-sizing.ts';
import type { Rule } from './rule.ts';
import { solidOf } from './scene.ts';
import { sectionOf } from './section.ts';
import { lettering, smallText } from './text.ts';
import { onPaper, paperX, paperY, type View } from './view.ts';

function hatched(view: View, polygon: Polygon): Block {
  const loops = [polygon.outline, ...polygon.holes].map((loop) => loop.map((point) => onPaper(view, point)));
  return { marks: hatchMarks(loops, { pitch: 2, slope: 1 }), views: [], dimensions: [] };
}

type Across = {
  readonly from: number;
  readonly to: number;
  readonly limit: number;
  readonly at: number;
  readonly axis: 'x' | 'y';
};

function acrossOf(sizing: Sizing, box: Patch, part: Part): Across {
  if (sizing.detail === 'across') {
    return { from: box.x0, to: box.x1, limit: part.blank.length, at: (box.y0 + box.y1) / 2, axis: 'y' };
  }
  return { from: box.y0, to: box.y1, limit: part.blank.width, at: (box.x0 + box.x1) / 2, axis: 'x' };
}

/** The cut face round a pocket, filled, edged and hatched. */
function cutShape(
  ask: DetailAsk,
  cut: Across,
  { view, window }: { readonly view: View; readonly window: Window },
): Block {
  const { thickness } = ask.part.blank;
  const sections = sectionOf(solidOf(ask.part), { axis: cut.axis, at: cut.at });
  const pieces = sections.flatMap((section) => within(section, { ...window, y0: 0, y1: thickness }));
  const open = openSides(window, { u: cut.limit, v: thickness });
  const marks = pieces.flatMap((piece) => clippedOutline(view, piece, { window, open }));
  return joined({ marks, views: [view], dimensions: [] }, ...pieces.map((piece) => hatched(view, piece)));
}

/** Where a pocket's width and depth stand: off its open side, and off the end it reaches or else the right. */
function pocketSizes(pocket: PocketFeature, cut: Across, { view, window, unit }: PocketStage): readonly Size[] {
  const { thickness } = window;
  const isFace = pocket.side === 'face';
  const [from, to] = isFace ? [thickness - pocket.depth, thickness] : [0, pocket.depth];
  const upright: Rule =
    cut.from <= same
      ? { side: 'left', base: paperX(view, window.x0) }
      : { side: 'right', base: paperX(view, window.x1) };
  return [
    {
      measure: cut.axis === 'y' ? 'size-x' : 'size-y',
      from: cut.from,
      to: cut.to,
      rule: isFace ? { side: 'above', base: paperY(view, thickness) } : { side: 'below', base: paperY(view, 0) },
      text: cutText(cut.to - cut.from, unit),
    },
    { measure: 'depth', from, to, rule: upright, text: cutText(pocket.depth, unit) },
  ];
}

type PocketStage = {
  readonly view: View;
  readonly window: Window & { readonly thickness: number };
  readonly unit: DrawingUnit;
};

/** A pocket cut across: its width and its depth, and which side is the face. */
export function sectionDetail(ask: DetailAsk, box: Patch): Block {
  const { part, sizing, unit } = ask;
  const pocket = sizing.features[0];
  if (pocket === undefined || !isPocket(pocket)) return emptyBlock;
  const { thickness } = part.blank;
  const cut = acrossOf(sizing, box, part);
  const scale = detailScale({ width: cut.to - cut.from, height: thickness }, ask);
  const edges = { x0: cut.from, x1: cut.to, y0: 0, y1: thickness };
  const window = { ...clipWindow(edges, { u: cut.limit, v: thickness }, beside * scale), thickness };
  const view: View = { name: `section ${sizing.letter}`, scale, origin: [0, 0], breaks: [] };
  const atLeft = cut.from <= same;
  const x = paperX(view, atLeft ? window.x1 : window.x0);
  const marks = faceWords(view, { side: pocket.side, x, thickness, end: atLeft ? 'right' : 'left' });
  const ids = sizing.features.map(({ id }) => id);
  const sizes = pocketSizes(pocket, cut, { view, window, unit }).map((size) => sizeBlock(view, ids, size));
  return titled(joined(cutShape(ask, cut, { view, window }), { ...emptyBlock, marks }, ...sizes), ask, scale);
}

type Worded = {
  readonly side: 'face' | 'back';
  readonly x: number;
  readonly thickness: number;
  readonly end: 'left' | 'right';
};

/** The side's name beside its line, so that nobody cuts into the wrong one. */
function faceWords(view: View, { side, x, thickness, end }: Worded) {
  const y = side === 'face' ? paperY(view, thickness) + smallText : paperY(view, 0);
  const style = { role: 'label', anchor: end === 'left' ? 'end' : 'start' } as const;
  return [lettering(side, [end === 'left' ? x - 2.5 : x + 2.5, y], style)];
}
