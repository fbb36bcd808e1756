import { bounds } from '../../core/geometry/polygon.ts';
import type { Point } from '../../core/geometry/shapes.ts';
import { type Element, sharpest, stanceOn } from '../../core/track/element.ts';
import type { LaidTurnout } from '../../core/track/laid.ts';
import type { LaidLine } from '../../core/track/lay.ts';
import { stanceAlong } from '../../core/track/line.ts';
import { moveAlong, moved, type Stance } from '../../core/track/stretch.ts';
import { endStance, isEnd } from '../../core/track/turnout-shape.ts';
import { viewChains } from '../bench-chains.ts';
import { headedBlock } from '../bench-view.ts';
import { type Block, joined } from '../block.ts';
import type { DrawingUnit } from '../drawing.ts';
import { apartText, lengthText, saidLength, unitNames } from '../figures.ts';
import { boxAbout, boxesOf, type Labelled, labelAll, linesOf } from '../labels.ts';
import type { Mark } from '../mark.ts';
import { scaleText } from '../paper.ts';
import { areaMark, framePlans, loopMark, sites } from '../scenery/land-stage.ts';
import { onPaper, paperX, paperY, type View } from '../view.ts';
import { namedPoints, pointMarks, pointNames } from './set-out-points.ts';
import { type Drafted, linePoints, openEnd, pathMark, type TrackAsk, tick } from './track-stage.ts';

/** The track from above on its deck, the frame under it in thin dashes. */
export function trackPlan(ask: TrackAsk): Drafted {
  const { track, options, scale } = ask;
  const view: View = { name: 'track', scale, origin: [0, 0], breaks: [] };
  const decks = sites(ask.book).map(({ loop }) => loop);
  const marks = planMarks(ask, view);
  const points = track.lines.flatMap((line) => linePoints(line, scale));
  const { low, high } = bounds([...decks.flat(), ...points]);
  const box = { u0: low[0], v0: low[1], u1: high[0], v1: high[1] };
  const chains = viewChains({
    view,
    unit: options.unit,
    print: apartText,
    box,
    along: { name: 'track along', at: stops(ask, 0, [box.u0, box.u1]) },
    upright: { name: 'track across', at: stops(ask, 1, [box.v0, box.v1]), side: 'left' },
  });
  const block = joined({ marks, views: [view], dimensions: [] }, chains);
  const room = {
    x0: paperX(view, low[0]),
    x1: paperX(view, high[0]),
    y0: paperY(view, high[1]),
    y1: paperY(view, low[1]),
  };
  const headed = (own: Block) =>
    headedBlock(own, `Track from above ${scaleText(scale)}`, [
      `Middles of the track; radii and centres of arcs; heights over the deck in ${unitNames[options.unit]}.`,
      ...(openMarks(view, track.lines).length > 0 ? ['Hollow triangle: an open end.'] : []),
    ]);
  const labelled = () => {
    const labels = labelAll(labelsOf(ask, view), { lines: linesOf(block.marks), boxes: boxesOf(block.marks) }, [room]);
    return headed({ ...block, marks: [...block.marks, ...labels] });
  };
  return { plain: headed(block), labelled };
}

/** The deck, the frame under it, radii, turnouts and lines, in the order they are drawn. */
function planMarks({ book, track, scale }: TrackAsk, view: View): readonly Mark[] {
  const frame = framePlans(book, ['strut', 'side', 'end']).flatMap(({ areas }) => areas);
  return [
    ...sites(book).map(({ loop }) => areaMark(view, { outline: loop, holes: [] }, { pen: 'edge', fill: 'wood' })),
    ...frame.map(({ outline }) => loopMark(view, outline, { pen: 'hidden', role: 'hidden' })),
    ...arcsOf(track.lines).flatMap(({ centre, middle }) => radiusMarks(view, centre, middle)),
    ...track.turnouts.flatMap((turnout) => turnoutMarks(view, turnout, scale)),
    ...track.lines.map((line) => lineMark(view, line, scale)),
    ...track.lines.flatMap((line) => tickMarks(view, line)),
    ...openMarks(view, track.lines),
    ...pointMarks(namedPoints(track, book), view),
  ];
}

function lineMark(view: View, line: LaidLine, scale: number): Mark {
  const later = line.phase === 'later';
  return pathMark(view, linePoints(line, scale), { pen: later ? 'phantom' : 'cut-edge', role: 'feature' });
}

/** Ticks where named joints lie, a longer one at a buffer, a hollow triangle where a line ends open. */
function tickMarks(view: View, line: LaidLine): readonly Mark[] {
  const ends = line.ends === 'buffer' ? [tick(view, line.end, 2)] : [];
  return [...line.joints.map((joint) => tick(view, joint, 1.6)), ...ends];
}

/** Ends of lines to which nothing is joined. */
function openMarks(view: View, lines: readonly LaidLine[]): readonly Mark[] {
  const joined = new Set(lines.flatMap(({ from, ends }) => [from, ends]));
  return lines.flatMap(({ from, ends, id, start, end }) => [
    ...(from === null && !joined.has(`${id}.start`)
      ? [openEnd(view, { ...start, heading: start.heading + Math.PI })]
      : []),
    ...(ends === 'open' && !joined.has(`${id}.end`) ? [openEnd(view, end)] : []),
  ]);
}

/** Every way through a turnout, and ticks across its ends. */
function turnoutMarks(view: View, { shape, place }: LaidTurnout, scale: number): readonly Mark[] {
  const ways = shape.routes.map(({ from, way }) => {
    const out = endStance(shape, from, place);
    let at: Stance = { ...out, heading: out.heading + Math.PI };
    const points: Point[] = [[at.x, at.y]];
    for (const stretch of way) {
      const bend = Math.max(Math.abs(stretch.k0), Math.abs(stretch.k1));
      const count = bend === 0 ? 1 : Math.ceil(stretch.length / Math.sqrt((8 * 0.03 * scale) / bend));
      for (let i = 1; i <= count; i += 1) {
        const { x, y } = moved(at, moveAlong(stretch, (stretch.length * i) / count));
        points.push([x, y]);
      }
      at = moved(at, moveAlong(stretch, stretch.length));
    }
    return pathMark(view, points, { pen: 'edge', role: 'feature' });
  });
  const ends = Object.keys(shape.ends)
    .filter(isEnd)
    .map((end) => tick(view, endStance(shape, end, place), 1.2));
  return [...ways, ...ends];
}

type Arc = { readonly centre: Point; readonly middle: Point; readonly radius: number };

/** Arcs outside turnouts, each with its centre; arcs about one centre with one radius are told once. */
function arcsOf(lines: readonly LaidLine[]): readonly Arc[] {
  const arcs = lines
    .flatMap(({ elements }) => elements.filter(({ kind, turnout }) => kind === 'arc' && turnout === null))
    .map(arcOf);
  return arcs.filter((arc, i) => arcs.findIndex((one) => isSame(one, arc)) === i);
}

function arcOf(element: Element): Arc {
  const radius = sharpest(element);
  const side = element.stretch.k0 > 0 ? radius : -radius;
  const at = stanceOn(element, 0);
  const middle = stanceOn(element, element.length / 2);
  return {
    centre: [at.x - side * Math.sin(at.heading), at.y + side * Math.cos(at.heading)],
    middle: [middle.x, middle.y],
    radius,
  };
}

function isSame(a: Arc, b: Arc): boolean {
  return (
    Math.abs(a.radius - b.radius) < 1e-6 && Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]) < 1e-6
  );
}

/** A cross at the centre and a line to the arc. */
function radiusMarks(view: View, centre: Point, middle: Point): readonly Mark[] {
  const [x, y] = onPaper(view, centre);
  return [
    { kind: 'line', from: [x - 1.5, y], to: [x + 1.5, y], pen: 'centre', role: 'centre' },
    { kind: 'line', from: [x, y - 1.5], to: [x, y + 1.5], pen: 'centre', role: 'centre' },
    { kind: 'line', from: [x, y], to: onPaper(view, middle), pen: 'dimension', role: 'leader' },
  ];
}

/** Where the chains stop: edges, what the lines reach, arc centres, and where turnouts begin. */
function stops({ track, options }: TrackAsk, axis: 0 | 1, ends: readonly number[]): readonly number[] {
  const reach = track.lines.flatMap(({ extents: { x0, x1, y0, y1 } }) => (axis === 0 ? [x0, x1] : [y0, y1]));
  const centres = arcsOf(track.lines).map(({ centre }) => centre[axis]);
  const points = track.turnouts.map(({ place }) => (axis === 0 ? place.x : place.y));
  const inside = [...centres, ...points, ...reach].filter((at) => at >= Math.min(...ends) && at <= Math.max(...ends));
  // places nearer to another than a mm and a half of paper cannot be told apart
  const least = options.unit === 'mm' ? 1 : 1.5;
  const kept: number[] = [...ends];
  for (const at of inside) if (kept.every((other) => Math.abs(other - at) > least)) kept.push(at);
  return kept;
}

function labelsOf({ track, options: { unit }, book }: TrackAsk, view: View): readonly Labelled[] {
  const at = (text: string, x: number, y: number, by = 1.8): Labelled => ({
    text,
    box: boxAbout(onPaper(view, [x, y]), by),
  });
  const middle = ({ shape, place }: LaidTurnout) =>
    moved(place, { x: (shape.frogPoint ?? shape.ends.straight?.x ?? 60) / 2, y: 0, turn: 0 });
  const turnouts = track.turnouts.map((turnout) => at(turnout.id, middle(turnout).x, middle(turnout).y));
  const arcs = arcsOf(track.lines).map(({ centre, middle: [mx, my], radius }) =>
    at(`R ${lengthText(radius, unit)}`, centre[0] + (mx - centre[0]) * 0.45, centre[1] + (my - centre[1]) * 0.45),
  );
  const joints = track.lines.flatMap(({ joints: own }) => own.map(({ id, x, y }) => at(id, x, y)));
  const heights = track.lines.flatMap((line) => heightLabels(line, unit).map(({ text, x, y }) => at(text, x, y)));
  const names = track.lines.map((line) => nameAt(line)).map(({ text, x, y }) => at(text, x, y));
  const struts = framePlans(book, ['strut']).map(({ label, areas }) => {
    const spots = bounds(areas.flatMap(({ outline }) => outline).map((point) => onPaper(view, point)));
    return { text: label, box: { x0: spots.low[0], y0: spots.low[1], x1: spots.high[0], y1: spots.high[1] } };
  });
  return [
    ...turnouts,
    ...joints,
    ...arcs,
    ...pointNames(namedPoints(track, book), view),
    ...names,
    ...heights,
    ...struts,
  ];
}

/** A line's name stands by the middle of its first straight. */
function nameAt(line: LaidLine) {
  const first = line.elements.find(({ kind, turnout }) => kind === 'straight' && turnout === null);
  const stance = first === undefined ? line.start : stanceOn(first, first.length / 3);
  return { text: line.id, x: stance.x, y: stance.y };
}

/** Heights at the breaks of grade, `+18`; none for a line that is level on the deck. */
function heightLabels(line: LaidLine, unit: DrawingUnit) {
  const { breaks, curves } = line.profile;
  const told = curves.length === 0 && breaks.every(({ height }) => height === 0) ? [] : breaks;
  return told.flatMap(({ at, height }) => {
    const stance = at > line.length ? null : stanceAlong(line, at);
    const sign = height > 0 ? '+' : '';
    return stance === null ? [] : [{ text: `${sign}${lengthText(height, unit)}`, x: stance.x, y: stance.y }];
  });
}

/** What the plan shows, in words. */
export function planWords({ track }: Pick<TrackAsk, 'track'>, unit: DrawingUnit): string {
  const lines = track.lines.map(({ id, length, extents: { x0, x1, y0, y1 } }) => {
    const say = (mm: number) => saidLength(mm, unit);
    return `${id} is ${say(length)} long and reaches from ${say(x0)} to ${say(x1)} along and from ${say(y0)} to ${say(y1)} across.`;
  });
  const turnouts = track.turnouts.map(({ id, line }) => `${id} in ${line}`);
  const last = turnouts.length === 0 ? [] : [`Turnouts: ${turnouts.join(', ')}.`];
  return ['The track from above on its deck, over the struts.', ...lines, ...last].join(' ');
}
