import { bounds } from '../../core/geometry/polygon.ts';
import { viewChains } from '../bench-chains.ts';
import { headedBlock } from '../bench-view.ts';
import { type Block, joined } from '../block.ts';
import type { DrawingUnit } from '../drawing.ts';
import { apartText, saidLength } from '../figures.ts';
import { boxesOf, labelAll, linesOf } from '../labels.ts';
import type { Mark } from '../mark.ts';
import { scaleText } from '../paper.ts';
import { onPaper, paperX, paperY, type View } from '../view.ts';
import { heightLabels, litContours } from './contour-marks.ts';
import { areaMark, framePlans, type LandAsk, loopMark, sites } from './land-stage.ts';

/** The land from above: contours, water and boards over the frame that bears them. */
export function contourPlan(ask: LandAsk): Block {
  const { land, options, scale } = ask;
  const view: View = { name: 'contours', scale, origin: [0, 0], breaks: [] };
  const outlines = sites(ask.book).map(({ loop }) => loop);
  const { low, high } = bounds(outlines.flat());
  const box = { u0: low[0], v0: low[1], u1: high[0], v1: high[1] };
  const ground: readonly Mark[] = [
    ...outlines.map((outline) => areaMark(view, { outline, holes: [] }, { pen: 'edge', fill: 'wood' })),
    ...frameMarks(ask, view),
    ...waterMarks(ask, view),
    ...boardMarks(ask, view),
    ...litContours(view, land.contours),
    ...land.structures.map(({ corners }) => loopMark(view, corners, { pen: 'edge', role: 'outline' })),
    ...lineMarks(ask, view),
  ];
  const heights = heightLabels(view, land.contours, { unit: options.unit, taken: [] });
  const shape: Block = { marks: [...ground, ...heights], views: [view], dimensions: [] };
  const chains = viewChains({
    view,
    unit: options.unit,
    print: apartText,
    box,
    along: { name: 'land along', at: stops(ask, 0, [box.u0, box.u1]) },
    upright: { name: 'land across', at: stops(ask, 1, [box.v0, box.v1]), side: 'left' },
  });
  return headedBlock(named(joined(shape, chains), ask, view), `Land from above ${scaleText(scale)}`, [
    'Contours are heights of the finished ground from deck top; where layers of foam end is on their own templates.',
    'They are narrow towards the light at the upper left and wide in the shade.',
  ]);
}

/** Struts, sides and ends under the land, as hidden lines. */
function frameMarks({ book }: LandAsk, view: View): readonly Mark[] {
  return framePlans(book, ['strut', 'side', 'end']).flatMap(({ areas }) =>
    areas.map(({ outline }) => loopMark(view, outline, { pen: 'hidden', role: 'hidden' })),
  );
}

/** Water shaded, with level lines. */
function waterMarks({ land }: LandAsk, view: View): readonly Mark[] {
  return land.water.map(({ outline }) => areaMark(view, { outline, holes: [] }, { pen: 'edge', fill: 'shade' }));
}

/** The middle of every line of track. */
function lineMarks({ land }: LandAsk, view: View): readonly Mark[] {
  return land.lines.map(({ points }) => ({
    kind: 'polyline',
    points: points.map((point) => onPaper(view, point)),
    pen: 'centre',
    role: 'centre',
  }));
}

function boardMarks({ land }: LandAsk, view: View): readonly Mark[] {
  return land.masses
    .filter(({ of }) => of.startsWith('board.'))
    .map(({ outline }) => areaMark(view, { outline, holes: [] }, { pen: 'edge', fill: 'shade' }));
}

/** Where the chains stop: the edges, waters, and hilltops through which the sections run. */
function stops({ land }: LandAsk, axis: 0 | 1, ends: readonly number[]): readonly number[] {
  const water = land.water.flatMap(({ outline }) => {
    const { low, high } = bounds(outline);
    return [low[axis], high[axis]];
  });
  const buildings = land.structures.flatMap(({ corners }) => {
    const { low, high } = bounds(corners);
    return [low[axis], high[axis]];
  });
  const tops = land.sections.filter(({ from, to }) => from[axis] === to[axis]).map(({ from }) => from[axis]);
  return [...ends, ...water, ...buildings, ...tops].filter((at) => at >= Math.min(...ends) && at <= Math.max(...ends));
}

/** Names of waters, boards and struts, clear of the lines. */
function named(block: Block, ask: LandAsk, view: View): Block {
  const { low, high } = bounds(sites(ask.book).flatMap(({ loop }) => loop));
  const room = {
    x0: paperX(view, low[0]),
    x1: paperX(view, high[0]),
    y0: paperY(view, high[1]),
    y1: paperY(view, low[1]),
  };
  const boxOf = (points: readonly (readonly [number, number])[]) => {
    const spots = bounds(points.map((point) => onPaper(view, point)));
    return { x0: spots.low[0], y0: spots.low[1], x1: spots.high[0], y1: spots.high[1] };
  };
  const labels = [
    ...ask.land.water.map(({ id, outline }) => ({ text: id, box: boxOf(outline) })),
    ...ask.land.structures.map(({ id, corners }) => ({ text: id, box: boxOf(corners) })),
    ...framePlans(ask.book, ['strut']).map(({ label, areas }) => ({
      text: label,
      box: boxOf(areas.flatMap(({ outline }) => outline)),
    })),
  ];
  const marks = labelAll(labels, { lines: linesOf(block.marks), boxes: boxesOf(block.marks) }, [room]);
  return { ...block, marks: [...block.marks, ...marks] };
}

/** What the plan shows, in words. */
export function contourWords({ land }: Pick<LandAsk, 'land'>, unit: DrawingUnit): string {
  const rises =
    land.highest > 0
      ? `The ground rises to ${saidLength(land.highest, unit)} over the deck in ${land.layers.length} layers of foam.`
      : 'The ground is level.';
  const waters = land.water.map(({ id, under, bottom }) => {
    const cut = under.filter((one) => one.cut).map((one) => one.id);
    return `${id} is ${saidLength(-bottom, unit)} deep under the deck's top${cut.length === 0 ? '' : ` and cuts ${cut.join(' and ')}`}.`;
  });
  const buildings = land.structures.map(({ id, length, width }) => {
    return `${id} stands on ${saidLength(length, unit)} by ${saidLength(width, unit)}.`;
  });
  return ['The land from above with its contours over the struts.', rises, ...waters, ...buildings].join(' ');
}
