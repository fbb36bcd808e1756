import type { Part, Patch } from '../core/stock/part.ts';
import { type Block, extentOf } from './block.ts';
import { chainMarks, type Link } from './chain.ts';
import type { Dimension, Measure } from './dimension.ts';
import type { DrawingUnit } from './drawing.ts';
import type { Window } from './outline.ts';
import { scales, scaleText } from './paper.ts';
import type { Sizing } from './part-sizing.ts';
import { type Rule, ruleSpot } from './rule.ts';
import { lettering } from './text.ts';
import { paperX, paperY, type View } from './view.ts';

/** Room an enlarged detail may take, mm: as much as reads well, and less where that saves a sheet. */
export type DetailRoom = { readonly width: number; readonly height: number };
export const detailRooms: readonly [DetailRoom, ...DetailRoom[]] = [
  { width: 62, height: 52 },
  { width: 46, height: 32 },
];
/** How much of the piece is shown beside the feature, mm on paper. */
export const beside = 8;

export type DetailAsk = {
  readonly part: Part;
  readonly sizing: Sizing;
  readonly unit: DrawingUnit;
  readonly room: DetailRoom;
};

export type Size = {
  readonly measure: Measure;
  readonly from: number;
  readonly to: number;
  readonly rule: Rule;
  readonly text: string;
};

/** The largest scale at which the feature and what is shown beside it fit the room for a detail. */
export function detailScale({ width, height }: DetailRoom, { room }: DetailAsk): number {
  const fits = (scale: number) => width / scale + 2 * beside <= room.width && height / scale <= room.height;
  return scales.find((scale) => scale >= 0.2 && fits(scale)) ?? 100;
}

export function sizeBlock(view: View, ids: readonly string[], size: Size): Block {
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

export function clipWindow(box: Patch, limits: { readonly u: number; readonly v: number }, pad: number): Window {
  return {
    x0: Math.max(0, box.x0 - pad),
    x1: Math.min(limits.u, box.x1 + pad),
    y0: Math.max(0, box.y0 - pad),
    y1: Math.min(limits.v, box.y1 + pad),
  };
}

export function openSides(window: Window, limits: { readonly u: number; readonly v: number }) {
  return [
    ...(window.x0 > 0 ? (['x0'] as const) : []),
    ...(window.x1 < limits.u ? (['x1'] as const) : []),
    ...(window.y0 > 0 ? (['y0'] as const) : []),
    ...(window.y1 < limits.v ? (['y1'] as const) : []),
  ];
}

export function titled(block: Block, { sizing }: DetailAsk, scale: number): Block {
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
