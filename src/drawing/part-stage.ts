import type { Part } from '../core/stock/part.ts';
import type { DrawingUnit } from './drawing.ts';
import type { Window } from './outline.ts';
import { boundsOf, featureGroups } from './part-groups.ts';
import { type Sizing, sizingOf } from './part-sizing.ts';
import type { Break, View } from './view.ts';

/** A part's true shape as it is asked for: at a scale, shortened or in a window. */
export type PartViewAsk = {
  readonly part: Part;
  readonly unit: DrawingUnit;
  readonly scale: number;
  readonly breaks: readonly Break[];
  /** from and to along the part's length; the whole part when 0 and its length */
  readonly from: number;
  readonly to: number;
  readonly heading: string;
};

export type Stage = PartViewAsk & { readonly view: View; readonly window: Window; readonly sizings: readonly Sizing[] };

export function stageOf(ask: PartViewAsk): Stage {
  const view: View = {
    name: `face ${ask.from}`,
    scale: ask.scale,
    origin: [-ask.from / ask.scale, 0],
    breaks: ask.breaks,
  };
  const window: Window = { x0: ask.from, x1: ask.to, y0: 0, y1: ask.part.blank.width };
  const sizings = featureGroups(ask.part).map((group) => sizingOf(group, ask.part.blank, ask.scale));
  return { ...ask, view, window, sizings };
}

/** Features whose near edge lies in the window. */
export function shownSizings({ sizings, part, from, to }: Stage): readonly Sizing[] {
  const last = to >= part.blank.length;
  return sizings.map((sizing) => ({
    ...sizing,
    features: sizing.features.filter((feature) => {
      const { x0 } = boundsOf(feature, part.blank);
      return x0 >= from && (x0 < to || last);
    }),
  }));
}
