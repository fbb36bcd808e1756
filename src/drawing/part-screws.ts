import { fromWorld } from '../core/geometry/pose.ts';
import type { Point } from '../core/geometry/shapes.ts';
import { dot } from '../core/geometry/vector.ts';
import type { Fastener } from '../core/stock/fastener.ts';
import { partOutline } from '../core/stock/outline.ts';
import type { FaceSide, Part, Placement } from '../core/stock/part.ts';
import { screwHoles } from '../core/stock/screw-holes.ts';
import { headedBlock } from './bench-view.ts';
import { type Block, joined } from './block.ts';
import type { DrawingBook } from './book.ts';
import type { Dimension, Measure } from './dimension.ts';
import type { DrawingOptions, DrawingUnit } from './drawing.ts';
import { lengthText, sizeText } from './figures.ts';
import type { Mark } from './mark.ts';
import { noteBlocks } from './notes.ts';
import { type Ordinate, ordinateMarks, ordinatePitch } from './ordinates.ts';
import { polygonMark } from './outline.ts';
import { scales, scaleText } from './paper.ts';
import { isBored, letterOf, same } from './part-groups.ts';
import { featureMarks } from './part-marks.ts';
import { type Rule, ruleSpot } from './rule.ts';
import { fitsSheet } from './sheet.ts';
import { onPaper, paperX, paperY, type View } from './view.ts';

/** Screws at one spot of a part: those of all its pieces that have one there. */
type Spot = {
  readonly at: Point;
  readonly side: FaceSide;
  readonly ids: readonly string[];
  readonly labels: readonly string[];
  readonly item: string;
  readonly diameter: number;
  readonly purpose: string;
  /** the joint or the metal they hold, of the first of them */
  readonly holds: string;
};

/** Screws of one kind and purpose, told in one note. */
type Kind = { readonly letter: string; readonly spots: readonly Spot[]; readonly line: 'x' | 'y' | null };

const METAL = /(?:^|\.)(slide|bracket|caster)\./;

function purposeOf({ parts }: DrawingBook, { holds, through }: Fastener): string {
  const metal = METAL.exec(holds)?.[1];
  if (metal !== undefined && through.length === 1) return `for the ${metal}`;
  const last = parts.flatMap(({ places }) => places).find(({ id }) => id === through[through.length - 1]);
  return `into ${last?.label ?? ''}`;
}

/** A screw's head in the coordinates of the piece it is driven into first; null where the piece has a hole for it. */
function spotOf(book: DrawingBook, fastener: Fastener, { part, place }: { part: Part; place: Placement }): Spot | null {
  const { pose } = place;
  const [x, y] = fromWorld(pose, fastener.head);
  const at: Point = [x, y];
  const isHole = part.features.some((one) => isBored(one) && Math.hypot(one.at[0] - at[0], one.at[1] - at[1]) < same);
  if (isHole) return null;
  const side = dot(fastener.direction, pose.z) < 0 ? 'face' : 'back';
  const { item, diameter, holds, id } = fastener;
  const purpose = purposeOf(book, fastener);
  return { at, side, ids: [id], labels: [place.label], item, diameter, purpose, holds };
}

function isAlike(a: Spot, b: Spot): boolean {
  const near = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) < same;
  return near && a.side === b.side && a.item === b.item && METAL.test(a.holds) === METAL.test(b.holds);
}

/** Where screws go into a part that has no holes for them, from its left end and its bottom edge. */
function spotsOf(book: DrawingBook, part: Part): readonly Spot[] {
  const spots: Spot[] = [];
  for (const place of part.places) {
    for (const fastener of (book.fasteners ?? []).filter(({ through }) => through[0] === place.id)) {
      const spot = spotOf(book, fastener, { part, place });
      if (spot === null) continue;
      const index = spots.findIndex((one) => isAlike(one, spot));
      const before = spots[index];
      if (before === undefined) spots.push(spot);
      else spots[index] = { ...before, ids: [...before.ids, ...spot.ids], labels: [...before.labels, ...spot.labels] };
    }
  }
  return spots;
}

function distinct(values: readonly number[]): readonly number[] {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted.filter((one, i) => i === 0 || one - (sorted[i - 1] ?? one) > same);
}

/** As many positions as can be read beside a view; more of them stand in rows, told in the notes. */
const mostFigures = 16;

function grouped<T>(all: readonly T[], keyOf: (one: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const one of all) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return [...groups.values()];
}

/** The line that screws of one joint stand on: along x or y; null where they stand apart. */
function lineOf(spots: readonly Spot[]): Kind['line'] {
  if (distinct(spots.map(({ at }) => at[1])).length === 1) return 'x';
  return distinct(spots.map(({ at }) => at[0])).length === 1 ? 'y' : null;
}

function kindsOf(spots: readonly Spot[]): readonly Kind[] {
  const axes = ([0, 1] as const).map((axis) => distinct(spots.map(({ at }) => at[axis])).length);
  const few = axes.reduce((sum, one) => sum + one, 0) <= mostFigures;
  const groups = few
    ? grouped(spots, ({ purpose, side, item, labels }) => [purpose, side, item, ...labels].join(' '))
    : grouped(spots, ({ holds, side, item, labels }) => [holds, side, item, ...labels].join(' '));
  return groups.map((own, i) => ({
    letter: groups.length === 1 && few ? '' : letterOf(i).toLowerCase(),
    spots: own,
    line: few ? null : lineOf(own),
  }));
}

/** A position along one axis with the letters of what stands there and the screws it places. */
type Figure = { readonly at: number; readonly letters: readonly string[]; readonly ids: readonly string[] };

/** What is figured beside the view along an axis: every spot, or the lines that rows stand on. */
function figuresAlong(kinds: readonly Kind[], axis: 'x' | 'y'): readonly Figure[] {
  const i = axis === 'x' ? 0 : 1;
  const all = kinds
    .filter(({ line }) => line !== axis)
    .flatMap(({ letter, spots }) => spots.map(({ at, ids }) => ({ at: at[i], letter, ids })));
  return distinct(all.map(({ at }) => at)).map((at) => {
    const own = all.filter((one) => Math.abs(one.at - at) <= same);
    const letters = [...new Set(own.map(({ letter }) => letter))].filter((letter) => letter !== '');
    return { at, letters, ids: own.flatMap(({ ids }) => ids) };
  });
}

function figureBlock(view: View, part: Part, ask: { figures: readonly Figure[]; axis: 'x' | 'y'; unit: DrawingUnit }) {
  const { figures, axis, unit } = ask;
  const along = axis === 'x';
  const rule: Rule = along ? { side: 'below', base: paperY(view, 0) } : { side: 'left', base: paperX(view, 0) };
  const place = (mm: number) => (along ? paperX(view, mm) : paperY(view, mm));
  const zero: Ordinate = { u: place(0), inwards: 0, text: lengthText(0, unit), bold: '' };
  const ordinates = figures.map(
    ({ at, letters }): Ordinate => ({
      ...{ u: place(at), inwards: 0, text: lengthText(at, unit), bold: letters.join(' ') },
    }),
  );
  const far = place(along ? part.blank.length : part.blank.width);
  const [low, high] = [Math.min(place(0), far), Math.max(place(0), far)];
  const marks = ordinateMarks(rule, [zero, ...ordinates], {
    from: low - ordinatePitch / 2,
    to: high + ordinatePitch / 2,
  });
  const dimensions = figures.map(
    ({ at, ids }): Dimension => ({
      measure: axis,
      of: ids,
      text: lengthText(at, unit),
      view: view.name,
      between: [0, at],
      ends: [ruleSpot(rule, place(0), 0), ruleSpot(rule, place(at), 0)],
      chain: null,
    }),
  );
  return { marks, views: [], dimensions };
}

/** How far the arms of a screw's cross reach from its middle, mm on paper. */
const ARM = 1.4;

function crossMarks(view: View, { at, side, diameter }: Spot): readonly Mark[] {
  const [x, y] = onPaper(view, at);
  const hidden = side === 'back';
  return [
    {
      kind: 'circle',
      centre: [x, y],
      radius: Math.max(diameter / 2 / view.scale, 0.3),
      fill: 'none',
      pen: hidden ? 'hidden' : 'feature',
      role: hidden ? 'hidden' : 'feature',
    },
    { kind: 'line', from: [x - ARM, y], to: [x + ARM, y], pen: 'centre', role: 'centre' },
    { kind: 'line', from: [x, y - ARM], to: [x, y + ARM], pen: 'centre', role: 'centre' },
  ];
}

type Ask = { readonly part: Part; readonly kinds: readonly Kind[]; readonly unit: DrawingUnit };

/** From which side the screws are driven, where that isn't the side one looks at. */
function sideWords(kinds: readonly Kind[]): readonly string[] {
  const spots = kinds.flatMap((kind) => kind.spots);
  const back = spots.filter(({ side }) => side === 'back').length;
  if (back === 0) return [];
  return [back === spots.length ? 'Driven from the back.' : 'Dashed: driven from the back.'];
}

function viewAt({ part, kinds, unit }: Ask, scale: number): Block {
  const view: View = { name: 'screws', scale, origin: [0, 0], breaks: [] };
  const window = { x0: 0, x1: part.blank.length, y0: 0, y1: part.blank.width };
  const marks = [
    polygonMark(view, partOutline(part), { pen: 'edge', fill: 'wood' }),
    ...part.features.flatMap((feature) => featureMarks(view, feature, { blank: part.blank, window })),
    ...kinds.flatMap(({ spots }) => spots.flatMap((spot) => crossMarks(view, spot))),
  ];
  const figures = (['x', 'y'] as const).flatMap((axis) => {
    const own = figuresAlong(kinds, axis);
    return own.length === 0 ? [] : [figureBlock(view, part, { figures: own, axis, unit })];
  });
  const drawn = joined({ marks, views: [view], dimensions: [] }, ...figures);
  return headedBlock(drawn, `Screws, the piece seen on its face ${scaleText(scale)}`, sideWords(kinds));
}

/** Positions along a row, each a figure of its own. */
function rowWords({ spots, line }: Kind, unit: DrawingUnit): { words: string; dimensions: readonly Dimension[] } {
  if (line === null) return { words: '', dimensions: [] };
  const i = line === 'x' ? 0 : 1;
  const ordered = spots.toSorted((a, b) => a.at[i] - b.at[i]);
  const text = (spot: Spot) => lengthText(spot.at[i], unit);
  const measure: Measure = line;
  const dimensions = ordered.map(
    (spot): Dimension => ({
      ...{ measure, of: spot.ids, text: text(spot), view: 'notes', between: null, ends: null, chain: null },
    }),
  );
  const from = line === 'x' ? 'from the left end' : 'from the bottom edge';
  return { words: `, ${from} ${ordered.map((spot) => text(spot).replaceAll(' ', '\u00a0')).join('; ')}`, dimensions };
}

/** The hole a screw asks for in its first piece: a clearance hole, or its pilot where it holds metal. */
function holeWords(spot: Spot | undefined, unit: DrawingUnit): string {
  const holes = screwHoles(spot?.diameter ?? 0);
  if (spot === undefined || holes === null) return '';
  const show = (mm: number) => sizeText(mm, unit).replaceAll(' ', '\u00a0');
  return METAL.test(spot.holds) ? `pilot ⌀${show(holes.hardwood)}` : `⌀${show(holes.clearance)} through`;
}

function kindNote({ stock = [] }: DrawingBook, { part, unit }: Ask, kind: Kind) {
  const [first] = kind.spots;
  const name = stock.find(({ id }) => id === first?.item)?.name ?? first?.item ?? '';
  const all = part.places.length === new Set(first?.labels).size;
  const only = all ? '' : `, on ${[...new Set(first?.labels)].join(', ')} only`;
  const { words, dimensions } = rowWords(kind, unit);
  const count = `${kind.spots.length}× ${name}, driven from the ${first?.side ?? 'face'}`;
  const said = [count, first?.purpose ?? '', holeWords(first, unit)].filter((one) => one !== '').join(', ');
  return { letter: kind.letter, words: `${said}${only}${words}`, dimensions };
}

/** Screws of a part that has no holes for them: where each goes, in a view of their own, and what they hold in notes. */
export function screwBlocks(
  book: DrawingBook,
  part: Part,
  { scale, options }: { readonly scale: number; readonly options: DrawingOptions },
): { readonly views: readonly Block[]; readonly notes: readonly Block[] } {
  const kinds = kindsOf(spotsOf(book, part));
  if (kinds.length === 0) return { views: [], notes: [] };
  const ask: Ask = { part, kinds, unit: options.unit };
  const own = scales.find((one) => one >= scale && fitsSheet(viewAt(ask, one), options.paper)) ?? 100;
  const notes = noteBlocks(
    'Screws',
    kinds.map((kind) => kindNote(book, ask, kind)),
  );
  return { views: [viewAt(ask, own)], notes };
}
