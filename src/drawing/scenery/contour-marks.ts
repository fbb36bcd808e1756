import type { Point } from '../../core/geometry/shapes.ts';
import type { LevelLines } from '../../core/scenery/model.ts';
import type { DrawingUnit } from '../drawing.ts';
import { lengthText } from '../figures.ts';
import { overlap } from '../labels.ts';
import type { Extent, Mark, TextMark } from '../mark.ts';
import type { PenName } from '../pens.ts';
import { lettering, smallText, textBox } from '../text.ts';
import { onPaper, type View } from '../view.ts';

/** Contours as lit from the upper left: wide where the ground falls away from the light, narrow towards it. */
export function litContours(view: View, lines: readonly LevelLines[]): readonly Mark[] {
  return lines.flatMap(({ lines: contours }) =>
    contours.flatMap(({ points, closed }) =>
      runs(closed ? [...points, ...points.slice(0, 1)] : points).map((run) => runMark(view, run)),
    ),
  );
}

type Run = { readonly pen: PenName; readonly points: readonly Point[] };

/** Stretches of a line of one width. */
function runs(points: readonly Point[]): readonly Run[] {
  const found: { pen: PenName; points: Point[] }[] = [];
  points.slice(1).forEach((to, i) => {
    const from = points[i] ?? to;
    const pen = penFor(from, to);
    const last = found[found.length - 1];
    if (last?.pen === pen) last.points.push(to);
    else found.push({ pen, points: [from, to] });
  });
  return found;
}

/** Higher ground lies to the left of a contour, so the slope faces right of its way. */
function penFor([ax, ay]: Point, [bx, by]: Point): PenName {
  const size = Math.hypot(bx - ax, by - ay) || 1;
  const facing: Point = [(by - ay) / size, -(bx - ax) / size];
  const light = -facing[0] * Math.SQRT1_2 + facing[1] * Math.SQRT1_2;
  if (light > 0.4) return 'dimension';
  return light < -0.4 ? 'edge' : 'feature';
}

function runMark(view: View, { pen, points }: Run): Mark {
  return { kind: 'polyline', points: points.map((point) => onPaper(view, point)), pen, role: 'feature' };
}

/** Heights on the lines where they have room, on a patch of paper so that the line stops for them. */
export function heightLabels(
  view: View,
  lines: readonly LevelLines[],
  { unit, taken }: { readonly unit: DrawingUnit; readonly taken: readonly Extent[] },
): readonly Mark[] {
  const boxes: Extent[] = [...taken];
  return [...lines].reverse().flatMap(({ level, lines: contours }) =>
    contours.flatMap(({ points }): readonly Mark[] => {
      const spot = candidates(points)
        .map((point) => centred(lengthText(level, unit), onPaper(view, point)))
        .find((mark) => !boxes.some((box) => overlap(box, apart(textBox(mark)))));
      if (spot === undefined) return [];
      boxes.push(textBox(spot));
      return [patch(textBox(spot)), spot];
    }),
  );
}

/** Labels keep this far from each other, mm on paper, so that fractions of an inch are read apart. */
const APART = 1.2;

function apart({ x0, x1, y0, y1 }: Extent): Extent {
  return { x0: x0 - APART, x1: x1 + APART, y0: y0 - APART / 2, y1: y1 + APART / 2 };
}

/** Points of a line from its lowest on the page, thinned. */
function candidates(points: readonly Point[]): readonly Point[] {
  const step = Math.max(1, Math.floor(points.length / 24));
  return points.filter((_point, i) => i % step === 0).toSorted((a, b) => a[1] - b[1]);
}

function centred(text: string, [x, y]: readonly [number, number]): TextMark {
  return lettering(text, [x, y + smallText / 2], { role: 'label', anchor: 'middle' });
}

function patch({ x0, x1, y0, y1 }: Extent): Mark {
  const ring = [
    [x0 - 0.3, y0],
    [x1 + 0.3, y0],
    [x1 + 0.3, y1],
    [x0 - 0.3, y1],
  ] as const;
  return { kind: 'polygon', rings: [ring], fill: 'paper', pen: 'none', role: 'break' };
}
