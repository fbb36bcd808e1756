import { bounds } from '../core/geometry/polygon.ts';
import type { Point } from '../core/geometry/shapes.ts';
import { placed } from '../core/geometry/vector.ts';
import type { Joint, Part } from '../core/stock/part.ts';
import { chainBlock, headedBlock, labelled } from './bench-view.ts';
import { type Block, joined } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { DrawingOptions, DrawingUnit } from './drawing.ts';
import { fitText } from './figures.ts';
import { hatchMarks } from './hatch.ts';
import { clippedOutline, type Window, within } from './outline.ts';
import { scales, scaleText } from './paper.ts';
import type { Side } from './rule.ts';
import { cutBy, fromAbove, type Gaze, type Placed, placedParts, type Seen } from './scene.ts';
import { onPaper, paperX, paperY, type View } from './view.ts';

/** Joints that are made alike: the same two shapes meet in the same way. */
export type JointGroup = { readonly first: Joint; readonly others: readonly Joint[] };

const drawn: readonly Joint['kind'][] = ['lap', 'dado', 'rabbet'];

/** What a part is as far as its joints go: a hole for a wire makes it another part, not another joint. */
function shapeKey({ role, bench, blank, features }: Part, instances: ReadonlyMap<string, unknown>): string {
  const own = features.filter((one) => one.for === undefined || instances.has(one.for));
  return JSON.stringify([role, bench, blank, own.map(({ id: _id, ...shape }) => shape)]);
}

/** The joints worth a drawing, one for each pair of shapes that meet alike. */
export function jointGroups(book: DrawingBook): readonly JointGroup[] {
  const partOf = new Map(book.parts.flatMap((part) => part.places.map(({ id }) => [id, part] as const)));
  const keys = new Map(book.parts.map((part) => [part, shapeKey(part, partOf)] as const));
  const shapeOf = (id: string) => {
    const part = partOf.get(id);
    return (part === undefined ? undefined : keys.get(part)) ?? id;
  };
  const keyOf = ({ kind, between: [a, b] }: Joint) => [kind, shapeOf(a), shapeOf(b)].join(' ');
  const groups = new Map<string, JointGroup>();
  for (const joint of book.joints.filter(({ kind }) => drawn.includes(kind))) {
    const key = keyOf(joint);
    const found = groups.get(key);
    groups.set(
      key,
      found === undefined ? { first: joint, others: [] } : { ...found, others: [...found.others, joint] },
    );
  }
  return [...groups.values()];
}

type Pair = { readonly holds: Placed; readonly enters: Placed };

function pairOf(book: DrawingBook, { between: [a, b] }: Joint): Pair | null {
  const all = placedParts(book.parts);
  const [holds, enters] = [a, b].map((id) => all.find(({ place }) => place.id === id));
  return holds === undefined || enters === undefined ? null : { holds, enters };
}

type Cut = { readonly gaze: Gaze; readonly at: number };

/** A lap is cut along the middle of the strut that enters; a dado or rabbet level, at half the entering piece's height. */
function cutOf(joint: Joint, { enters }: Pair): Cut {
  const { pose } = enters.place;
  const { length, width, thickness } = enters.part.blank;
  const middle = placed(pose, [length / 2, width / 2, thickness / 2]);
  if (joint.kind !== 'lap') return { gaze: fromAbove, at: middle[2] };
  const toward = pose.z;
  const gaze: Gaze = { right: pose.x, up: pose.y, toward };
  return { gaze, at: middle[0] * toward[0] + middle[1] * toward[1] + middle[2] * toward[2] };
}

type Faces = { readonly holds: Seen; readonly enters: Seen };

function windowOf({ holds, enters }: Faces, margin: number): Window {
  const box = (seen: Seen) => bounds(seen.areas.flatMap(({ outline }) => outline));
  const [a, b] = [box(holds), box(enters)];
  return {
    x0: Math.max(a.low[0], b.low[0]) - margin,
    x1: Math.min(a.high[0], b.high[0]) + margin,
    y0: Math.max(a.low[1], b.low[1]) - margin,
    y1: Math.min(a.high[1], b.high[1]) + margin,
  };
}

function clipped(seen: Seen, window: Window): Seen {
  return { ...seen, areas: seen.areas.flatMap((area) => within(area, window)) };
}

function pieceBlock(
  view: View,
  seen: Seen,
  { window, slope }: { readonly window: Window; readonly slope: 1 | -1 },
): Block {
  const open = ['x0', 'x1', 'y0', 'y1'] as const;
  const marks = seen.areas.flatMap((area) => {
    const loops = [area.outline, ...area.holes].map((loop) => loop.map((point) => onPaper(view, point)));
    return [...clippedOutline(view, area, { window, open }), ...hatchMarks(loops, { pitch: 2, slope })];
  });
  return { marks, views: [], dimensions: [] };
}

/** The corners of a loop: a point on a straight edge is left over from how the shape was joined, and shows nowhere. */
function turns(loop: readonly Point[]): readonly Point[] {
  return loop.filter(([x, y], i) => {
    const [ax, ay] = loop.at(i - 1) ?? [x, y];
    const [bx, by] = loop[(i + 1) % loop.length] ?? [x, y];
    return Math.abs((x - ax) * (by - y) - (y - ay) * (bx - x)) > 1e-6;
  });
}

/** Corners of a piece inside the window: what a builder has to measure. */
function cornersIn({ areas }: Seen, { x0, x1, y0, y1 }: Window): readonly Point[] {
  return areas
    .flatMap(({ outline }) => turns(outline))
    .filter(([x, y]) => x > x0 + 0.01 && x < x1 - 0.01 && y > y0 + 0.01 && y < y1 - 0.01);
}

function sizeChains(
  view: View,
  { holds, enters }: Faces,
  ask: { readonly window: Window; readonly unit: DrawingUnit },
): readonly Block[] {
  const { window, unit } = ask;
  const { low, high } = bounds([...holds.areas, ...enters.areas].flatMap(({ outline }) => outline));
  const chain = (name: string, side: Side, seen: Seen): Block => {
    const along = side === 'below' || side === 'above';
    const stops = cornersIn(seen, window).map((corner) => (along ? corner[0] : corner[1]));
    const bases = {
      below: paperY(view, low[1]),
      above: paperY(view, high[1]),
      left: paperX(view, low[0]),
      right: paperX(view, high[0]),
    };
    return chainBlock({ name, view, side, stops, base: bases[side], opposite: bases[side], v: 10, unit });
  };
  return [
    chain('across what holds', 'below', holds),
    chain('across what enters', 'above', enters),
    chain('depth of what holds', 'left', holds),
    chain('depth of what enters', 'right', enters),
  ];
}

const jointNames: Readonly<Record<Joint['kind'], string>> = {
  lap: 'Lap',
  dado: 'Dado',
  rabbet: 'Rabbet',
  butt: 'Butt',
  bearing: 'Bearing',
  bolted: 'Bolted joint',
  groove: 'Groove',
};

function labelOf(book: DrawingBook, id: string): string {
  return book.parts.flatMap(({ places }) => places).find((place) => place.id === id)?.label ?? id;
}

/** "Dado of S1 and C1, 6 alike". */
export function jointTitle(book: DrawingBook, { first, others }: JointGroup): string {
  const [a, b] = first.between;
  const alike = others.length > 0 ? `, ${others.length + 1} alike` : '';
  return `${jointNames[first.kind]} of ${labelOf(book, a)} and ${labelOf(book, b)}${alike}`;
}

type FitAsk = { readonly pair: Pair; readonly unit: DrawingUnit };

/** Which piece has the cut and what its width is made of: the thickest reading of what goes in, and the clearance. */
function fitNote(book: DrawingBook, { kind, between: [a, b], clearance, relief }: Joint, { pair, unit }: FitAsk) {
  const known = book.thicknesses?.find(({ stock }) => stock === pair.enters.part.stock);
  const said = (mm: number) => fitText(mm, unit);
  const [holds, enters] = [labelOf(book, a), labelOf(book, b)];
  const cut = kind === 'lap' ? `${holds} and ${enters} have a slot each` : `The ${kind} is in ${holds}, for ${enters}`;
  const wide =
    known === undefined
      ? `clearance ${said(clearance)}`
      : `${said(known.thickest + clearance)} wide: ${known.measured ? 'thickest reading' : 'listed thickness'} ${said(known.thickest)} + clearance ${said(clearance)}`;
  return `${cut}, ${wide}${relief > 0 ? `; lap relief ${said(relief)}` : ''}.`;
}

/** The other pairs that meet alike, as many as a line holds. */
function alikeNote(book: DrawingBook, { others }: JointGroup): readonly string[] {
  const pairs = others.map(({ between: [a, b] }) => `${labelOf(book, a)} and ${labelOf(book, b)}`);
  const told = pairs.slice(0, 5);
  const more = pairs.length - told.length;
  return told.length === 0 ? [] : [`The same: ${told.join('; ')}${more > 0 ? `; ${more} more` : ''}.`];
}

/** What the joint's drawing shows, in words. */
export function jointWords(book: DrawingBook, group: JointGroup, unit: DrawingUnit): string {
  const {
    kind,
    clearance,
    relief,
    held,
    between: [a, b],
  } = group.first;
  const cut = kind === 'lap' ? `cut along the middle of ${labelOf(book, b)}` : 'cut level';
  const play = `${fitText(clearance, unit)} ${unit} of clearance over the thickest reading`;
  const deeper = relief > 0 ? `, each half ${fitText(relief, unit)} ${unit} deeper than half` : '';
  return `${jointTitle(book, group)}, ${cut}. ${labelOf(book, b)} enters ${labelOf(book, a)} with ${play}${deeper}; ${held === 'loose' ? 'loose' : `held by ${held}`}.`;
}

export type JointLayout = { readonly blocks: readonly Block[]; readonly scale: number };

/** The joint cut through, both pieces hatched their own way, at the largest scale that suits. */
export function jointLayout(book: DrawingBook, group: JointGroup, { unit }: DrawingOptions): JointLayout {
  const pair = pairOf(book, group.first);
  if (pair === null) return { blocks: [], scale: 1 };
  const { gaze, at } = cutOf(group.first, pair);
  const [holds, enters] = [cutBy(pair.holds, gaze, at), cutBy(pair.enters, gaze, at)];
  if (holds === null || enters === null) return { blocks: [], scale: 1 };
  const window = windowOf({ holds, enters }, 1.6 * pair.holds.part.blank.thickness);
  const fits = (scale: number) => (window.x1 - window.x0) / scale <= 150 && (window.y1 - window.y0) / scale <= 95;
  const scale = scales.find((one) => one >= 0.5 && fits(one)) ?? 100;
  const view: View = { name: 'joint', scale, origin: [0, 0], breaks: [] };
  const faces: Faces = { holds: clipped(holds, window), enters: clipped(enters, window) };
  const block = joined(
    { marks: [], views: [view], dimensions: [] },
    pieceBlock(view, faces.holds, { window, slope: 1 }),
    pieceBlock(view, faces.enters, { window, slope: -1 }),
    ...sizeChains(view, faces, { window, unit }),
  );
  const heading = `${jointTitle(book, group)} ${scaleText(scale)}`;
  const notes = [fitNote(book, group.first, { pair, unit }), ...alikeNote(book, group)];
  return {
    blocks: [headedBlock(labelled(block, view, [faces.holds, faces.enters]), heading, notes)],
    scale,
  };
}
