import type { Point } from '../core/geometry/shapes.ts';
import type { Part, Placement } from '../core/stock/part.ts';
import type { Block } from './block.ts';
import type { Dimension } from './dimension.ts';
import type { DrawingUnit } from './drawing.ts';
import { lengthText } from './figures.ts';
import { type Note, noteBlocks } from './notes.ts';
import type { FeatureGroup } from './part-groups.ts';
import { hasManyCorners } from './part-sizing.ts';
import { featureName, noteSizes } from './part-words.ts';

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

function noteDimensions({ features }: FeatureGroup, unit: DrawingUnit): readonly Dimension[] {
  const first = features[0];
  if (first === undefined) return [];
  if (first.kind === 'cut-out' && hasManyCorners(first.outline)) return cornerDimensions(first.id, first.outline, unit);
  const common = { of: features.map(({ id }) => id), view: 'notes', between: null, ends: null, chain: null };
  return noteSizes(first, unit).map(({ measure, text }) => ({ ...common, measure, text }));
}

function groupNote(group: FeatureGroup, part: Part, unit: DrawingUnit): Note {
  const { letter, features } = group;
  const first = features[0];
  if (first === undefined) return { letter, words: '', dimensions: [] };
  const sizes = noteSizes(first, unit).map(({ words }) => words);
  const corners = first.kind === 'cut-out' && hasManyCorners(first.outline) ? [cornersWords(first.outline, unit)] : [];
  const words = [`${features.length}× ${featureName(first, part)}`, ...sizes, ...corners].join(', ');
  return { letter, words, dimensions: noteDimensions(group, unit) };
}

/** What each letter on the drawing stands for, with the sizes that no dimension line shows. */
export function groupNotes(part: Part, groups: readonly FeatureGroup[], unit: DrawingUnit): readonly Block[] {
  return noteBlocks(
    'Features',
    groups.map((group) => groupNote(group, part, unit)),
  );
}

function markWords({ label, marks }: Placement, unit: DrawingUnit): Note {
  const words = marks.map(({ text, side, at: [x] }) => `${text} (${side}, ${lengthText(x, unit)})`);
  return { letter: label, words: words.join('; '), dimensions: [] };
}

/** What the builder writes on each piece, and how far from the left end. */
export function markNotes(part: Part, unit: DrawingUnit): readonly Block[] {
  const placed = part.places.filter(({ marks }) => marks.length > 0);
  return noteBlocks(
    'Marks to write, from the left end',
    placed.map((place) => markWords(place, unit)),
  );
}
