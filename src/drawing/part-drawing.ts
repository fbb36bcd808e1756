import type { Part } from '../core/stock/part.ts';
import type { Block } from './block.ts';
import type { DrawingOptions } from './drawing.ts';
import { scales, scaleText } from './paper.ts';
import { type PartViewAsk, partViewBlock } from './part-view.ts';
import { fitsSheet } from './sheet.ts';

/** What is laid out for one part: its blocks in order, and the scale of the true shape. */
export type PartLayout = { readonly blocks: readonly Block[]; readonly scale: number };

function wholeAt(part: Part, scale: number, { unit }: DrawingOptions): Block {
  const heading = `Seen on its face  ${scaleText(scale)}`;
  const ask: PartViewAsk = { part, unit, scale, breaks: [], from: 0, to: part.blank.length, heading };
  return partViewBlock(ask);
}

export function partLayout(part: Part, options: DrawingOptions): PartLayout {
  for (const scale of scales) {
    const block = wholeAt(part, scale, options);
    if (fitsSheet(block, options.paper)) return { blocks: [block], scale };
  }
  return { blocks: [wholeAt(part, 100, options)], scale: 100 };
}
