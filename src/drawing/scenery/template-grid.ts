import { bounds } from '../../core/geometry/polygon.ts';
import type { Point, Polygon } from '../../core/geometry/shapes.ts';
import { evenStops, offsets, sharpCorners } from '../../core/scenery/offsets.ts';
import type { DrawingUnit } from '../drawing.ts';
import { lengthText } from '../figures.ts';
import type { Mark } from '../mark.ts';
import type { Note } from '../notes.ts';
import { lettering, smallText, textWidth } from '../text.ts';
import { onPaper, type View } from '../view.ts';

/** Stations a quarter, a half and a whole of this apart: 100 mm, or 4 in. */
const PITCH: Readonly<Record<DrawingUnit, number>> = { mm: 100, in: 4 * 25.4 };

/** How far apart a template's stations are: so near that it has at least five of them. mm. */
export function stationPitch(shape: Polygon, unit: DrawingUnit): number {
  const { low, high } = bounds(shape.outline);
  const longest = Math.max(high[0] - low[0], high[1] - low[1]);
  const share = [1, 0.5].find((one) => longest >= 4 * one * PITCH[unit]) ?? 0.25;
  return share * PITCH[unit];
}

type Gridded = { readonly shape: Polygon; readonly unit: DrawingUnit };

/** A light grid over a template from its lower left corner, each line with its figure above or to the right. */
export function gridMarks(view: View, { shape, unit }: Gridded): readonly Mark[] {
  const { high } = bounds(shape.outline);
  const pitch = stationPitch(shape, unit);
  const [xs, ys] = [even(high[0], pitch), even(high[1], pitch)];
  const lines = [
    ...xs.map((x) => gridLine(view, [x, 0], [x, high[1]])),
    ...ys.map((y) => gridLine(view, [0, y], [high[0], y])),
  ];
  const [right, top] = onPaper(view, high);
  const along = xs.map((x) => lettering(lengthText(x, unit), [onPaper(view, [x, 0])[0], top - 1.5], middle));
  const upright = ys.map((y) =>
    lettering(lengthText(y, unit), [right + 1.5, onPaper(view, [0, y])[1] + smallText / 2], { role: 'label' }),
  );
  return [...lines, ...along.filter(clearOf(along)), ...upright];
}

const middle = { role: 'label', anchor: 'middle' } as const;

function clearOf(all: readonly { readonly at: readonly [number, number]; readonly text: string }[]) {
  return ({ at, text }: { readonly at: readonly [number, number]; readonly text: string }, i: number): boolean => {
    const before = all[i - 1];
    return before === undefined || at[0] - before.at[0] > textWidth(text, smallText) + 1;
  };
}

function even(length: number, pitch: number): readonly number[] {
  return evenStops(length, pitch).slice(0, -1);
}

function gridLine(view: View, from: Point, to: Point): Mark {
  return { kind: 'line', from: onPaper(view, from), to: onPaper(view, to), pen: 'hatch', role: 'hatch' };
}

/** A template's offsets in words, station by station: where the foam begins and ends across it. */
export function offsetNotes({ shape, unit }: Gridded): readonly Note[] {
  return offsets(shape, stationPitch(shape, unit)).flatMap(({ at, crossings }) =>
    inLines(lengthText(at, unit), spansOf(crossings.map((y) => lengthText(y, unit))), ', '),
  );
}

/** Two phrases to a line, so that no figure is broken at a line's end. */
function inLines(letter: string, phrases: readonly string[], between: string): readonly Note[] {
  return Array.from({ length: Math.ceil(phrases.length / 2) }, (_, i) => ({
    letter: i === 0 ? letter : '',
    words: phrases.slice(2 * i, 2 * i + 2).join(between),
    dimensions: [],
  }));
}

/** Crossings in pairs; a pair that prints alike is a touch. */
function spansOf(figures: readonly string[]): readonly string[] {
  return figures.flatMap((from, i) => {
    const to = figures[i + 1];
    if (i % 2 === 1) return [];
    return to === undefined || to === from ? [`touches ${from}`] : [`${from} to ${to}`];
  });
}

/** A template's sharp corners and its lowest and highest places, which no station need meet. */
export function cornerNotes({ shape, unit }: Gridded): readonly Note[] {
  const spot = ([x, y]: Point) => `${lengthText(x, unit)} along ${lengthText(y, unit)} up`;
  const { low, high } = bounds(shape.outline);
  const place = (y: number): Point => shape.outline.find((point) => point[1] === y) ?? [0, y];
  const extremes = [
    { letter: 'lowest', words: spot(place(low[1])), dimensions: [] },
    { letter: 'highest', words: spot(place(high[1])), dimensions: [] },
  ];
  const corners = [...new Set(sharpCorners(shape).map(spot))];
  return [...extremes, ...inLines('corners', corners, '; ')];
}
