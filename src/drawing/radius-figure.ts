import { type Block, emptyBlock, joined } from './block.ts';
import type { Dimension } from './dimension.ts';
import { ledFigure } from './led-figure.ts';
import type { Spot } from './mark.ts';

/** A round corner on paper: the middle of its arc's circle and the place on it that the figure points at. */
export type Round = { readonly centre: Spot; readonly on: Spot };

/** How a radius is printed (ISO 129-1: R before the figure). */
export function radiusText(figure: string): string {
  return `R ${figure}`;
}

/** A drawing with the figure of a radius led to its arc; without it where there is no room. */
export function withRadius(drawn: Block, { centre, on }: Round, fixes: Pick<Dimension, 'of' | 'text' | 'view'>): Block {
  const marks = ledFigure(drawn, { text: radiusText(fixes.text), to: on, clear: [] });
  if (marks.length === 0) return drawn;
  const common = { measure: 'radius', between: null, chain: null } as const;
  const dimension: Dimension = { ...fixes, ...common, ends: [centre, on], about: centre };
  return joined(drawn, { ...emptyBlock, marks, dimensions: [dimension] });
}
