import type { Point } from '../../core/geometry/shapes.ts';
import { pointsOn } from '../../core/track/element.ts';
import type { LaidLine, TrackModel } from '../../core/track/lay.ts';
import type { Block } from '../block.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingOptions } from '../drawing.ts';
import type { Mark, Spot } from '../mark.ts';
import type { PenName } from '../pens.ts';
import { fitsSheet, possibleScales } from '../sheet.ts';
import { onPaper, type View } from '../view.ts';

/** What a drawing of the track is made from. */
export type TrackAsk = {
  readonly book: DrawingBook;
  readonly track: TrackModel;
  readonly options: DrawingOptions;
  readonly scale: number;
};

/** How far a drawn chord may stand off its curve on paper, mm. */
const FLAT = 0.03;

/** Points of a line's middle, close enough together for a scale. */
export function linePoints({ elements }: Pick<LaidLine, 'elements'>, scale: number): readonly Point[] {
  return elements.flatMap((element, i) => {
    const points = pointsOn(element, { within: FLAT * scale, apart: 1e6 }).map(({ point }) => point);
    return i === 0 ? points : points.slice(1);
  });
}

export function pathMark(
  view: View,
  points: readonly Point[],
  style: { readonly pen: PenName; readonly role: Mark['role'] },
): Mark {
  return { kind: 'polyline', points: points.map((point) => onPaper(view, point)), ...style };
}

/** A short line square across a heading, `half` mm of paper to each side. */
export function tick(
  view: View,
  at: { readonly x: number; readonly y: number; readonly heading: number },
  half: number,
): Mark {
  const [x, y] = onPaper(view, [at.x, at.y]);
  // y points down on paper
  const [nx, ny] = [Math.sin(at.heading) * half, Math.cos(at.heading) * half];
  return { kind: 'line', from: [x - nx, y - ny], to: [x + nx, y + ny], pen: 'feature', role: 'symbol' };
}

/** A small hollow triangle that points out of the end of a line where nothing follows. */
export function openEnd(view: View, at: { readonly x: number; readonly y: number; readonly heading: number }): Mark {
  const [x, y] = onPaper(view, [at.x, at.y]);
  const [ux, uy] = [Math.cos(at.heading), -Math.sin(at.heading)];
  const ring: readonly Spot[] = [
    [x - uy * 1.3, y + ux * 1.3],
    [x + ux * 2.4, y + uy * 2.4],
    [x + uy * 1.3, y - ux * 1.3],
  ];
  return { kind: 'polygon', rings: [ring], fill: 'paper', pen: 'feature', role: 'symbol' };
}

/** A block before and after its labels, which take the time. */
export type Drafted = { readonly plain: Block; readonly labelled: () => Block };

/** The largest scale whose block fits the paper, first without its labels and then with them; nothing is drafted where its own `size` (mm) is too large. */
export function largestFitting(
  draft: (scale: number) => Drafted,
  { paper }: DrawingOptions,
  size: { readonly width: number; readonly height: number },
): { readonly block: Block; readonly scale: number } {
  for (const scale of possibleScales(size, paper)) {
    const { plain, labelled } = draft(scale);
    if (!fitsSheet(plain, paper)) continue;
    const block = labelled();
    if (fitsSheet(block, paper)) return { block, scale };
  }
  return { block: draft(100).labelled(), scale: 100 };
}
