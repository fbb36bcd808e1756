import type { Bench } from '../core/benchwork/bench.ts';
import { deckView, planView } from './bench-plan.ts';
import { elevationView, sectionView } from './bench-side.ts';
import type { BenchAsk, BenchViewKind, Scalable } from './bench-stage.ts';
import type { Block } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingOptions } from './drawing.ts';
import { firstFitting, fitsSheet, possibleScales } from './sheet.ts';

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
  const { paper } = ask.options;
  const width = ask.kind === 'front' || ask.kind === 'plan' || ask.kind === 'deck' ? bench.length : bench.width;
  const height = ask.kind === 'plan' || ask.kind === 'deck' ? bench.width : bench.sideTop - bench.sideUnderside;
  const blockAt = viewOf({ notebook, bench, options: ask.options }, ask.kind);
  const { drawn, scale } = firstFitting(possibleScales({ width, height }, paper), blockAt, (block) =>
    fitsSheet(block, paper),
  );
  return { blocks: [drawn], scale };
}
