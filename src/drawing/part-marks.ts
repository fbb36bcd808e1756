import type { Point } from '../core/geometry/shapes.ts';
import type { Blank, Feature } from '../core/stock/part.ts';
import type { Mark } from './mark.ts';
import { edgesOf, modelLine, type Window } from './outline.ts';
import { boundsOf, isBored, isPatch, isPocket } from './part-groups.ts';
import type { PenName } from './pens.ts';
import { onPaper, type View } from './view.ts';

type Shape = { readonly blank: Blank };

type Trim = Extract<Feature, { readonly kind: 'trim' }>;

function clampedEdge([a, b]: readonly [Point, Point], window: Window): readonly [Point, Point] {
  const clamp = ([x, y]: Point): Point => [
    Math.min(window.x1, Math.max(window.x0, x)),
    Math.min(window.y1, Math.max(window.y0, y)),
  ];
  return [clamp(a), clamp(b)];
}

function onBlankEdge([[ax, ay], [bx, by]]: readonly [Point, Point], { blank }: Shape): boolean {
  const on = (a: number, b: number, at: number) => Math.abs(a - at) < 1e-6 && Math.abs(b - at) < 1e-6;
  return on(ax, bx, 0) || on(ax, bx, blank.length) || on(ay, by, 0) || on(ay, by, blank.width);
}

function patchMarks(view: View, feature: Feature, sheet: Shape & { readonly window: Window }): readonly Mark[] {
  const { x0, x1, y0, y1 } = boundsOf(feature, sheet.blank);
  const hidden = isPocket(feature) && feature.side === 'back';
  const style = hidden ? ({ pen: 'hidden', role: 'hidden' } as const) : ({ pen: 'feature', role: 'feature' } as const);
  return edgesOf([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ])
    .filter((edge) => !onBlankEdge(edge, sheet))
    .map((edge) => clampedEdge(edge, sheet.window))
    .filter(([[ax, ay], [bx, by]]) => ax !== bx || ay !== by)
    .map((edge) => modelLine(view, edge, style));
}

/** Centre lines of a bored hole, reaching 2 mm beyond it on paper (ISO 128-2, line 04.1). */
function boredMarks(view: View, feature: Extract<Feature, { kind: 'hole' | 'counterbore' }>): readonly Mark[] {
  const [x, y] = onPaper(view, feature.at);
  const radius = feature.diameter / 2 / view.scale;
  const reach = radius + 2;
  const hidden = feature.side === 'back' && feature.depth !== 'through';
  const pen: PenName = hidden ? 'hidden' : 'feature';
  return [
    { kind: 'circle', centre: [x, y], radius, fill: 'none', pen, role: hidden ? 'hidden' : 'feature' },
    { kind: 'line', from: [x - reach, y], to: [x + reach, y], pen: 'centre', role: 'centre' },
    { kind: 'line', from: [x, y - reach], to: [x, y + reach], pen: 'centre', role: 'centre' },
  ];
}

/** The blank's edge that is trimmed off after machining: a narrow line with two dots. */
function trimMarks(
  view: View,
  { edge, by }: Trim,
  { blank, window }: Shape & { readonly window: Window },
): readonly Mark[] {
  const { length, width } = blank;
  const [x0, x1] = [edge === 'right' ? length - by : 0, edge === 'left' ? by : length];
  const [y0, y1] = [edge === 'top' ? width - by : 0, edge === 'bottom' ? by : width];
  return edgesOf([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ])
    .map((side) => clampedEdge(side, window))
    .filter(([[ax, ay], [bx, by]]) => ax !== bx || ay !== by)
    .filter((side) => onBlankEdge(side, { blank }))
    .map((side) => modelLine(view, side, { pen: 'phantom', role: 'feature' }));
}

/** The edge lines a feature adds to the true shape: pockets, holes, trims and mitres; what goes through is in the outline. */
export function featureMarks(
  view: View,
  feature: Feature,
  sheet: Shape & { readonly window: Window },
): readonly Mark[] {
  if (isBored(feature)) return boredMarks(view, feature);
  if (isPatch(feature) && isPocket(feature)) return patchMarks(view, feature, sheet);
  if (feature.kind === 'trim') return trimMarks(view, feature, sheet);
  if (feature.kind === 'mitre') {
    const inset = sheet.blank.thickness / Math.tan(feature.angle);
    const { length, width } = sheet.blank;
    const at = { left: inset, right: length - inset, bottom: inset, top: width - inset }[feature.edge];
    const upright = feature.edge === 'left' || feature.edge === 'right';
    const edge = upright
      ? ([
          [at, 0],
          [at, width],
        ] as const)
      : ([
          [0, at],
          [length, at],
        ] as const);
    const style =
      feature.long === 'face'
        ? ({ pen: 'hidden', role: 'hidden' } as const)
        : ({ pen: 'feature', role: 'feature' } as const);
    return [modelLine(view, clampedEdge(edge, sheet.window), style)];
  }
  return [];
}
