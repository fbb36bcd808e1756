import type { Point } from '../core/geometry/shapes.ts';
import type { Spot } from './mark.ts';

/** A stretch of the x axis drawn shorter: `from` to `to` in the model, `gap` mm on paper. */
export type Break = { readonly from: number; readonly to: number; readonly gap: number };

/**
 * How a plane of the model lies on paper: `origin` is where the model's (0, 0) would be drawn, `scale` is 10 for 1:10,
 * x to the right, y up. Only x may be broken.
 */
export type View = {
  readonly name: string;
  readonly scale: number;
  readonly origin: Spot;
  readonly breaks: readonly Break[];
};

function shortening(view: View, x: number): number {
  let less = 0;
  for (const cut of view.breaks) {
    const length = cut.to - cut.from;
    const share = Math.min(1, Math.max(0, (x - cut.from) / length));
    less += share * (length / view.scale - cut.gap);
  }
  return less;
}

/** Where x of the model is drawn, mm. */
export function paperX(view: View, x: number): number {
  return view.origin[0] + x / view.scale - shortening(view, x);
}

/** Where y of the model is drawn, mm. */
export function paperY(view: View, y: number): number {
  return view.origin[1] - y / view.scale;
}

export function onPaper(view: View, [x, y]: Point): Spot {
  return [paperX(view, x), paperY(view, y)];
}

export function movedView(view: View, [dx, dy]: Spot): View {
  return { ...view, origin: [view.origin[0] + dx, view.origin[1] + dy] };
}
