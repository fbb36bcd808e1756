import type { Part } from '../core/stock/part.ts';
import { type Block, extentOf, joined } from './block.ts';
import type { Mark } from './mark.ts';
import { mateMarks } from './mate-marks.ts';
import { breakMarks, clippedOutline, within } from './outline.ts';
import { endView } from './part-end.ts';
import { figuresBlock } from './part-figures.ts';
import { featureMarks } from './part-marks.ts';
import { type PartViewAsk, type Stage, shownSizings, stageOf } from './part-stage.ts';
import { outlineOf } from './scene.ts';
import { lettering, middleText } from './text.ts';
import { upMarks } from './up-arrow.ts';

function shapeMarks({ part, view, window }: Stage): readonly Mark[] {
  const outline = outlineOf(part);
  const open = [
    ...(window.x0 > 0 ? (['x0'] as const) : []),
    ...(window.x1 < part.blank.length ? (['x1'] as const) : []),
  ];
  const pieces = open.length === 0 ? [outline] : within(outline, window);
  return pieces.flatMap((piece) => clippedOutline(view, piece, { window, open }));
}

/**
 * A face that looks inwards shows the piece the other way round than a reader before the bench sees it: said where an
 * end mark would else look wrong.
 */
function turnedWords({ blank, places }: Part): readonly string[] {
  const ends = (places[0]?.marks ?? []).filter(({ kind, text }) => kind === 'end' && /^(left|right)$/.test(text));
  const turned = ends.find(({ text, at: [x] }) => (text === 'left') === x > blank.length / 2);
  return turned === undefined
    ? []
    : [`Its face looks inwards: where it stands, the ${turned.text} end is the one marked ${turned.text}.`];
}

function headed(block: Block, heading: string, words: readonly string[]): Block {
  const { x0, y0 } = extentOf(block.marks);
  const lines = words.map((line, i) => lettering(line, [x0, y0 - 4 - (words.length - 1 - i) * 4.6]));
  const y = y0 - 4 - words.length * 4.8;
  const mark = lettering(heading, [x0, y], { size: middleText, weight: 'bold', role: 'label' });
  return { ...block, marks: [...block.marks, mark, ...lines] };
}

/** A view of a part, and which marks to write stand on it: their keys, and `up` for the arrow. */
export type PartView = Block & { readonly written: readonly string[] };

/** The true shape of a part, or of a stretch of it, with everything that fixes where its features are. */
export function partViewBlock(ask: PartViewAsk): PartView {
  const stage = stageOf(ask);
  const { part, view, window } = stage;
  const shown = shownSizings(stage).flatMap(({ features }) => features);
  const shape: Block = {
    marks: [
      ...shapeMarks(stage),
      ...shown.flatMap((feature) => featureMarks(view, feature, { blank: part.blank, window })),
      ...breakMarks(view, 0, part.blank.width),
    ],
    views: [view],
    dimensions: [],
  };
  const figured = joined(shape, figuresBlock(stage));
  const mates = mateMarks(stage, figured.marks);
  const mated = [...figured.marks, ...mates.marks];
  const arrow = upMarks(stage, mated);
  const full = { ...figured, marks: [...mated, ...arrow] };
  const last = ask.to >= part.blank.length;
  const block = headed(last ? joined(full, endView(stage, full)) : full, ask.heading, turnedWords(part));
  return { ...block, written: [...mates.written, ...(arrow.length === 0 ? [] : ['up'])] };
}
