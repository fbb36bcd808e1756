import type { Bench } from '../core/benchwork/bench.ts';
import { deckBlock, planBlock } from './bench-plan.ts';
import { elevationBlock, sectionBlock } from './bench-side.ts';
import type { BenchAsk, BenchViewKind } from './bench-stage.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingOptions } from './drawing.ts';
import { scales } from './paper.ts';
import { drawingArea, fitsSheet } from './sheet.ts';

function blockOf(ask: BenchAsk, kind: BenchViewKind): Block {
  if (kind === 'plan') return planBlock(ask);
  if (kind === 'deck') return deckBlock(ask);
  return kind === 'section' ? sectionBlock(ask) : elevationBlock(ask, kind);
}

export type BenchLayout = { readonly blocks: readonly Block[]; readonly scale: number };

/** One view of a bench at the largest scale that fits the paper. */
export function benchLayout(
  notebook: DrawingBook,
  bench: Bench,
  ask: { readonly kind: BenchViewKind; readonly options: DrawingOptions },
): BenchLayout {
  const area = drawingArea(ask.options.paper);
  const across = ask.kind === 'front' || ask.kind === 'plan' || ask.kind === 'deck' ? bench.length : bench.width;
  const upright = ask.kind === 'plan' || ask.kind === 'deck' ? bench.width : bench.sideTop - bench.sideUnderside;
  const mayFit = (scale: number) => across / scale <= area.x1 - area.x0 && upright / scale <= area.y1 - area.y0;
  for (const scale of scales.filter((one) => one >= 1 && mayFit(one))) {
    const block = blockOf({ notebook, bench, options: ask.options, scale }, ask.kind);
    if (fitsSheet(block, ask.options.paper)) return { blocks: [block], scale };
  }
  return { blocks: [blockOf({ notebook, bench, options: ask.options, scale: 100 }, ask.kind)], scale: 100 };
}
