import { bounds } from '../../core/geometry/polygon.ts';
import { standing, toWorld } from '../../core/geometry/pose.ts';
import type { Point } from '../../core/geometry/shapes.ts';
import { stanceAlong } from '../../core/track/line.ts';
import { bayName, bayNumber } from '../../core/wiring/routing/bays.ts';
import { headedBlock } from '../bench-view.ts';
import type { Block } from '../block.ts';
import { boxAbout, firstFit, isApart, type Labelled, labelAll, type Obstacles, type Taken, taken } from '../labels.ts';
import type { Extent, Mark, Spot } from '../mark.ts';
import { scaleText } from '../paper.ts';
import { sites } from '../scenery/land-stage.ts';
import { smallText, textWidth } from '../text.ts';
import { onPaper, type View } from '../view.ts';
import { mirrored } from './mirrored.ts';
import { DOT, pairLabels } from './pair-numbers.ts';
import {
  APART,
  filledDot,
  flatPath,
  frameMarks,
  holeMark,
  namedSpots,
  oblong,
  obstaclesOf,
  pairsOf,
  supplyMarks,
  trackMarks,
  unitMarks,
  WIRE_PENS,
  type WiringAsk,
} from './wiring-stage.ts';

/** Half the width of a cut's two strokes on paper, and how far they stand apart, mm. */
const CUT = { half: 1.6, apart: 0.7 } as const;

/** The wires from above: frame, lines, bus, feeders, loads, holes and cuts, each with its number. */
export function wiresFromAbove(ask: WiringAsk): Block {
  const block = picture(ask);
  return headedBlock(block, `Wires from above ${scaleText(ask.scale)}`, [
    'Seen from above, the front at the bottom. The numbers along the bus are all pairs that run there.',
    ...unnamedWords(ask, block),
  ]);
}

/** The same picture as one sees it lying under the bench: left and right changed, words not. */
export function wiresFromBelow(ask: WiringAsk): Block {
  const block = picture(ask);
  return headedBlock(mirrored(block), `Wires from below ${scaleText(ask.scale)}`, [
    'As one lies under the bench and looks up, feet to the front: left and right have changed places.',
    ...unnamedWords(ask, block),
  ]);
}

/** What the picture had no room to name. */
function unnamedWords(ask: WiringAsk, { marks }: Block): readonly string[] {
  const named = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
  const lost = labelsOf(ask, viewAt(ask)).flatMap(({ text }) => (named.includes(text) ? [] : [text]));
  return lost.length === 0 ? [] : [`No room at this scale for ${lost.join('; ')}: see the bays.`];
}

function viewAt({ scale }: WiringAsk): View {
  return { name: 'wires', scale, origin: [0, 0], breaks: [] };
}

/** Room for names beside the benches, first what is nearer; mm of paper. */
const BESIDE = [
  [12, 8],
  [24, 16],
] as const;

/** Frame and wires with their numbers; no figures, since the parts' drawings have those. */
export function picture(ask: WiringAsk): Block {
  const view = viewAt(ask);
  const marks: readonly Mark[] = [
    ...frameMarks(ask.book, view),
    ...trackMarks(ask.book, view),
    ...wireMarks(ask, view),
    ...supplyMarks(ask, view),
    ...unitMarks(ask, view),
    ...plugMarks(ask, view),
    ...ask.wiring.holes.map(({ at: [x, y] }) => holeMark(view, [x, y])),
    ...cutMarks(ask, view),
  ];
  const room = roomOf(ask, view);
  const outer = BESIDE.map(([x, y]) => ({ x0: room.x0 - x, x1: room.x1 + x, y0: room.y0 - y, y1: room.y1 + y }));
  const labels = labelAll(labelsOf(ask, view), obstaclesOf(marks), [room, ...outer]);
  const bays = bayMarks(ask, view, obstaclesOf([...marks, ...labels]));
  return { marks: [...marks, ...labels, ...bays], views: [], dimensions: [] };
}

/** Which edge of each bench is its front. */
function frontLabels({ book }: WiringAsk, view: View): readonly Labelled[] {
  return book.benches.map(({ id, length, place }) => {
    const pose = standing([place.x, place.y], place.turn);
    const [[ax, ay], [bx, by]] = [toWorld(pose, [0, 0, 0]), toWorld(pose, [length, 0, 0])];
    const [from, to] = [onPaper(view, [ax, ay]), onPaper(view, [bx, by])];
    const box = {
      ...{ x0: Math.min(from[0], to[0]), x1: Math.max(from[0], to[0]) },
      ...{ y0: Math.min(from[1], to[1]), y1: Math.max(from[1], to[1]) },
    };
    return { text: book.benches.length === 1 ? 'front' : `front of ${id}`, box, apart: APART };
  });
}

/** The name of every bay, somewhere clear in it; its number alone where the whole name has no room. */
function bayMarks({ wiring }: WiringAsk, view: View, crowd: Obstacles): readonly Mark[] {
  const clear = taken(crowd);
  return wiring.places.flatMap((place): readonly Mark[] => {
    const [[x0, y1], [x1, y0]] = [onPaper(view, place.low), onPaper(view, place.high)];
    const names = [bayName(place.bay), `Bay ${bayNumber(place.bay)}`];
    const marks = names.flatMap((name) => nameInside(name, { x0, x1, y0, y1 }, clear) ?? []);
    return marks.slice(0, 1);
  });
}

/** A name somewhere clear in a box, its corners first; null where it has no room. */
function nameInside(name: string, { x0, x1, y0, y1 }: Extent, clear: Taken): Mark | null {
  const [wide, tall] = [textWidth(name, smallText, 'bold') / 2 + 1.5, smallText / 2 + 1.5];
  const [across, down] = [x1 - x0 - 2 * wide, y1 - y0 - 2 * tall];
  if (across < 0 || down < 0) return null;
  const shares = [0, 1, 0.5, 0.25, 0.75, 0.12, 0.88, 0.37, 0.63];
  const spots = shares.flatMap((v) => shares.map((u): Spot => [x0 + wide + across * u, y0 + tall + down * v]));
  const mark = firstFit(name, spots, (own) => isApart(own, clear));
  return mark === null ? null : { ...mark, weight: 'regular' };
}

function roomOf({ book }: WiringAsk, view: View): Extent {
  const { low, high } = bounds(sites(book).flatMap(({ loop }) => loop));
  const [[x0, y1], [x1, y0]] = [onPaper(view, low), onPaper(view, high)];
  return { x0, x1, y0, y1 };
}

function wireMarks({ wiring }: WiringAsk, view: View): readonly Mark[] {
  return pairsOf(wiring).flatMap(({ kind, path }): readonly Mark[] => {
    const points = flatPath(view, path);
    const last = points[points.length - 1];
    const end: readonly Mark[] = kind === 'bus' || last === undefined ? [] : [filledDot(last, DOT)];
    return points.length < 2 ? end : [{ kind: 'polyline', points, pen: WIRE_PENS[kind], role: 'feature' }, ...end];
  });
}

/** A plug between benches, as large as can be seen. */
function plugMarks({ wiring }: WiringAsk, view: View): readonly Mark[] {
  return wiring.connectors.map(({ at: [x, y] }) => oblong(onPaper(view, [x, y]), [1.5, 1], 'paper'));
}

/** Two strokes across the track, one where only a frog's rail is cut, as near as the drawing's scale shows them. */
function cutMarks({ book, wiring }: WiringAsk, view: View): readonly Mark[] {
  return wiring.gaps.flatMap(({ line, at, rails }): readonly Mark[] => {
    const spots = cutSpots(book, line, at);
    if (spots === null) return [];
    const [centre, ahead] = spots.map((point) => onPaper(view, point));
    if (centre === undefined || ahead === undefined) return [];
    const long = Math.hypot(ahead[0] - centre[0], ahead[1] - centre[1]) || 1;
    const [ux, uy] = [(ahead[0] - centre[0]) / long, (ahead[1] - centre[1]) / long];
    const strokes = rails === 'both' ? [-CUT.apart / 2, CUT.apart / 2] : [0];
    return strokes.map((off): Mark => {
      const middle: Spot = [centre[0] + ux * off, centre[1] + uy * off];
      return {
        kind: 'line',
        from: [middle[0] - uy * CUT.half, middle[1] + ux * CUT.half],
        to: [middle[0] + uy * CUT.half, middle[1] - ux * CUT.half],
        pen: 'feature',
        role: 'symbol',
      };
    });
  });
}

/** A place on a line and one a little farther on. */
function cutSpots(book: WiringAsk['book'], line: string, at: number): readonly [Point, Point] | null {
  const laid = book.track?.lines.find(({ id }) => id === line);
  if (laid === undefined) return null;
  const step = at + 5 <= laid.length ? 5 : -5;
  const [here, next] = [placeOn(laid, at), placeOn(laid, at + step)];
  return here === null || next === null ? null : [here, next];
}

function placeOn(line: Parameters<typeof stanceAlong>[0], at: number): Point | null {
  const stance = stanceAlong(line, at);
  return stance === null ? null : [stance.x, stance.y];
}

function labelsOf(ask: WiringAsk, view: View): readonly Labelled[] {
  const { book, wiring } = ask;
  const cuts = wiring.gaps.flatMap(({ id, line, at }): readonly Labelled[] => {
    const spots = cutSpots(book, line, at);
    if (spots === null) return [];
    return [{ text: id.replace('gap-', 'G'), box: boxAbout(onPaper(view, spots[0]), CUT.half), apart: APART }];
  });
  return [...namedSpots(ask, view, () => true), ...pairLabels(wiring, view), ...cuts, ...frontLabels(ask, view)];
}
