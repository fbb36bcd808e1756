import { loopSize } from '../core/geometry/polygon.ts';
import type { Point } from '../core/geometry/shapes.ts';
import type { Feature, MatingMark, Part, Placement } from '../core/stock/part.ts';
import type { Block } from './block.ts';
import type { Dimension } from './dimension.ts';
import type { DrawingUnit } from './drawing.ts';
import { cutText, lengthText } from './figures.ts';
import { markKey } from './mate-marks.ts';
import { type Note, noteBlocks } from './notes.ts';
import { type FeatureGroup, letterOf } from './part-groups.ts';
import { hasListedCorners } from './part-sizing.ts';
import { groupName, type NoteSize, noteSizes } from './part-words.ts';

/** The small letter of a corner. */
export function cornerLetter(index: number): string {
  return letterOf(index).toLowerCase();
}

/** Corners in order, each by its distance from the left end and from the bottom edge; few have their letters and sides. */
function cornersWords(points: readonly Point[], unit: DrawingUnit): string {
  const figure = (mm: number) => lengthText(mm, unit).replaceAll(' ', '\u00a0');
  const few = points.length <= 8;
  const name = (i: number) => (few ? `${cornerLetter(i)}\u00a0` : '');
  const pairs = points.map(([x, y], i) => `${name(i)}(${figure(x)};\u00a0${figure(y)})`).join(' ');
  const sides =
    few && points.length === 4
      ? `${loopSize(points)
          .map((mm) => cutText(mm, unit))
          .join(' by ')}, `
      : '';
  return `${sides}corners from the left end and the bottom edge: ${pairs}`;
}

function cornerDimensions(id: string, points: readonly Point[], unit: DrawingUnit): readonly Dimension[] {
  const common = { view: 'notes', between: null, ends: null, chain: null };
  return points.flatMap(([x, y], i): readonly Dimension[] => [
    { ...common, measure: 'x', of: [`${id}#${i}`], text: lengthText(x, unit) },
    { ...common, measure: 'y', of: [`${id}#${i}`], text: lengthText(y, unit) },
  ]);
}

/** What the notes still have to say: in which unit, and which figures a detail shows already, as `radius slot-1`. */
export type NoteAsk = { readonly unit: DrawingUnit; readonly drawn: ReadonlySet<string> };

/** The figures of dimensions, as `radius slot-1`. */
export function figuresIn(dimensions: readonly Dimension[]): ReadonlySet<string> {
  return new Set(dimensions.flatMap(({ measure, of }) => of.map((id) => `${measure} ${id}`)));
}

function sizesLeft(first: Feature, { unit, drawn }: NoteAsk): readonly NoteSize[] {
  return noteSizes(first, unit).filter(({ measure }) => !drawn.has(`${measure} ${first.id}`));
}

function noteDimensions({ features }: FeatureGroup, ask: NoteAsk): readonly Dimension[] {
  const { unit } = ask;
  const first = features[0];
  if (first === undefined) return [];
  if (first.kind === 'cut-out' && hasListedCorners(first.outline))
    return cornerDimensions(first.id, first.outline, unit);
  const common = { of: features.map(({ id }) => id), view: 'notes', between: null, ends: null, chain: null };
  return sizesLeft(first, ask).map(({ measure, text }) => ({ ...common, measure, text }));
}

function groupNote(group: FeatureGroup, part: Part, ask: NoteAsk): Note {
  const { unit } = ask;
  const { letter, features } = group;
  const first = features[0];
  if (first === undefined) return { letter, words: '', dimensions: [] };
  const sizes = sizesLeft(first, ask).map(({ words }) => words);
  const corners =
    first.kind === 'cut-out' && hasListedCorners(first.outline) ? [cornersWords(first.outline, unit)] : [];
  const words = [`${features.length}× ${groupName(features, part)}`, ...sizes, ...corners].join(', ');
  return { letter, words, dimensions: noteDimensions(group, ask) };
}

/** What each letter on the drawing stands for, with the sizes that no dimension line shows. */
export function groupNotes(part: Part, groups: readonly FeatureGroup[], ask: NoteAsk): readonly Block[] {
  return noteBlocks(
    'Features',
    groups.map((group) => groupNote(group, part, ask)),
  );
}

/** What the list of marks tells: in which unit, and which marks stand on the view: their keys, and `up` for the arrow. */
export type MarksAsk = { readonly unit: DrawingUnit; readonly written: ReadonlySet<string> };

function markWords(mark: MatingMark, { unit, written }: MarksAsk): string {
  if (mark.kind === 'up' && written.has('up')) return 'up, as the arrow';
  const at = mark.at.map((mm) => lengthText(mm, unit).replaceAll(' ', '\u00a0')).join(';\u00a0');
  return `${mark.text} (${at}${written.has(markKey(mark)) ? '' : ';\u00a0not\u00a0drawn'})`;
}

/** The marks of one piece, those of its face first. */
function pieceMarks({ marks }: Placement, ask: MarksAsk): string {
  return (['face', 'back'] as const)
    .map((side) => ({ side, words: marks.filter((mark) => mark.side === side).map((mark) => markWords(mark, ask)) }))
    .filter(({ words }) => words.length > 0)
    .map(({ side, words }) => `on the ${side}: ${words.join(', ')}`)
    .join('; ');
}

/** Labels of pieces in their order: up to two, else the first and the last. */
function alikeLabels(labels: readonly string[]): string {
  return labels.length <= 2 ? labels.join(', ') : `${labels[0]} to ${labels.at(-1)}`;
}

/**
 * What the builder writes on each piece, how far from the left end and the bottom edge, and what of it the view has no
 * room for; pieces in a row that bear the same share a line.
 */
export function markNotes(part: Part, ask: MarksAsk): readonly Block[] {
  const placed = part.places.filter(({ marks }) => marks.length > 0);
  const runs: { readonly labels: string[]; readonly words: string }[] = [];
  for (const place of placed) {
    const words = pieceMarks(place, ask);
    const run = runs.at(-1);
    if (run?.words === words) run.labels.push(place.label);
    else runs.push({ labels: [place.label], words });
  }
  if (runs.length === 0) return [];
  const key = 'Boxed on the view where they go; a dashed box or arrow is on the back.';
  return noteBlocks('Marks to write, at (from the left end; from the bottom edge)', [
    ...runs.map(({ labels, words }) => ({ letter: alikeLabels(labels), words, dimensions: [] })),
    { letter: '', words: key, dimensions: [] },
  ]);
}
