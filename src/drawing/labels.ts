import { markExtent } from './block.ts';
import { type LinesNear, linesNear, type Straight } from './lines-near.ts';
import type { Extent, Mark, Spot, TextMark } from './mark.ts';
import { distance, nearestFirst } from './near-spots.ts';
import { lettering, smallText, textBox, textWidth } from './text.ts';

/** What a label may not touch: straight lines and other boxes on paper. */
export type Obstacles = { readonly lines: readonly Straight[]; readonly boxes: readonly Extent[] };

/** The same while labels are being placed: the lines that were there can be asked by place, those since are few. */
export type Taken = Obstacles & { readonly near: LinesNear };

/** Obstacles made ready for many labels. */
export function taken({ lines, boxes }: Obstacles): Taken {
  return { near: linesNear(lines), lines: [], boxes };
}

/** Labels and leaders placed since are obstacles as well. */
export function alsoTaken({ near, lines, boxes }: Taken, marks: readonly Mark[]): Taken {
  return { near, lines: [...lines, ...linesOf(marks)], boxes: [...boxes, ...boxesOf(marks)] };
}

/** The straight lines of marks that a label must keep off. */
export function linesOf(marks: readonly Mark[]): readonly Straight[] {
  return marks.flatMap((mark): readonly Straight[] => {
    if (mark.kind === 'line') return [[mark.from, mark.to]];
    if (mark.kind === 'polyline') return mark.points.slice(1).map((to, i): Straight => [mark.points[i] ?? to, to]);
    if (mark.kind === 'polygon' && mark.pen !== 'none') {
      return mark.rings.flatMap((ring) => ring.map((a, i): Straight => [a, ring[(i + 1) % ring.length] ?? a]));
    }
    return [];
  });
}

export function boxesOf(marks: readonly Mark[]): readonly Extent[] {
  return marks.filter((mark) => mark.kind === 'text' || mark.kind === 'circle').map(markExtent);
}

export function overlap(a: Extent, b: Extent, by = 0): boolean {
  return a.x0 < b.x1 - by && b.x0 < a.x1 - by && a.y0 < b.y1 - by && b.y0 < a.y1 - by;
}

/** The box round several boxes. */
export function around(boxes: readonly Extent[]): Extent {
  return {
    x0: Math.min(...boxes.map(({ x0 }) => x0)),
    y0: Math.min(...boxes.map(({ y0 }) => y0)),
    x1: Math.max(...boxes.map(({ x1 }) => x1)),
    y1: Math.max(...boxes.map(({ y1 }) => y1)),
  };
}

/** Whether a straight line passes through a box (Liang and Barsky's clipping, 1984). */
export function crosses([[ax, ay], [bx, by]]: Straight, box: Extent): boolean {
  // Most lines of a drawing are far from the box; the cheap test first.
  if ((ax <= box.x0 && bx <= box.x0) || (ax >= box.x1 && bx >= box.x1)) return false;
  if ((ay <= box.y0 && by <= box.y0) || (ay >= box.y1 && by >= box.y1)) return false;
  const [fromX, toX] = sharesBetween(ax, bx, box.x0, box.x1);
  const [fromY, toY] = sharesBetween(ay, by, box.y0, box.y1);
  return Math.max(0, fromX, fromY) < Math.min(1, toX, toY);
}

/** Between which shares of its way a value from `a` to `b` lies between two bounds. */
function sharesBetween(a: number, b: number, low: number, high: number): readonly [number, number] {
  if (a === b) return a > low && a < high ? [0, 1] : [1, 0];
  const [atLow, atHigh] = [(low - a) / (b - a), (high - a) / (b - a)];
  return atLow < atHigh ? [atLow, atHigh] : [atHigh, atLow];
}

/** The box round a spot, `by` to each side. */
export function boxAbout([x, y]: Spot, by: number): Extent {
  return { x0: x - by, x1: x + by, y0: y - by, y1: y + by };
}

export function padded(box: Extent, by: number): Extent {
  return { x0: box.x0 - by, y0: box.y0 - by, x1: box.x1 + by, y1: box.y1 + by };
}

export function isFree(mark: TextMark, obstacles: Taken): boolean {
  return isApart(textBox(mark), obstacles);
}

/** Whether a label's box stands off all that is taken. */
export function isApart(box: Extent, obstacles: Taken): boolean {
  return isClear(padded(box, 0.4), obstacles);
}

/** Whether nothing that is taken reaches into a box. */
export function isClear(box: Extent, { near, lines, boxes }: Taken): boolean {
  const isCrossing = (line: Straight) => crosses(line, box);
  return !boxes.some((other) => overlap(box, other)) && !lines.some(isCrossing) && !near(box, isCrossing);
}

function centred(text: string, [x, y]: Spot): TextMark {
  return lettering(text, [x, y + smallText / 2], { role: 'label', anchor: 'middle', weight: 'bold' });
}

/** A label in the middle of the first of the places where its box will do; null when there is none. */
export function firstFit(text: string, spots: Iterable<Spot>, will: (box: Extent) => boolean): TextMark | null {
  const width = textWidth(text, smallText, 'bold');
  for (const spot of spots) {
    const mark = centred(text, spot);
    if (will(textBox(mark, width))) return mark;
  }
  return null;
}

/** Places on and beside a box, its middle first. */
function candidates(text: string, box: Extent): readonly Spot[] {
  const shares = [0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9, 0.05, 0.95];
  const [w, h] = [box.x1 - box.x0, box.y1 - box.y0];
  const aside = textWidth(text, smallText, 'bold') / 2 + 1.2;
  const above = smallText / 2 + 1.5;
  const wide = w >= h;
  const lanes = Math.min(w, h) > 14 ? [0.5, 0.3, 0.7] : [0.5];
  const inside = lanes.flatMap((lane) =>
    shares.map(
      (share): Spot => (wide ? [box.x0 + w * share, box.y0 + h * lane] : [box.x0 + w * lane, box.y0 + h * share]),
    ),
  );
  const outside = shares.flatMap((share): readonly Spot[] =>
    wide
      ? [
          [box.x0 + w * share, box.y0 - above],
          [box.x0 + w * share, box.y1 + above],
        ]
      : [
          [box.x1 + aside, box.y0 + h * share],
          [box.x0 - aside, box.y0 + h * share],
        ],
  );
  return [...inside, ...outside];
}

/** Places on a grid round a box, the nearest first; a label there needs a leader. */
function farther(box: Extent, within: Extent): Iterable<Spot> {
  const [x, y] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
  const far = (spot: Spot) => distance(spot, nearestOn(box, spot)) + 0.02 * distance(spot, [x, y]);
  return nearestFirst({ origin: [within.x0, within.y0], within, step: 4, about: box, far });
}

/** The nearest place on a piece's middle line, its ends left out. */
function nearestOn({ x0, x1, y0, y1 }: Extent, [x, y]: Spot): Spot {
  const between = (value: number, low: number, high: number) =>
    Math.min(high - 0.1 * (high - low), Math.max(low + 0.1 * (high - low), value));
  return x1 - x0 >= y1 - y0 ? [between(x, x0, x1), (y0 + y1) / 2] : [(x0 + x1) / 2, between(y, y0, y1)];
}

/** From the label's edge to the piece. */
function leaderFrom(text: Extent, box: Extent): Straight {
  const middle: Spot = [(text.x0 + text.x1) / 2, (text.y0 + text.y1) / 2];
  const target = nearestOn(box, middle);
  const [dx, dy] = [target[0] - middle[0], target[1] - middle[1]];
  const reach = Math.min(
    dx === 0 ? 1 : (text.x1 - text.x0) / 2 / Math.abs(dx),
    dy === 0 ? 1 : (text.y1 - text.y0) / 2 / Math.abs(dy),
    1,
  );
  return [[middle[0] + dx * reach, middle[1] + dy * reach], target];
}

/** Whether a leader, its dot included, runs clear of boxes. */
function isOpen([from, to]: Straight, boxes: readonly Extent[]): boolean {
  const dot = padded({ x0: to[0], x1: to[0], y0: to[1], y1: to[1] }, 0.6);
  return !boxes.some((box) => crosses([from, to], box) || overlap(dot, box));
}

/** `apart` is the room kept free on both sides of words that would read on into others beside them, mm. */
export type Labelled = { readonly text: string; readonly box: Extent; readonly apart?: number };

/** Whether a label's box stands off all that is taken, and no words stand too near beside it. */
function isAlone(own: Extent, { apart = 0 }: Labelled, obstacles: Taken): boolean {
  const wide = { ...own, x0: own.x0 - apart, x1: own.x1 + apart };
  return isApart(own, obstacles) && !obstacles.boxes.some((other) => overlap(wide, other));
}

/**
 * A label on or beside what it names, clear of all lines and labels; else with a leader in the first of the rooms that
 * has a place; none when no room has.
 */
export function labelMarks(label: Labelled, obstacles: Taken, rooms: readonly Extent[]): readonly Mark[] {
  const { text, box } = label;
  const near = firstFit(text, candidates(text, box), (own) => isAlone(own, label, obstacles));
  if (near !== null) return [near];
  for (const room of rooms) {
    const led = ledLabelMarks(label, obstacles, room);
    if (led.length > 0) return led;
  }
  return [];
}

/** A label in the nearest free room, with a leader to what it names; none when there is no room. */
export function ledLabelMarks(label: Labelled, obstacles: Taken, within: Extent): readonly Mark[] {
  const { text, box } = label;
  const away = firstFit(text, farther(box, within), (own) => {
    if (!isAlone(own, label, obstacles)) return false;
    const leader = leaderFrom(own, box);
    return isOpen(leader, obstacles.boxes) && isOpen(leader, [own]);
  });
  if (away === null) return [];
  const [from, to] = leaderFrom(textBox(away), box);
  return [
    away,
    { kind: 'line', from, to, pen: 'dimension', role: 'leader' },
    { kind: 'circle', centre: to, radius: 0.45, fill: 'ink', pen: 'dimension', role: 'leader' },
  ];
}

/** Labels placed one after the other, each an obstacle to the next. */
export function labelAll(labels: readonly Labelled[], obstacles: Obstacles, rooms: readonly Extent[]): readonly Mark[] {
  const marks: Mark[] = [];
  let crowd = taken(obstacles);
  for (const label of labels) {
    const placed = labelMarks(label, crowd, rooms);
    marks.push(...placed);
    crowd = alsoTaken(crowd, placed);
  }
  return marks;
}
