import type { Bench } from '../core/benchwork/bench.ts';
import { deckBlock, planBlock } from './bench-plan.ts';
import { elevationBlock, sectionBlock } from './bench-side.ts';
import type { BenchAsk, BenchViewKind } from './bench-stage.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingOptions } from './drawing.ts';
import { scales } from './paper.ts';
import { fitsSheet } from './sheet.ts';

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
  for (const scale of scales.filter((one) => one >= 1)) {
    const block = blockOf({ notebook, bench, options: ask.options, scale }, ask.kind);
    if (fitsSheet(block, ask.options.paper)) return { blocks: [block], scale };
  }
  return { blocks: [blockOf({ notebook, bench, options: ask.options, scale: 100 }, ask.kind)], scale: 100 };
}
