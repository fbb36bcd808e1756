import { rectangle } from '../core/geometry/polygon.ts';
import type { Polygon } from '../core/geometry/shapes.ts';
import { partOutline } from '../core/stock/outline.ts';
import { type Block, extentOf, joined } from './block.ts';
import { chainMarks, type Link } from './chain.ts';
import type { Dimension } from './dimension.ts';
import { betweenText } from './figures.ts';
import type { Mark } from './mark.ts';
import { mateMarks } from './mate-marks.ts';
import { breakMarks, clippedOutline, polygonMark, within } from './outline.ts';
import { figuresBlock } from './part-figures.ts';
import { featureMarks } from './part-marks.ts';
import { type PartViewAsk, type Stage, shownSizings, stageOf } from './part-stage.ts';
import { type Rule, ruleSpot } from './rule.ts';
import { lettering, middleText } from './text.ts';
import { upMarks } from './up-arrow.ts';
import { paperX, paperY, type View } from './view.ts';

function shapeMarks({ part, view, window }: Stage): readonly Mark[] {
  const outline = partOutline(part);
  const open = [
    ...(window.x0 > 0 ? (['x0'] as const) : []),
    ...(window.x1 < part.blank.length ? (['x1'] as const) : []),
  ];
  const pieces = open.length === 0 ? [outline] : within(outline, window);
  return pieces.flatMap((piece) => clippedOutline(view, piece, { window, open }));
}

/** The edge view at the right, with the thickness and which side is the face. */
function endView(stage: Stage, block: Block): Block {
  const { view, unit } = stage;
  const { thickness, width } = stage.part.blank;
  const x = extentOf(block.marks).x1 + 12;
  const end: View = { name: `end ${stage.from}`, scale: view.scale, origin: [x, view.origin[1]], breaks: [] };
  const shape: Polygon = { outline: rectangle([0, 0], [thickness, width]), holes: [] };
  const link: Link = { from: paperX(end, 0), to: paperX(end, thickness), text: betweenText(0, thickness, unit) };
  const rule: Rule = { side: 'above', base: paperY(end, width) };
  const foot = paperY(end, 0) + 5;
  const measured: Dimension = {
    measure: 'thickness',
    of: [],
    text: link.text,
    view: end.name,
    between: [0, thickness],
    ends: [ruleSpot(rule, link.from, 10), ruleSpot(rule, link.to, 10)],
    chain: null,
  };
  const marks = [
    polygonMark(end, shape, { pen: 'edge', fill: 'wood' }),
    ...chainMarks({ rule, v: 10, starts: () => 0 }, [link]),
    lettering('face', [paperX(end, thickness) + 1.2, foot], { role: 'label' }),
    lettering('back', [paperX(end, 0) - 1.2, foot], { role: 'label', anchor: 'end' }),
  ];
  return { marks, views: [end], dimensions: [measured] };
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
