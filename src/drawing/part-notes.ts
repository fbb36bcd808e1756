import type { Point } from '../core/geometry/shapes.ts';
import type { Feature, Part, Placement } from '../core/stock/part.ts';
import type { Block } from './block.ts';
import type { Dimension } from './dimension.ts';
import type { DrawingUnit } from './drawing.ts';
import { lengthText } from './figures.ts';
import { type Note, noteBlocks } from './notes.ts';
import type { FeatureGroup } from './part-groups.ts';
import { hasManyCorners } from './part-sizing.ts';
import { groupName, type NoteSize, noteSizes } from './part-words.ts';

/** Corners in order, each by its distance from the left end and from the bottom edge. */
function cornersWords(points: readonly Point[], unit: DrawingUnit): string {
  const figure = (mm: number) => lengthText(mm, unit).replaceAll(' ', '\u00a0');
  return `corners from the left end and the bottom edge: ${points.map(([x, y]) => `(${figure(x)};\u00a0${figure(y)})`).join(' ')}`;
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
  if (first.kind === 'cut-out' && hasManyCorners(first.outline)) return cornerDimensions(first.id, first.outline, unit);
  const common = { of: features.map(({ id }) => id), view: 'notes', between: null, ends: null, chain: null };
  return sizesLeft(first, ask).map(({ measure, text }) => ({ ...common, measure, text }));
}

function groupNote(group: FeatureGroup, part: Part, ask: NoteAsk): Note {
  const { unit } = ask;
  const { letter, features } = group;
  const first = features[0];
  if (first === undefined) return { letter, words: '', dimensions: [] };
  const sizes = sizesLeft(first, ask).map(({ words }) => words);
  const corners = first.kind === 'cut-out' && hasManyCorners(first.outline) ? [cornersWords(first.outline, unit)] : [];
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

function markWords({ marks }: Placement, unit: DrawingUnit): string {
  return marks.map(({ text, side, at: [x] }) => `${text} (${side}, ${lengthText(x, unit)})`).join('; ');
}

/** Labels of pieces in their order: up to two, else the first and the last. */
function alikeLabels(labels: readonly string[]): string {
  return labels.length <= 2 ? labels.join(', ') : `${labels[0]} to ${labels.at(-1)}`;
}

/** What the builder writes on each piece, and how far from the left end; pieces in a row that bear the same share a line. */
export function markNotes(part: Part, unit: DrawingUnit): readonly Block[] {
  const placed = part.places.filter(({ marks }) => marks.length > 0);
  const runs: { readonly labels: string[]; readonly words: string }[] = [];
  for (const place of placed) {
    const words = markWords(place, unit);
    const run = runs.at(-1);
    if (run?.words === words) run.labels.push(place.label);
    else runs.push({ labels: [place.label], words });
  }
  return noteBlocks(
    'Marks to write, from the left end; in boxes on the view',
    runs.map(({ labels, words }) => ({ letter: alikeLabels(labels), words, dimensions: [] })),
  );
}
