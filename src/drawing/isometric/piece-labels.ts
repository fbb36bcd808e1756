import { area, bounds, holds } from '../../core/geometry/polygon.ts';
import type { Point, Polygon } from '../../core/geometry/shapes.ts';
import { extentOf } from '../block.ts';
import { alsoTaken, boxAbout, firstFit, isApart, ledLabelMarks, linesOf, type Taken, taken } from '../labels.ts';
import type { Extent, Mark, Spot, TextMark } from '../mark.ts';
import { distance, nearestFirst } from '../near-spots.ts';
import { smallText, textWidth } from '../text.ts';

/** A piece's name, what is seen of it on paper, and where it is when nothing of it is seen. */
export type PieceLabel = { readonly text: string; readonly areas: readonly Polygon[]; readonly middle: Spot | null };

/** How many of a piece's areas are tried for a leader's end. */
const TRIED = 6;

/**
 * Every label on what is seen of its piece where it fits, else beside the picture's lines with a leader to it; a piece
 * that others hide is named as such, so that no arrow stands without a name.
 */
export function pieceLabels(labels: readonly PieceLabel[], drawn: readonly Mark[]): readonly Mark[] {
  const written: Mark[] = [];
  const within = grown(extentOf(drawn), 14);
  const waiting: PieceLabel[] = [];
  let crowd = taken({ lines: linesOf(drawn), boxes: [] });
  const write = (marks: readonly Mark[]) => {
    written.push(...marks);
    crowd = alsoTaken(crowd, marks);
  };
  for (const label of labels) {
    const inside = insideOf(label, crowd);
    if (inside === null) waiting.push(label);
    else write([inside]);
  }
  for (const label of waiting) write(besideOf(label, crowd, within));
  return written;
}

/** A label with a leader to the largest area that a leader gets to. */
function besideOf({ text, areas, middle }: PieceLabel, obstacles: Taken, within: Extent): readonly Mark[] {
  const hidden = areas.length === 0;
  const ends = hidden
    ? middle === null
      ? []
      : [middle]
    : bySize(areas)
        .slice(0, TRIED)
        .map(({ one }) => middleOf(one));
  for (const [x, y] of ends) {
    const box = { x0: x, y0: y, x1: x, y1: y };
    const led = ledLabelMarks({ text: hidden ? `${text}, hidden` : text, box }, obstacles, within);
    if (led.length > 0) return led;
  }
  return [];
}

function bySize(areas: readonly Polygon[]): readonly { readonly one: Polygon; readonly size: number }[] {
  return areas.map((one) => ({ one, size: area(one) })).sort((a, b) => b.size - a.size);
}

function insideOf({ text, areas }: PieceLabel, obstacles: Taken): TextMark | null {
  const wide = textWidth(text, smallText, 'bold');
  for (const { one, size } of bySize(areas)) {
    const { x0, x1 } = boxOf(one);
    // most areas are too small or too narrow for the words wherever they stand
    if (x1 - x0 < wide || size < wide * smallText) continue;
    const found = firstFit(text, spotsIn(one, wide), (box) => isWithin(box, one) && isApart(box, obstacles));
    if (found !== null) return found;
  }
  return null;
}

function isWithin({ x0, y0, x1, y1 }: Extent, polygon: Polygon): boolean {
  const corners: readonly Point[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  return corners.every((corner) => holds(polygon, corner));
}

/** Places in an area for the middle of words so wide, on a grid of 1.5 mm, those nearest its middle first. */
function* spotsIn(polygon: Polygon, wide: number): Iterable<Spot> {
  const { x0, y0, x1, y1 } = boxOf(polygon);
  const middle: Spot = [(x0 + x1) / 2, (y0 + y1) / 2];
  const far = (spot: Spot) => distance(spot, middle);
  const within = { x0: x0 + wide / 2, y0: y0 + smallText / 2, x1: x1 - wide / 2, y1: y1 - smallText / 2 };
  for (const spot of nearestFirst({ origin: [x0, y0], within, step: 1.5, about: boxAbout(middle, 0), far })) {
    if (holds(polygon, spot)) yield spot;
  }
}

function boxOf({ outline }: Polygon): Extent {
  const { low, high } = bounds(outline);
  return { x0: low[0], y0: low[1], x1: high[0], y1: high[1] };
}

/** A place inside an area: the middle of the widest stretch level with its half height. */
function middleOf({ outline, holes }: Polygon): Spot {
  const { low, high } = bounds(outline);
  const y = (low[1] + high[1]) / 2;
  const crossings = [outline, ...holes]
    .flatMap((loop) =>
      loop.flatMap(([ax, ay], i) => {
        const [bx, by] = loop[(i + 1) % loop.length] ?? [ax, ay];
        return ay > y === by > y ? [] : [ax + ((bx - ax) * (y - ay)) / (by - ay)];
      }),
    )
    .sort((a, b) => a - b);
  let best: readonly [number, number] = [crossings[0] ?? low[0], crossings[1] ?? high[0]];
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const [from, to] = [crossings[i] ?? 0, crossings[i + 1] ?? 0];
    if (to - from > best[1] - best[0]) best = [from, to];
  }
  return [(best[0] + best[1]) / 2, y];
}

function grown({ x0, y0, x1, y1 }: Extent, by: number): Extent {
  return { x0: x0 - by, y0: y0 - by, x1: x1 + by, y1: y1 + by };
}
