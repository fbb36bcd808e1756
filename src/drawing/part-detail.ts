import { intersection } from '../core/geometry/booleans.ts';
import { rectangle } from '../core/geometry/polygon.ts';
import type { Point, Polygon } from '../core/geometry/shapes.ts';
import { partOutline } from '../core/stock/outline.ts';
import type { Part, Patch } from '../core/stock/part.ts';
import { partSolid } from '../core/stock/solid.ts';
import { type Block, extentOf, joined } from './block.ts';
import { chainMarks, type Link } from './chain.ts';
import type { Dimension, Measure } from './dimension.ts';
import type { DrawingUnit } from './drawing.ts';
import { lengthText } from './figures.ts';
import { hatchMarks } from './hatch.ts';
import { clippedOutline, type Window } from './outline.ts';
import { scales, scaleText } from './paper.ts';
import { boundsOf, isPocket, touches } from './part-groups.ts';
import type { Sizing } from './part-sizing.ts';
import { type Rule, ruleSpot } from './rule.ts';
import { sectionOf } from './section.ts';
import { lettering, smallText } from './text.ts';
import { onPaper, paperX, paperY, type View } from './view.ts';

/** Room an enlarged detail may take, mm. */
const most = { width: 62, height: 52 } as const;
/** How much of the piece is shown beside the feature, mm on paper. */
const beside = 8;

export type DetailAsk = { readonly part: Part; readonly sizing: Sizing; readonly unit: DrawingUnit };

type Size = {
  readonly measure: Measure;
  readonly from: number;
  readonly to: number;
  readonly rule: Rule;
  readonly text: string;
};

/** The largest scale at which the feature and what is shown beside it fit the room for a detail. */
function detailScale(width: number, height: number): number {
  const fits = (scale: number) => width / scale + 2 * beside <= most.width && height / scale <= most.height;
  return scales.find((scale) => scale >= 0.2 && fits(scale)) ?? 100;
}

function sizeBlock(view: View, ids: readonly string[], size: Size): Block {
  const along = size.rule.side === 'below' || size.rule.side === 'above';
  const at = (value: number) => (along ? paperX(view, value) : paperY(view, value));
  const [from, to] = [at(size.from), at(size.to)];
  const link: Link = { from: Math.min(from, to), to: Math.max(from, to), text: size.text };
  const dimension: Dimension = {
    measure: size.measure,
    of: ids,
    text: size.text,
    view: view.name,
    between: [size.from, size.to],
    ends: [ruleSpot(size.rule, from, 8), ruleSpot(size.rule, to, 8)],
    chain: null,
  };
  return { marks: chainMarks({ rule: size.rule, v: 8, starts: () => 0 }, [link]), views: [], dimensions: [dimension] };
}

function clipWindow(box: Patch, limits: { readonly u: number; readonly v: number }, pad: number): Window {
  return {
    x0: Math.max(0, box.x0 - pad),
    x1: Math.min(limits.u, box.x1 + pad),
    y0: Math.max(0, box.y0 - pad),
    y1: Math.min(limits.v, box.y1 + pad),
  };
}

function openSides(window: Window, limits: { readonly u: number; readonly v: number }) {
  return [
    ...(window.x0 > 0 ? (['x0'] as const) : []),
    ...(window.x1 < limits.u ? (['x1'] as const) : []),
    ...(window.y0 > 0 ? (['y0'] as const) : []),
    ...(window.y1 < limits.v ? (['y1'] as const) : []),
  ];
}

function titled(block: Block, { sizing }: DetailAsk, scale: number): Block {
  const { x0, y0 } = extentOf(block.marks);
  const count = sizing.features.length;
  const times = count > 1 ? ` ${count}×` : '';
  const title = lettering(`${sizing.letter}${times}`, [x0, y0 - 3.5], { size: 3.5, weight: 'bold', role: 'label' });
  const { x1 } = extentOf([title]);
  return {
    ...block,
    marks: [...block.marks, title, lettering(scaleText(scale), [x1 + 2.5, y0 - 3.5], { role: 'label' })],
  };
}

/** A notch or an opening, seen on the face, with its size. */
function faceDetail(ask: DetailAsk, box: Patch): Block {
  const { part, sizing, unit } = ask;
  const scale = detailScale(box.x1 - box.x0, box.y1 - box.y0 + 2 * beside);
  const limits = { u: part.blank.length, v: part.blank.width };
  const window = clipWindow(box, limits, beside * scale);
  const view: View = { name: `detail ${sizing.letter}`, scale, origin: [0, 0], breaks: [] };
  const outline = partOutline(part);
  const pieces = intersection(
    [outline.outline, ...outline.holes],
    [rectangle([window.x0, window.y0], [window.x1, window.y1])],
  );
  const open = openSides(window, limits);
  const touching = touches(box, part.blank);
  const across: Rule =
    touching.bottom && !touching.top
      ? { side: 'below', base: paperY(view, window.y0) }
      : { side: 'above', base: paperY(view, window.y1) };
  const upright: Rule =
    touching.right && !touching.left
      ? { side: 'right', base: paperX(view, window.x1) }
      : { side: 'left', base: paperX(view, window.x0) };
  const ids = sizing.features.map(({ id }) => id);
  const marks = pieces.flatMap((piece) => clippedOutline(view, piece, { window, open }));
  return titled(
    joined(
      { marks, views: [view], dimensions: [] },
      sizeBlock(view, ids, {
        measure: 'size-x',
        from: box.x0,
        to: box.x1,
        rule: across,
        text: lengthText(box.x1 - box.x0, unit),
      }),
      sizeBlock(view, ids, {
        measure: 'size-y',
        from: box.y0,
        to: box.y1,
        rule: upright,
        text: lengthText(box.y1 - box.y0, unit),
      }),
    ),
    ask,
    scale,
  );
}

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

/** A pocket cut across: its width and its depth, and which side is the face. */
function sectionDetail(ask: DetailAsk, box: Patch): Block {
  const { part, sizing, unit } = ask;
  const first = sizing.features[0];
  if (first === undefined || !isPocket(first)) return joined();
  const { thickness } = part.blank;
  const cut = acrossOf(sizing, box, part);
  const scale = detailScale(cut.to - cut.from, thickness);
  const limits = { u: cut.limit, v: thickness };
  const window = clipWindow({ x0: cut.from, x1: cut.to, y0: 0, y1: thickness }, limits, beside * scale);
  const view: View = { name: `section ${sizing.letter}`, scale, origin: [0, 0], breaks: [] };
  const corners: readonly Point[] = rectangle([window.x0, 0], [window.x1, thickness]);
  const pieces = sectionOf(partSolid(part), { axis: cut.axis, at: cut.at }).flatMap((piece) =>
    intersection([piece.outline, ...piece.holes], [corners]),
  );
  const depthAt = first.side === 'face' ? ([thickness - first.depth, thickness] as const) : ([0, first.depth] as const);
  const ids = sizing.features.map(({ id }) => id);
  const rule: Rule =
    first.side === 'face' ? { side: 'above', base: paperY(view, thickness) } : { side: 'below', base: paperY(view, 0) };
  const atLeft = cut.from <= 0.01;
  const upright: Rule = atLeft
    ? { side: 'left', base: paperX(view, window.x0) }
    : { side: 'right', base: paperX(view, window.x1) };
  const words = faceWords(view, {
    side: first.side,
    x: paperX(view, atLeft ? window.x1 : window.x0),
    thickness,
    end: atLeft ? 'right' : 'left',
  });
  return titled(
    joined(
      {
        marks: [
          ...pieces.flatMap((piece) => clippedOutline(view, piece, { window, open: openSides(window, limits) })),
          ...words,
        ],
        views: [view],
        dimensions: [],
      },
      ...pieces.map((piece) => hatched(view, piece)),
      sizeBlock(view, ids, {
        measure: cut.axis === 'y' ? 'size-x' : 'size-y',
        from: cut.from,
        to: cut.to,
        rule,
        text: lengthText(cut.to - cut.from, unit),
      }),
      sizeBlock(view, ids, {
        measure: 'depth',
        from: depthAt[0],
        to: depthAt[1],
        rule: upright,
        text: lengthText(first.depth, unit),
      }),
    ),
    ask,
    scale,
  );
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

/** The enlarged detail that gives a group its sizes; null when the view itself does. */
export function detailBlock(ask: DetailAsk): Block | null {
  const first = ask.sizing.features[0];
  if (first === undefined || ask.sizing.detail === 'none') return null;
  const box = boundsOf(first, ask.part.blank);
  return ask.sizing.detail === 'face' ? faceDetail(ask, box) : sectionDetail(ask, box);
}
