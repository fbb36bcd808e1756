import type { Extents } from './bench-stage.ts';
import { type ChainAsk, chainWithWhole } from './bench-view.ts';
import { type Block, joined } from './block.ts';
import type { DrawingUnit } from './drawing.ts';
import type { Side } from './rule.ts';
import { paperX, paperY, type View } from './view.ts';

/** A chain's name, where it stops, and how far off its line stands; 10 mm when not told. */
export type Stops = { readonly name: string; readonly at: readonly number[]; readonly v?: number };

type ChainsAsk = {
  readonly view: View;
  readonly unit: DrawingUnit;
  readonly print?: ChainAsk['print'];
  readonly box: Extents;
  /** below the view */
  readonly along: Stops;
  readonly upright: Stops & { readonly side: Extract<Side, 'left' | 'right'> };
};

/** The two chains of a bench's view, each with its whole beyond it. */
export function viewChains({ box, along, upright, ...shared }: ChainsAsk): Block {
  const { view } = shared;
  const [left, right] = [paperX(view, box.u0), paperX(view, box.u1)];
  const [base, opposite] = upright.side === 'left' ? [left, right] : [right, left];
  return joined(
    chainWithWhole({
      ...shared,
      name: along.name,
      side: 'below',
      stops: along.at,
      v: along.v ?? 10,
      base: paperY(view, box.v0),
      opposite: paperY(view, box.v1),
    }),
    chainWithWhole({
      ...shared,
      name: upright.name,
      side: upright.side,
      stops: upright.at,
      v: upright.v ?? 10,
      base,
      opposite,
    }),
  );
}
