import { intersection } from '../core/geometry/booleans.ts';
import { rectangle } from '../core/geometry/polygon.ts';
import type { Point } from '../core/geometry/shapes.ts';
import { partOutline } from '../core/stock/outline.ts';
import type { Part } from '../core/stock/part.ts';
import { type Block, extentOf, joined } from './block.ts';
import { chainMarks, type Link } from './chain.ts';
import type { Dimension } from './dimension.ts';
import type { DrawingUnit } from './drawing.ts';
import { betweenText, lengthText } from './figures.ts';
import type { Mark } from './mark.ts';
import { type Ordinate, ordinateMarks } from './ordinates.ts';
import { breakMarks, clippedOutline, type Window } from './outline.ts';
import { boundsOf, type FeatureGroup, featureGroups } from './part-groups.ts';
import { featureMarks } from './part-marks.ts';
import { type Position, positionsOf, type Sizing, sizingOf, type Tally, tallied } from './part-sizing.ts';
import type { Rule, Side } from './rule.ts';
import { ruleSpot } from './rule.ts';
import { lettering, middleText } from './text.ts';
import { type Break, onPaper, paperX, paperY, type View } from './view.ts';

/** A part's true shape as it is asked for: at a scale, shortened or in a window. */
export type PartViewAsk = {
  readonly part: Part;
  readonly unit: DrawingUnit;
  readonly scale: number;
  readonly breaks: readonly Break[];
  /** from and to along the part's length; the whole part when 0 and its length */
  readonly from: number;
  readonly to: number;
  readonly heading: string;
};

type Stage = PartViewAsk & { readonly view: View; readonly window: Window; readonly sizings: readonly Sizing[] };

function stageOf(ask: PartViewAsk): Stage {
  const view: View = {
    name: `face ${ask.from}`,
    scale: ask.scale,
    origin: [-ask.from / ask.scale, 0],
    breaks: ask.breaks,
  };
  const window: Window = { x0: ask.from, x1: ask.to, y0: 0, y1: ask.part.blank.width };
  const sizings = featureGroups(ask.part).map((group) => sizingOf(group, ask.part.blank, ask.scale));
  return { ...ask, view, window, sizings };
}

function shapeMarks({ part, view, window }: Stage): readonly Mark[] {
  const outline = partOutline(part);
  const open = [
    ...(window.x0 > 0 ? (['x0'] as const) : []),
    ...(window.x1 < part.blank.length ? (['x1'] as const) : []),
  ];
  const loops = [outline.outline, ...outline.holes];
  const pieces =
    open.length === 0 ? [outline] : intersection(loops, [rectangle([window.x0, window.y0], [window.x1, window.y1])]);
  return pieces.flatMap((piece) => clippedOutline(view, piece, { window, open }));
}

/** Features whose near edge lies in the window. */
function shownSizings({ sizings, part, from, to }: Stage): readonly Sizing[] {
  const last = to >= part.blank.length;
  return sizings.map((sizing) => ({
    ...sizing,
    features: sizing.features.filter((feature) => {
      const { x0 } = boundsOf(feature, part.blank);
      return x0 >= from && (x0 < to || last);
    }),
  }));
}

function sideOf(position: Position, part: Part): Side {
  const { length, width } = part.blank;
  if (position.axis === 'x') return width - position.to < position.from ? 'above' : 'below';
  return length - position.to < position.from ? 'right' : 'left';
}

type Edge = { readonly rule: Rule; readonly axis: 'x' | 'y' };

function edgesOfView({ part, view, window }: Stage): Readonly<Record<Side, Edge>> {
  return {
    below: { rule: { side: 'below', base: paperY(view, 0) }, axis: 'x' },
    above: { rule: { side: 'above', base: paperY(view, part.blank.width) }, axis: 'x' },
    left: { rule: { side: 'left', base: paperX(view, window.x0) }, axis: 'y' },
    right: { rule: { side: 'right', base: paperX(view, window.x1) }, axis: 'y' },
  };
}

function inwardsOf(stage: Stage, side: Side, tally: Tally): number {
  const { length, width } = stage.part.blank;
  const far = (pick: (position: Position) => number) => Math.max(...tally.positions.map(pick));
  if (side === 'below') return far(({ from }) => from) / stage.scale;
  if (side === 'above') return far(({ to }) => width - to) / stage.scale;
  const x = (at: number) => paperX(stage.view, Math.min(stage.window.x1, Math.max(stage.window.x0, at)));
  if (side === 'left') return far(({ from }) => x(from) - x(stage.window.x0));
  return far(({ to }) => x(Math.min(stage.window.x1, length)) - x(to));
}

function lettersOf(tally: Tally): string {
  return [...new Set(tally.positions.map(({ letter }) => letter))].join(' ');
}

function ordinateOf(stage: Stage, side: Side, tally: Tally): Ordinate {
  const axis = side === 'below' || side === 'above' ? 'x' : 'y';
  const u = axis === 'x' ? paperX(stage.view, tally.at) : paperY(stage.view, tally.at);
  return { u, inwards: inwardsOf(stage, side, tally), text: lengthText(tally.at, stage.unit), bold: lettersOf(tally) };
}

function ordinateDimensions(stage: Stage, edge: Edge, tally: Tally): readonly Dimension[] {
  const { u, text } = ordinateOf(stage, edge.rule.side, tally);
  const datum = edge.axis === 'x' ? paperX(stage.view, 0) : paperY(stage.view, 0);
  return tally.positions.map((position) => ({
    measure: position.measure,
    of: [position.feature],
    text,
    view: stage.view.name,
    between: [0, tally.at],
    ends: [ruleSpot(edge.rule, datum, 0), ruleSpot(edge.rule, u, 0)],
    chain: null,
  }));
}

type Sided = { readonly side: Side; readonly tallies: readonly Tally[] };

function sidedTallies(stage: Stage): readonly Sided[] {
  const positions = shownSizings(stage).flatMap((sizing) =>
    sizing.features.flatMap((feature) => positionsOf(sizing, feature, stage.part.blank)),
  );
  const inside = positions.filter(({ axis, at }) => axis === 'y' || (at >= stage.from && at <= stage.to));
  return (['below', 'above', 'left', 'right'] as const).map((side) => ({
    side,
    tallies: tallied(inside.filter((position) => sideOf(position, stage.part) === side)),
  }));
}

/** The datum's own ordinate, 0, with the small circle of running dimensions (ISO 129-1). */
function datumOrdinate(stage: Stage, side: Side): Ordinate {
  const axis = side === 'below' || side === 'above' ? 'x' : 'y';
  return { u: axis === 'x' ? paperX(stage.view, 0) : paperY(stage.view, 0), inwards: 0, text: '0', bold: '' };
}

function ordinateBlock(stage: Stage, { side, tallies }: Sided): Block {
  if (tallies.length === 0) return joined();
  const edge = edgesOfView(stage)[side];
  const starts = edge.axis === 'x' && stage.from > 0 ? [] : [datumOrdinate(stage, side)];
  const ordinates = [...starts, ...tallies.map((tally) => ordinateOf(stage, side, tally))];
  const ends =
    edge.axis === 'x'
      ? [paperX(stage.view, stage.window.x0), paperX(stage.view, stage.window.x1)]
      : [paperY(stage.view, stage.part.blank.width), paperY(stage.view, 0)];
  const bounds = { from: (ends[0] ?? 0) - 3, to: (ends[1] ?? 0) + 3 };
  return {
    marks: ordinateMarks(edge.rule, ordinates, bounds),
    views: [],
    dimensions: tallies.flatMap((tally) => ordinateDimensions(stage, edge, tally)),
  };
}

/** The overall length or width on a dimension line beyond everything that stands on its side. */
function overallBlock(stage: Stage, side: Side, beyond: number): Block {
  const edge = edgesOfView(stage)[side];
  const along = edge.axis === 'x';
  const size = along ? stage.part.blank.length : stage.part.blank.width;
  const text = betweenText(0, size, stage.unit);
  const [from, to] = along
    ? [paperX(stage.view, 0), paperX(stage.view, size)]
    : [paperY(stage.view, 0), paperY(stage.view, size)];
  const link: Link = { from: Math.min(from, to), to: Math.max(from, to), text };
  const v = Math.max(10, beyond + 5);
  return {
    marks: chainMarks({ rule: edge.rule, v, starts: () => 0 }, [link]),
    views: [],
    dimensions: [
      {
        measure: along ? 'length' : 'width',
        of: [],
        text,
        view: stage.view.name,
        between: [0, size],
        ends: [ruleSpot(edge.rule, from, v), ruleSpot(edge.rule, to, v)],
        chain: null,
      },
    ],
  };
}

/** The side with the fewest ordinates, the usual one first. */
function freeSide(sided: readonly Sided[], order: readonly [Side, Side]): Side {
  const count = (side: Side) => sided.find((one) => one.side === side)?.tallies.length ?? 0;
  return count(order[0]) <= count(order[1]) ? order[0] : order[1];
}

function reachOn(block: Block, stage: Stage, side: Side): number {
  const { x0, x1, y0, y1 } = extentOf(block.marks);
  const { base } = edgesOfView(stage)[side].rule;
  return { below: y1 - base, above: base - y0, left: base - x0, right: x1 - base }[side];
}

/** Places the sizes of the whole piece outside the ordinates that share their side. */
function withOverall(stage: Stage, sided: readonly Sided[], block: Block): Block {
  const whole = stage.from === 0 && stage.to >= stage.part.blank.length;
  const lengthSide = freeSide(sided, ['below', 'above']);
  const widthSide = freeSide(sided, ['left', 'right']);
  const reach = (side: Side) =>
    (sided.find((one) => one.side === side)?.tallies.length ?? 0) === 0 ? 0 : reachOn(block, stage, side);
  const width = stage.from === 0 || widthSide === 'right' ? [overallBlock(stage, widthSide, reach(widthSide))] : [];
  const length = whole ? [overallBlock(stage, lengthSide, reach(lengthSide))] : [];
  return joined(block, ...width, ...length);
}

/** The edge view at the right, with the thickness and which side is the face. */
function endView(stage: Stage, block: Block): Block {
  const { part, view, unit } = stage;
  const { thickness, width } = part.blank;
  const x = extentOf(block.marks).x1 + 12;
  const end: View = { name: `end ${stage.from}`, scale: view.scale, origin: [x, view.origin[1]], breaks: [] };
  const corners: readonly Point[] = [
    [0, 0],
    [thickness, 0],
    [thickness, width],
    [0, width],
  ];
  const top = paperY(end, width);
  const link: Link = { from: paperX(end, 0), to: paperX(end, thickness), text: betweenText(0, thickness, unit) };
  const rule: Rule = { side: 'above', base: top };
  const foot = paperY(end, 0) + 5;
  return {
    marks: [
      {
        kind: 'polygon',
        rings: [corners.map((corner) => onPaper(end, corner))],
        fill: 'wood',
        pen: 'edge',
        role: 'outline',
      },
      ...chainMarks({ rule, v: 10, starts: () => 0 }, [link]),
      lettering('face', [paperX(end, thickness) + 1.2, foot], { role: 'label' }),
      lettering('back', [paperX(end, 0) - 1.2, foot], { role: 'label', anchor: 'end' }),
    ],
    views: [end],
    dimensions: [
      {
        measure: 'thickness',
        of: [],
        text: link.text,
        view: end.name,
        between: [0, thickness],
        ends: [ruleSpot(rule, link.from, 10), ruleSpot(rule, link.to, 10)],
        chain: null,
      },
    ],
  };
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
  const sided = sidedTallies(stage);
  const placed = joined(shape, ...sided.map((one) => ordinateBlock(stage, one)));
  const full = withOverall(stage, sided, placed);
  const last = ask.to >= part.blank.length;
  return headed(last ? joined(full, endView(stage, full)) : full, ask.heading);
}

export function sizingsAt(part: Part, scale: number): readonly (Sizing & FeatureGroup)[] {
  return featureGroups(part).map((group) => sizingOf(group, part.blank, scale));
}
