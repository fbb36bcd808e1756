import type { Part, Placement } from '../core/stock/part.ts';
import type { Block } from './block.ts';
import type { Dimension } from './dimension.ts';
import type { DrawingUnit } from './drawing.ts';
import { lengthText } from './figures.ts';
import type { Mark } from './mark.ts';
import type { FeatureGroup } from './part-groups.ts';
import { featureName, noteSizes } from './part-words.ts';
import { lettering, smallText, textWidth, wrapped } from './text.ts';

const lineHeight = 4.4;
const width = 118;

/** Lines of a note, the first led by a bold letter. */
export type Note = { readonly letter: string; readonly words: string };

/** Notes one under the other, wrapped to a column. */
export function noteMarks(heading: string, notes: readonly Note[]): readonly Mark[] {
  const indent = Math.max(
    0,
    ...notes.map(({ letter }) => (letter === '' ? 0 : textWidth(letter, smallText, 'bold') + 2.5)),
  );
  const lines = notes.flatMap(({ letter, words }) =>
    wrapped(words, width - indent, { size: smallText, weight: 'regular' }).map((line, i) => ({
      line,
      letter: i === 0 ? letter : '',
    })),
  );
  const title = lettering(heading, [0, 0], { weight: 'bold' });
  return [
    title,
    ...lines.flatMap(({ line, letter }, i): readonly Mark[] => {
      const y = (i + 1) * lineHeight + 0.8;
      const led = letter === '' ? [] : [lettering(letter, [0, y], { weight: 'bold' })];
      return [...led, lettering(line, [indent, y])];
    }),
  ];
}

function groupNote({ letter, features }: FeatureGroup, part: Part, unit: DrawingUnit): Note {
  const first = features[0];
  if (first === undefined) return { letter, words: '' };
  const sizes = noteSizes(first, unit).map(({ words }) => words);
  return { letter, words: [`${features.length}× ${featureName(first, part)}`, ...sizes].join(', ') };
}

function noteDimensions({ features }: FeatureGroup, unit: DrawingUnit): readonly Dimension[] {
  const first = features[0];
  if (first === undefined) return [];
  const of = features.map(({ id }) => id);
  return noteSizes(first, unit).map(({ measure, text }) => ({
    measure,
    of,
    text,
    view: 'notes',
    between: null,
    ends: null,
    chain: null,
  }));
}

/** What each letter on the drawing stands for, with the sizes that no dimension line shows. */
export function groupNotes(part: Part, groups: readonly FeatureGroup[], unit: DrawingUnit): readonly Block[] {
  if (groups.length === 0) return [];
  const pages = Array.from({ length: Math.ceil(groups.length / 16) }, (_, i) => groups.slice(i * 16, i * 16 + 16));
  return pages.map((page) => ({
    marks: noteMarks(
      'Features',
      page.map((group) => groupNote(group, part, unit)),
    ),
    views: [],
    dimensions: page.flatMap((group) => noteDimensions(group, unit)),
  }));
}

function markWords({ label, marks }: Placement, unit: DrawingUnit): Note {
  const words = marks.map(({ text, side, at: [x] }) => `${text} (${side}, ${lengthText(x, unit)})`);
  return { letter: label, words: words.join('; ') };
}

/** What the builder writes on each piece, and how far from the left end. */
export function markNotes(part: Part, unit: DrawingUnit): readonly Block[] {
  const placed = part.places.filter(({ marks }) => marks.length > 0);
  if (placed.length === 0) return [];
  const pages = Array.from({ length: Math.ceil(placed.length / 8) }, (_, i) => placed.slice(i * 8, i * 8 + 8));
  return pages.map((page) => ({
    marks: noteMarks(
      'Marks to write, from the left end',
      page.map((place) => markWords(place, unit)),
    ),
    views: [],
    dimensions: [],
  }));
}
