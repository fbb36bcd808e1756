import { difference, intersection } from '../core/geometry/booleans.ts';
import { rectangle } from '../core/geometry/polygon.ts';
import type { Point, Polygon } from '../core/geometry/shapes.ts';
import type { LineMark, Mark, Spot } from './mark.ts';
import type { FillName, PenName } from './pens.ts';
import { onPaper, paperX, paperY, type View } from './view.ts';

/** A rectangle of the model's plane. */
export type Window = { readonly x0: number; readonly x1: number; readonly y0: number; readonly y1: number };

/** Consecutive pairs of a closed loop. */
export function edgesOf(loop: readonly Point[]): readonly (readonly [Point, Point])[] {
  return loop.map((point, i) => [point, loop[(i + 1) % loop.length] ?? point]);
}

/** The filled area and its edges as a mark. */
export function polygonMark(view: View, polygon: Polygon, style: { pen: PenName; fill: FillName }): Mark {
  const rings = [polygon.outline, ...polygon.holes].map((loop) => loop.map((point) => onPaper(view, point)));
  return { kind: 'polygon', rings, role: 'outline', ...style };
}

export function modelLine(
  view: View,
  [from, to]: readonly [Point, Point],
  style: Pick<LineMark, 'pen' | 'role'>,
): LineMark {
  return { kind: 'line', from: onPaper(view, from), to: onPaper(view, to), ...style };
}

/** A narrow line with a zigzag in its middle across a part that goes on (ISO 128-2, line 01.1 with zigzag). */
export function zigzag(from: Spot, to: Spot): Mark {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const size = Math.hypot(dx, dy) || 1;
  const [ux, uy] = [dx / size, dy / size];
  const reach = Math.min(1.2, size / 6);
  const at = (along: number, across: number): Spot => [
    (from[0] + to[0]) / 2 + ux * along - uy * across,
    (from[1] + to[1]) / 2 + uy * along + ux * across,
  ];
  const points: readonly Spot[] = [from, at(-reach, 0), at(-reach / 3, reach), at(reach / 3, -reach), at(reach, 0), to];
  return { kind: 'polyline', points, pen: 'break', role: 'break' };
}

/** What of a polygon lies in a window; its holes stay holes. */
export function within(polygon: Polygon, { x0, x1, y0, y1 }: Window): readonly Polygon[] {
  const pieces = intersection([polygon.outline], [rectangle([x0, y0], [x1, y1])]);
  return pieces.flatMap((piece) => difference([piece.outline], [...piece.holes, ...polygon.holes]));
}

/** A part that goes on beyond a window: filled, its own edges drawn, the window's sides as break lines. */
export function clippedOutline(
  view: View,
  polygon: Polygon,
  sides: { window: Window; open: readonly ('x0' | 'x1' | 'y0' | 'y1')[] },
): readonly Mark[] {
  const isOpen = ([ax, ay]: Point, [bx, by]: Point) =>
    sides.open.some((side) => {
      const at = sides.window[side];
      return side.startsWith('x')
        ? Math.abs(ax - at) < 1e-6 && Math.abs(bx - at) < 1e-6
        : Math.abs(ay - at) < 1e-6 && Math.abs(by - at) < 1e-6;
    });
  const fill = polygonMark(view, polygon, { pen: 'none', fill: 'wood' });
  const edges = [polygon.outline, ...polygon.holes].flatMap(edgesOf).map(([a, b]): Mark => {
    if (isOpen(a, b)) return zigzag(onPaper(view, a), onPaper(view, b));
    return modelLine(view, [a, b], { pen: 'edge', role: 'outline' });
  });
  return [fill, ...edges];
}

/** Covers a shortened stretch with paper between two zigzag lines. */
export function breakMarks(view: View, low: number, high: number): readonly Mark[] {
  return view.breaks.flatMap((cut): readonly Mark[] => {
    const [x0, x1] = [paperX(view, cut.from), paperX(view, cut.to)];
    const [y0, y1] = [paperY(view, high) - 1.5, paperY(view, low) + 1.5];
    const ring: readonly Spot[] = [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ];
    return [
      { kind: 'polygon', rings: [ring], fill: 'paper', pen: 'none', role: 'break' },
      zigzag([x0, y0], [x0, y1]),
      zigzag([x1, y0], [x1, y1]),
    ];
  });
}
