import type { Bench } from '../core/benchwork/bench.ts';
import { deckView, planView } from './bench-plan.ts';
import { elevationView, sectionView } from './bench-side.ts';
import type { BenchAsk, BenchViewKind, Scalable } from './bench-stage.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingOptions } from './drawing.ts';
import { scales } from './paper.ts';
import { drawingArea, fitsSheet } from './sheet.ts';

function viewOf(ask: BenchAsk, kind: BenchViewKind): Scalable {
  if (kind === 'plan') return planView(ask);
  if (kind === 'deck') return deckView(ask);
  return kind === 'section' ? sectionView(ask) : elevationView(ask, kind);
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
  const blockAt = viewOf({ notebook, bench, options: ask.options }, ask.kind);
  for (const scale of scales.filter((one) => one >= 1 && mayFit(one))) {
    const block = blockAt(scale);
    if (fitsSheet(block, ask.options.paper)) return { blocks: [block], scale };
  }
  return { blocks: [blockAt(100)], scale: 100 };
}
