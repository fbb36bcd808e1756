import { partOutline } from '../core/stock/outline.ts';
import type { Part } from '../core/stock/part.ts';
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
import { same } from './part-groups.ts';
import { featureMarks } from './part-marks.ts';
import { type Rule, ruleSpot } from './rule.ts';
import { distinct, kindsOf, METAL, type ScrewKind, type ScrewSpot, spotsOf } from './screw-spots.ts';
import { fitsSheet } from './sheet.ts';
import { onPaper, paperX, paperY, type View } from './view.ts';

/** A position along one axis with the letters of what stands there and the screws it places. */
type Figure = { readonly at: number; readonly letters: readonly string[]; readonly ids: readonly string[] };

/** What is figured beside the view along an axis: every spot, or the lines that rows stand on. */
function figuresAlong(kinds: readonly ScrewKind[], axis: 'x' | 'y'): readonly Figure[] {
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

function crossMarks(view: View, { at, side, diameter }: ScrewSpot): readonly Mark[] {
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

type Ask = { readonly part: Part; readonly kinds: readonly ScrewKind[]; readonly unit: DrawingUnit };

/** From which side the screws are driven, where that isn't the side one looks at. */
function sideWords(kinds: readonly ScrewKind[]): readonly string[] {
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
function rowWords({ spots, line }: ScrewKind, unit: DrawingUnit): { words: string; dimensions: readonly Dimension[] } {
  if (line === null) return { words: '', dimensions: [] };
  const i = line === 'x' ? 0 : 1;
  const ordered = spots.toSorted((a, b) => a.at[i] - b.at[i]);
  const text = (spot: ScrewSpot) => lengthText(spot.at[i], unit);
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
function holeWords(spot: ScrewSpot | undefined, unit: DrawingUnit): string {
  const holes = screwHoles(spot?.diameter ?? 0);
  if (spot === undefined || holes === null) return '';
  const show = (mm: number) => sizeText(mm, unit).replaceAll(' ', '\u00a0');
  return METAL.test(spot.holds) ? `pilot ⌀${show(holes.hardwood)}` : `⌀${show(holes.clearance)} through`;
}

function kindNote({ stock = [] }: DrawingBook, { part, unit }: Ask, kind: ScrewKind) {
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
