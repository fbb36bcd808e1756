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

/** `out` is how far the base stands off the view. */
type Edge = { readonly rule: Rule; readonly axis: 'x' | 'y'; readonly out: number };

/** How far the figures along the length reach beyond the view at each end, mm; those of the width start beyond them. */
function overhang(stage: Stage, sided: readonly Sided[]): number {
  const room = paperX(stage.view, stage.window.x1) - paperX(stage.view, stage.window.x0);
  const counts = sided
    .filter(({ side }) => side === 'below' || side === 'above')
    .map(({ tallies }) => tallies.length + 2);
  return Math.max(0, (Math.max(0, ...counts) * ordinatePitch - ordinatePitch - room) / 2);
}

function edgesOfView(stage: Stage, sided: readonly Sided[]): Readonly<Record<Side, Edge>> {
  const { part, view, window } = stage;
  const out = overhang(stage, sided);
  return {
    below: { rule: { side: 'below', base: paperY(view, 0) }, axis: 'x', out: 0 },
    above: { rule: { side: 'above', base: paperY(view, part.blank.width) }, axis: 'x', out: 0 },
    left: { rule: { side: 'left', base: paperX(view, window.x0) - out }, axis: 'y', out },
    right: { rule: { side: 'right', base: paperX(view, window.x1) + out }, axis: 'y', out },
  };
}

function inwardsOf(stage: Stage, { rule: { side }, out }: Edge, tally: Tally): number {
  const { length, width } = stage.part.blank;
  const far = (pick: (position: Position) => number) => Math.max(...tally.positions.map(pick));
  if (side === 'below') return far(({ from }) => from) / stage.scale;
  if (side === 'above') return far(({ to }) => width - to) / stage.scale;
  const x = (at: number) => paperX(stage.view, Math.min(stage.window.x1, Math.max(stage.window.x0, at)));
  if (side === 'left') return out + far(({ from }) => x(from) - x(stage.window.x0));
  return out + far(({ to }) => x(Math.min(stage.window.x1, length)) - x(to));
}

function lettersOf(tally: Tally): string {
  return [...new Set(tally.positions.map(({ letter }) => letter))].join(' ');
}

function ordinateOf(stage: Stage, edge: Edge, tally: Tally): Ordinate {
  const u = edge.axis === 'x' ? paperX(stage.view, tally.at) : paperY(stage.view, tally.at);
  const text = isLetterOnly(tally) ? '' : lengthText(tally.at, stage.unit);
  return { u, inwards: inwardsOf(stage, edge, tally), text, bold: lettersOf(tally) };
}

function ordinateDimensions(stage: Stage, edge: Edge, tally: Tally): readonly Dimension[] {
  const { u, text } = ordinateOf(stage, edge, tally);
  const datum = edge.axis === 'x' ? paperX(stage.view, 0) : paperY(stage.view, 0);
  const common = {
    text,
    view: stage.view.name,
    between: [0, tally.at] as const,
    ends: [ruleSpot(edge.rule, datum, 0), ruleSpot(edge.rule, u, 0)] as const,
    chain: null,
  };
  return tally.positions.flatMap(({ measure, feature }): readonly Dimension[] =>
    measure === null ? [] : [{ ...common, measure, of: [feature] }],
  );
}

type Sided = { readonly side: Side; readonly tallies: readonly Tally[] };

function isLetterOnly({ positions }: Tally): boolean {
  return positions.every(({ measure }) => measure === null);
}

/** Letters without a figure join the side that has figures. */
function onSides(tallies: readonly Tally[], order: readonly [Side, Side], part: Part): readonly Sided[] {
  const figured = tallies.filter((tally) => !isLetterOnly(tally));
  const onSecond = figured.filter((tally) => sideOf(tally, order, part) === order[1]);
  const forLetters = onSecond.length > figured.length - onSecond.length ? order[1] : order[0];
  const sideFor = (tally: Tally) => (isLetterOnly(tally) ? forLetters : sideOf(tally, order, part));
  return order.map((side) => ({ side, tallies: tallies.filter((tally) => sideFor(tally) === side) }));
}

function sidedTallies(stage: Stage): readonly Sided[] {
  const { part } = stage;
  const positions = shownSizings(stage).flatMap((sizing) =>
    sizing.features.flatMap((feature) => positionsOf(sizing, feature, part.blank)),
  );
  const onAxis = (axis: 'x' | 'y') => tallied(positions.filter((position) => position.axis === axis));
  return [...onSides(onAxis('x'), ['below', 'above'], part), ...onSides(onAxis('y'), ['left', 'right'], part)];
}

/** The datum's own ordinate, 0. */
function datumOrdinate(stage: Stage, { axis, out }: Edge): Ordinate {
  return { u: axis === 'x' ? paperX(stage.view, 0) : paperY(stage.view, 0), inwards: out, text: '0', bold: '' };
}

/** The overall size as the last ordinate, where both sides carry ordinates. */
function overallOrdinate(stage: Stage, { axis, out }: Edge): Ordinate {
  const { length, width } = stage.part.blank;
  const [at, u] = axis === 'x' ? [length, paperX(stage.view, length)] : [width, paperY(stage.view, width)];
  return { u, inwards: out, text: lengthText(at, stage.unit), bold: '' };
}

/** A letter at the datum or at the far end stands with the figure that is there already. */
function together(ordinates: readonly Ordinate[]): readonly Ordinate[] {
  const figures = ordinates.filter(({ text }) => text !== '');
  const letters = ordinates.filter(({ text }) => text === '');
  const at = (u: number) => (one: Ordinate) => Math.abs(one.u - u) < 1e-6;
  const joinedFigures = figures.map((figure) => {
    const own = letters.filter(at(figure.u)).map(({ bold }) => bold);
    return { ...figure, bold: [figure.bold, ...own].filter((bold) => bold !== '').join(' ') };
  });
  return [...joinedFigures, ...letters.filter(({ u }) => !figures.some(at(u)))];
}

type Edges = Readonly<Record<Side, Edge>>;

function ordinateBlock(stage: Stage, { edge, tallies }: Edged, overall: readonly Ordinate[]): Block {
  if (tallies.length + overall.length === 0) return emptyBlock;
  const starts = edge.axis === 'x' && stage.from > 0 ? [] : [datumOrdinate(stage, edge)];
  const ordinates = together([...starts, ...tallies.map((tally) => ordinateOf(stage, edge, tally)), ...overall]);
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
function overallBlock(stage: Stage, edge: Edge): Block {
  const along = edge.axis === 'x';
  const size = along ? stage.part.blank.length : stage.part.blank.width;
  const text = betweenText(0, size, stage.unit);
  const at = (mm: number) => (along ? paperX(stage.view, mm) : paperY(stage.view, mm));
  const link: Link = { from: Math.min(at(0), at(size)), to: Math.max(at(0), at(size)), text };
  const ends = [ruleSpot(edge.rule, at(0), 10), ruleSpot(edge.rule, at(size), 10)] as const;
  return {
    marks: chainMarks({ rule: edge.rule, v: 10, starts: () => -edge.out }, [link]),
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

/** Whether this stretch of the part is the one that carries the overall size: the whole, or the piece at its end. */
function carriesOverall(stage: Stage, axis: 'x' | 'y'): 'line' | 'ordinate' | 'none' {
  const last = stage.to >= stage.part.blank.length;
  if (axis === 'y') return stage.from === 0 ? 'line' : 'none';
  if (!last) return 'none';
  return stage.from === 0 ? 'line' : 'ordinate';
}

type Edged = { readonly edge: Edge; readonly tallies: readonly Tally[] };

/** The figures of one axis: ordinates on the sides that have any, the overall size on a free side or as the last ordinate. */
function axisBlock(stage: Stage, edged: readonly [Edged, Edged]): Block {
  const [first, second] = edged;
  const overall = carriesOverall(stage, first.edge.axis);
  const free = edged.find(({ tallies }) => tallies.length === 0);
  if (overall !== 'ordinate' && free !== undefined) {
    const line = overall === 'line' ? [overallBlock(stage, free.edge)] : [];
    return joined(...edged.map((one) => ordinateBlock(stage, one, [])), ...line);
  }
  if (overall === 'none') return joined(...edged.map((one) => ordinateBlock(stage, one, [])));
  const at = first.tallies.length === 0 && second.tallies.length > 0 ? second : first;
  const last = [overallOrdinate(stage, at.edge)];
  return joined(
    ...edged.map((one) => ordinateBlock(stage, one, one === at ? last : [])),
    overallAsOrdinate(stage, at.edge),
  );
}

/** All figures that stand round the view. */
export function figuresBlock(stage: Stage): Block {
  const sided = sidedTallies(stage);
  const edges: Edges = edgesOfView(stage, sided);
  const edged = (side: Side): Edged => ({
    edge: edges[side],
    tallies: sided.find((one) => one.side === side)?.tallies ?? [],
  });
  return joined(axisBlock(stage, [edged('below'), edged('above')]), axisBlock(stage, [edged('left'), edged('right')]));
}

function overallAsOrdinate(stage: Stage, edge: Edge): Block {
  const { u, text } = overallOrdinate(stage, edge);
  const datum = edge.axis === 'x' ? paperX(stage.view, 0) : paperY(stage.view, 0);
  const ends = [ruleSpot(edge.rule, datum, 0), ruleSpot(edge.rule, u, 0)] as const;
  return {
    ...emptyBlock,
    dimensions: [overallDimension(stage, edge.axis === 'x' ? 'length' : 'width', { text, ends })],
  };
}
