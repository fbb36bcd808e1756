import { holds } from '../core/geometry/polygon.ts';
import type { Polygon } from '../core/geometry/shapes.ts';
import type { Part } from '../core/stock/part.ts';
import type { DrawingUnit } from './drawing.ts';
import type { Extent } from './mark.ts';
import type { Window } from './outline.ts';
import { boundsOf, featureGroups } from './part-groups.ts';
import { type Sizing, sizingOf } from './part-sizing.ts';
import { outlineOf } from './scene.ts';
import { type Break, onPaper, type View } from './view.ts';

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

/** Whether a box on paper lies on the wood, by its corners: no line of the part runs through it. */
export type OnWood = (box: Extent) => boolean;

/** Where the part's wood is on paper. */
export function onWood({ part, view }: Stage): OnWood {
  const { outline, holes } = outlineOf(part);
  const [wood, ...open] = [outline, ...holes].map((loop) => loop.map((point) => onPaper(view, point)));
  const polygon: Polygon = { outline: wood ?? [], holes: open };
  return ({ x0, y0, x1, y1 }) =>
    (
      [
        [x0, y0],
        [x1, y0],
        [x1, y1],
        [x0, y1],
      ] as const
    ).every((corner) => holds(polygon, corner));
}
