import type { Part } from '../core/stock/part.ts';
import { type Block, emptyBlock, joined } from './block.ts';
import { chainMarks, type Link } from './chain.ts';
import type { Dimension } from './dimension.ts';
import { betweenText, lengthText } from './figures.ts';
import type { Spot } from './mark.ts';
import { type Ordinate, ordinateMarks, ordinatePitch } from './ordinates.ts';
import { same } from './part-groups.ts';
import { type Position, positionsOf, type Tally, tallied } from './part-sizing.ts';
import { type Stage, shownSizings } from './part-stage.ts';
import { type Rule, ruleSpot, type Side } from './rule.ts';
import { paperX, paperY } from './view.ts';

/** How long the extension lines of a tally would be inside the part if it stood on a side, mm of the model. */
function runTo(side: Side, { positions }: Tally, { length, width }: Part['blank']): number {
  const most = (pick: (position: Position) => number) => Math.max(...positions.map(pick));
  if (side === 'below') return most(({ from }) => from);
  if (side === 'above') return most(({ to }) => width - to);
  return side === 'left' ? most(({ from }) => from) : most(({ to }) => length - to);
}

/** Shortest extension lines win; the usual side when it is even. */
function sideOf(tally: Tally, order: readonly [Side, Side], part: Part): Side {
  return runTo(order[0], tally, part.blank) <= runTo(order[1], tally, part.blank) + same ? order[0] : order[1];
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

export type Sided = { readonly side: Side; readonly tallies: readonly Tally[] };

export function sidedTallies(stage: Stage): readonly Sided[] {
  const { part } = stage;
  const positions = shownSizings(stage).flatMap((sizing) =>
    sizing.features.flatMap((feature) => positionsOf(sizing, feature, part.blank)),
  );
  const onAxis = (axis: 'x' | 'y', order: readonly [Side, Side]): readonly Sided[] => {
    const tallies = tallied(positions.filter((position) => position.axis === axis));
    return order.map((side) => ({ side, tallies: tallies.filter((tally) => sideOf(tally, order, part) === side) }));
  };
  return [...onAxis('x', ['below', 'above']), ...onAxis('y', ['left', 'right'])];
}

/** The datum's own ordinate, 0, with the small circle of running dimensions (ISO 129-1). */
function datumOrdinate(stage: Stage, side: Side): Ordinate {
  const axis = side === 'below' || side === 'above' ? 'x' : 'y';
  return { u: axis === 'x' ? paperX(stage.view, 0) : paperY(stage.view, 0), inwards: 0, text: '0', bold: '' };
}

/** The overall size as the last ordinate, where both sides carry ordinates. */
function overallOrdinate(stage: Stage, axis: 'x' | 'y'): Ordinate {
  const { length, width } = stage.part.blank;
  const [at, u] = axis === 'x' ? [length, paperX(stage.view, length)] : [width, paperY(stage.view, width)];
  return { u, inwards: 0, text: lengthText(at, stage.unit), bold: '' };
}

function ordinateBlock(stage: Stage, { side, tallies }: Sided, overall: readonly Ordinate[]): Block {
  if (tallies.length === 0) return emptyBlock;
  const edge = edgesOfView(stage)[side];
  const starts = edge.axis === 'x' && stage.from > 0 ? [] : [datumOrdinate(stage, side)];
  const ordinates = [...starts, ...tallies.map((tally) => ordinateOf(stage, side, tally)), ...overall];
  const { window, view, part } = stage;
  const ends =
    edge.axis === 'x'
      ? { from: paperX(view, window.x0) - ordinatePitch / 2, to: paperX(view, window.x1) + ordinatePitch / 2 }
      : { from: paperY(view, part.blank.width) - 3, to: paperY(view, 0) + 3 };
  return {
    marks: ordinateMarks(edge.rule, ordinates, ends),
    views: [],
    dimensions: tallies.flatMap((tally) => ordinateDimensions(stage, edge, tally)),
  };
}

/** The overall length or width on a dimension line of its own. */
function overallBlock(stage: Stage, side: Side): Block {
  const edge = edgesOfView(stage)[side];
  const along = edge.axis === 'x';
  const size = along ? stage.part.blank.length : stage.part.blank.width;
  const text = betweenText(0, size, stage.unit);
  const at = (mm: number) => (along ? paperX(stage.view, mm) : paperY(stage.view, mm));
  const link: Link = { from: Math.min(at(0), at(size)), to: Math.max(at(0), at(size)), text };
  const ends = [ruleSpot(edge.rule, at(0), 10), ruleSpot(edge.rule, at(size), 10)] as const;
  return {
    marks: chainMarks({ rule: edge.rule, v: 10, starts: () => 0 }, [link]),
    views: [],
    dimensions: [overallDimension(stage, along ? 'length' : 'width', { text, ends })],
  };
}

function overallDimension(
  stage: Stage,
  measure: 'length' | 'width',
  { text, ends }: { readonly text: string; readonly ends: readonly [Spot, Spot] },
): Dimension {
  const size = measure === 'length' ? stage.part.blank.length : stage.part.blank.width;
  return { measure, of: [], text, view: stage.view.name, between: [0, size], ends, chain: null };
}

/** The figures of one axis: ordinates on the sides that have any, the overall size on a free side or as the last ordinate. */
export function axisBlock(stage: Stage, axis: 'x' | 'y', sided: readonly Sided[]): Block {
  const sides: readonly [Side, Side] = axis === 'x' ? ['below', 'above'] : ['left', 'right'];
  const mine = sided.filter(({ side }) => sides.includes(side));
  const isWhole = stage.from === 0 && stage.to >= stage.part.blank.length;
  const wanted = axis === 'x' ? isWhole : stage.from === 0;
  const free = sides.find((side) => mine.every((one) => one.side !== side || one.tallies.length === 0));
  if (free !== undefined) {
    return joined(...mine.map((one) => ordinateBlock(stage, one, [])), ...(wanted ? [overallBlock(stage, free)] : []));
  }
  const last = wanted ? [overallOrdinate(stage, axis)] : [];
  const blocks = mine.map((one) => ordinateBlock(stage, one, one.side === sides[0] ? last : []));
  return joined(...blocks, ...(wanted ? [overallAsOrdinate(stage, axis, sides[0])] : []));
}

function overallAsOrdinate(stage: Stage, axis: 'x' | 'y', side: Side): Block {
  const { rule } = edgesOfView(stage)[side];
  const { u, text } = overallOrdinate(stage, axis);
  const datum = axis === 'x' ? paperX(stage.view, 0) : paperY(stage.view, 0);
  const ends = [ruleSpot(rule, datum, 0), ruleSpot(rule, u, 0)] as const;
  return { ...emptyBlock, dimensions: [overallDimension(stage, axis === 'x' ? 'length' : 'width', { text, ends })] };
}

/** Whether more ordinates stand along the length than their side has room for. */
export function isCrowded(stage: Stage): boolean {
  const room = paperX(stage.view, stage.window.x1) - paperX(stage.view, stage.window.x0) + ordinatePitch;
  const counts = sidedTallies(stage).filter(({ side }) => side === 'below' || side === 'above');
  return counts.some(({ tallies }) => (tallies.length + 2) * ordinatePitch > room);
}
