import { partOutline } from '../core/stock/outline.ts';
import { type Block, extentOf, joined } from './block.ts';
import type { Mark } from './mark.ts';
import { mateMarks } from './mate-marks.ts';
import { breakMarks, clippedOutline, within } from './outline.ts';
import { endView } from './part-end.ts';
import { figuresBlock } from './part-figures.ts';
import { featureMarks } from './part-marks.ts';
import { type PartViewAsk, type Stage, shownSizings, stageOf } from './part-stage.ts';
import { lettering, middleText } from './text.ts';
import { upMarks } from './up-arrow.ts';

function shapeMarks({ part, view, window }: Stage): readonly Mark[] {
  const outline = partOutline(part);
  const open = [
    ...(window.x0 > 0 ? (['x0'] as const) : []),
    ...(window.x1 < part.blank.length ? (['x1'] as const) : []),
  ];
  const pieces = open.length === 0 ? [outline] : within(outline, window);
  return pieces.flatMap((piece) => clippedOutline(view, piece, { window, open }));
}

function headed(block: Block, heading: string): Block {
  const { x0, y0 } = extentOf(block.marks);
  const mark = lettering(heading, [x0, y0 - 4], { size: middleText, weight: 'bold', role: 'label' });
  return { ...block, marks: [...block.marks, mark] };
}

/** The true shape of a part, or of a stretch of it, with everything that fixes where its features are. */
export function partViewBlock(ask: PartViewAsk): Block {
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
  const mated = [...figured.marks, ...mateMarks(stage, figured.marks)];
  const full = { ...figured, marks: [...mated, ...upMarks(stage, mated)] };
  const last = ask.to >= part.blank.length;
  return headed(last ? joined(full, endView(stage, full)) : full, ask.heading);
}
