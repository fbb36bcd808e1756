import type { Part } from '../core/stock/part.ts';
import type { Block } from './block.ts';
import { type DetailRoom, detailRooms } from './detail-frame.ts';
import type { DrawingOptions, DrawingUnit } from './drawing.ts';
import { saidLength } from './figures.ts';
import { partTitle } from './list.ts';
import { scales, scaleText } from './paper.ts';
import { detailBlock } from './part-detail.ts';
import { boundsOf, featureGroups } from './part-groups.ts';
import { figuresIn, groupNotes, markNotes } from './part-notes.ts';
import { sizingOf } from './part-sizing.ts';
import type { PartViewAsk } from './part-stage.ts';
import { type PartView, partViewBlock } from './part-view.ts';
import { groupSentence } from './part-words.ts';
import { drawingArea, fitsSheet, onSheets } from './sheet.ts';
import type { Break } from './view.ts';

/** What is laid out for one part: its blocks in order, and the scale of the true shape. */
export type PartLayout = { readonly blocks: readonly Block[]; readonly scale: number; readonly desc: string };

/** A part's true shape, in one view or several, drawn at a scale. */
type Views = { readonly shapes: readonly PartView[]; readonly scale: number };

type Shown = { readonly scale: number; readonly breaks: readonly Break[] };

/** The whole part at a scale, or null when it doesn't fit the sheet or its figures crowd. */
function wholeAt(part: Part, { scale, breaks }: Shown, options: DrawingOptions): Views | null {
  const { length } = part.blank;
  const area = drawingArea(options.paper);
  const shortened = breaks.reduce((sum, cut) => sum + (cut.to - cut.from) / scale - cut.gap, 0);
  if (length / scale - shortened > area.x1 - area.x0 || part.blank.width / scale > area.y1 - area.y0) return null;
  const heading = `Seen on its face ${scaleText(scale)}`;
  const ask: PartViewAsk = { part, unit: options.unit, scale, breaks, from: 0, to: length, heading };
  const shape = partViewBlock(ask);
  return fitsSheet(shape, options.paper) ? { shapes: [shape], scale } : null;
}

/** Paper length that a stretch without features keeps on each side of its break, and the gap of the break, mm. */
const kept = 14;
const gap = 4;

/** Long stretches without any feature, shortened. */
function breaksAt(part: Part, scale: number): readonly Break[] {
  const stops = [
    0,
    part.blank.length,
    ...part.features.flatMap((feature) => {
      const { x0, x1 } = boundsOf(feature, part.blank);
      return x0 <= 0 && x1 >= part.blank.length ? [] : [x0, x1];
    }),
  ].toSorted((a, b) => a - b);
  return stops.flatMap((from, i): readonly Break[] => {
    const to = stops[i + 1] ?? from;
    const cut = { from: from + kept * scale, to: to - kept * scale, gap };
    return (cut.to - cut.from) / scale > 3 * gap ? [cut] : [];
  });
}

/** A strip too thin to read at the scale its length asks for is drawn larger, with its bare stretches shortened. */
const thin = 10;

function brokenView(part: Part, whole: Views, options: DrawingOptions): Views {
  if (part.blank.width / whole.scale >= thin) return whole;
  const spans = part.features.some((feature) => {
    const { x0, x1 } = boundsOf(feature, part.blank);
    return x1 - x0 > part.blank.length / 2;
  });
  if (spans) return whole;
  const larger = scales.filter((scale) => scale < whole.scale && part.blank.width / scale <= 3 * thin);
  for (const scale of larger) {
    const breaks = breaksAt(part, scale);
    const views = breaks.length === 0 ? null : wholeAt(part, { scale, breaks }, options);
    if (views !== null) return views;
  }
  return whole;
}

/** Where a part with very many features is parted into views: the same number of features in each. */
function stretches(part: Part, count: number): readonly (readonly [number, number])[] {
  const boxes = part.features.map((feature) => boundsOf(feature, part.blank)).toSorted((a, b) => a.x0 - b.x0);
  const cuts = Array.from({ length: count - 1 }, (_, i) => {
    const index = Math.floor(((i + 1) * boxes.length) / count);
    const next = boxes[index]?.x0 ?? part.blank.length;
    const before = boxes[index - 1];
    return ((before === undefined ? 0 : Math.min(before.x1, next)) + next) / 2;
  });
  const ends = [0, ...new Set(cuts.filter((cut) => cut > 0 && cut < part.blank.length)), part.blank.length];
  return ends.slice(1).map((to, i) => [ends[i] ?? 0, to] as const);
}

function partedAt(part: Part, scale: number, options: DrawingOptions & { readonly count: number }): Views | null {
  const pieces = stretches(part, options.count);
  const area = drawingArea(options.paper);
  const longest = Math.max(...pieces.map(([from, to]) => to - from));
  if (longest / scale > area.x1 - area.x0 || part.blank.width / scale > area.y1 - area.y0) return null;
  const asks = pieces.map(([from, to], i): PartViewAsk => {
    const heading = `Seen on its face ${scaleText(scale)}, piece ${i + 1} of ${pieces.length}, from the left end`;
    return { part, unit: options.unit, scale, breaks: [], from, to, heading };
  });
  const shapes = asks.map(partViewBlock);
  return shapes.every((shape) => fitsSheet(shape, options.paper)) ? { shapes, scale } : null;
}

function viewsOf(part: Part, options: DrawingOptions): Views {
  for (const scale of scales) {
    const whole = wholeAt(part, { scale, breaks: [] }, options);
    if (whole !== null) return brokenView(part, whole, options);
  }
  for (const count of [2, 3, 4, 6, 8, 12, 16, 24]) {
    for (const scale of scales) {
      const parted = partedAt(part, scale, { ...options, count });
      if (parted !== null) return parted;
    }
  }
  const base = { part, unit: options.unit, scale: 100, breaks: [], heading: 'Seen on its face' };
  return { shapes: [partViewBlock({ ...base, from: 0, to: part.blank.length })], scale: 100 };
}

/** What the drawing shows, in words. */
export function partWords(part: Part, unit: DrawingUnit): string {
  const { length, width, thickness } = part.blank;
  const size = `${saidLength(length, unit)} long, ${saidLength(width, unit)} wide and ${saidLength(thickness, unit)} thick`;
  const pieces = part.places.length === 1 ? 'One piece' : `${part.places.length} pieces`;
  const groups = featureGroups(part).map((group) => groupSentence(group, part, unit));
  const plain = groups.length === 0 ? ['It has no machining.'] : groups;
  const later = part.cutAfterMeasuring ? ['Cut it after measuring the sheet.'] : [];
  return [`${partTitle(part)}: ${size}.`, `${pieces} of ${part.stock}.`, ...plain, ...later].join(' ');
}

/** Everything on the part's sheets with its details in a room, and how many sheets that takes. */
function withDetails(part: Part, { views, room, screws, more }: Filled, options: DrawingOptions) {
  const { unit } = options;
  const groups = featureGroups(part);
  const details = groups
    .map((group) => detailBlock({ part, sizing: sizingOf(group, part.blank, views.scale), unit, room }))
    .filter((block) => block !== null);
  const drawn = figuresIn(details.flatMap(({ dimensions }) => dimensions));
  const features = groupNotes(part, groups, { unit, drawn });
  const written = new Set(views.shapes.flatMap((shape) => shape.written));
  const notes = [...features, ...screws.notes, ...markNotes(part, { unit, written }), ...more];
  const blocks = [...views.shapes, ...screws.views, ...details, ...notes];
  return { blocks, sheets: onSheets(blocks, options.paper).length };
}

type Filled = {
  readonly views: Views;
  readonly room: DetailRoom;
  readonly screws: Screws;
  readonly more: readonly Block[];
};

type Screws = { readonly views: readonly Block[]; readonly notes: readonly Block[] };

/** What a part's sheets carry besides the part itself: its screws, drawn no larger than a scale, and notes. */
export type Besides = { readonly screwsAt: (scale: number) => Screws; readonly notes: readonly Block[] };

/** The screws at the scale of the part and at the next smaller one; a part without any once. */
function screwsFrom(screwsAt: Besides['screwsAt'], scale: number): readonly Screws[] {
  const own = screwsAt(scale);
  const next = scales.find((one) => one > scale);
  return own.views.length === 0 || next === undefined ? [own] : [own, screwsAt(next)];
}

/**
 * The part's true shape with its figures, its enlarged details, its features in words and the marks to write on it, and
 * what comes besides; details and screws are smaller where that saves a sheet.
 */
export function partLayout(part: Part, options: DrawingOptions, { screwsAt, notes: more }: Besides): PartLayout {
  const views = viewsOf(part, options);
  const [first = { views: [], notes: [] }, ...smaller] = screwsFrom(screwsAt, views.scale);
  let best = withDetails(part, { views, room: detailRooms[0], screws: first, more }, options);
  const rooms = detailRooms.slice(1).map((room) => ({ room, screws: first }));
  for (const one of [...rooms, ...smaller.map((screws) => ({ room: detailRooms[0], screws }))]) {
    if (best.sheets === 1) break;
    const other = withDetails(part, { views, more, ...one }, options);
    if (other.sheets < best.sheets) best = other;
  }
  return { blocks: best.blocks, scale: views.scale, desc: partWords(part, options.unit) };
}
