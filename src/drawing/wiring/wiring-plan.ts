import { bounds } from '../../core/geometry/polygon.ts';
import type { Point } from '../../core/geometry/shapes.ts';
import { stanceAlong } from '../../core/track/line.ts';
import { headedBlock } from '../bench-view.ts';
import type { Block } from '../block.ts';
import { boxAbout, type Labelled, labelAll } from '../labels.ts';
import type { Extent, Mark, Spot } from '../mark.ts';
import { scaleText } from '../paper.ts';
import { sites } from '../scenery/land-stage.ts';
import { onPaper, type View } from '../view.ts';
import { mirrored } from './mirrored.ts';
import { pairNumbers } from './pair-numbers.ts';
import {
  flatPath,
  frameMarks,
  obstaclesOf,
  pairsOf,
  trackMarks,
  unitLetter,
  unitMarks,
  WIRE_PENS,
  type WiringAsk,
} from './wiring-stage.ts';

/** Half the width of a cut's two strokes on paper, and how far they stand apart, mm. */
const CUT = { half: 1.6, apart: 0.7 } as const;
const HOLE = 1.1;
const FEEDER = 0.7;

/** The wires from above: frame, lines, bus, feeders, loads, holes and cuts, each with its number. */
export function wiresFromAbove(ask: WiringAsk): Block {
  return headedBlock(picture(ask), `Wires from above ${scaleText(ask.scale)}`, legend);
}

/** The same picture as one sees it lying under the bench: left and right changed, words not. */
export function wiresFromBelow(ask: WiringAsk): Block {
  return headedBlock(mirrored(picture(ask)), `Wires from below ${scaleText(ask.scale)}`, legend);
}

const legend = [
  'Wide: bus. Dashed: feeders. Chain: lines, leads and loads. Rings: holes. Oblongs: reversers, switches, plugs.',
  'Two strokes: cut both rails; one: the rail of the frog.',
];

/** Frame and wires with their numbers; no figures, since the parts' drawings have those. */
export function picture(ask: WiringAsk): Block {
  const view: View = { name: 'wires', scale: ask.scale, origin: [0, 0], breaks: [] };
  const marks: readonly Mark[] = [
    ...frameMarks(ask.book, view),
    ...trackMarks(ask.book, view),
    ...wireMarks(ask, view),
    ...unitMarks(ask, view),
    ...plugMarks(ask, view),
    ...holeMarks(ask, view),
    ...cutMarks(ask, view),
  ];
  const room = roomOf(ask, view);
  const outer = { x0: room.x0 - 12, x1: room.x1 + 12, y0: room.y0 - 8, y1: room.y1 + 8 };
  const labels = labelAll(labelsOf(ask, view), obstaclesOf(marks), [room, outer]);
  return { marks: [...marks, ...labels], views: [], dimensions: [] };
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
    const end: readonly Mark[] =
      kind === 'bus' || last === undefined
        ? []
        : [{ kind: 'circle', centre: last, radius: FEEDER, fill: 'ink', pen: 'feature', role: 'symbol' }];
    return points.length < 2 ? end : [{ kind: 'polyline', points, pen: WIRE_PENS[kind], role: 'feature' }, ...end];
  });
}

function holeMarks({ wiring }: WiringAsk, view: View): readonly Mark[] {
  return wiring.holes.map(
    ({ at }): Mark => ({
      kind: 'circle',
      centre: onPaper(view, [at[0], at[1]]),
      radius: HOLE,
      fill: 'paper',
      pen: 'feature',
      role: 'symbol',
    }),
  );
}

/** A plug between benches, as large as can be seen. */
function plugMarks({ wiring }: WiringAsk, view: View): readonly Mark[] {
  return wiring.connectors.map(({ at }): Mark => {
    const [x, y] = onPaper(view, [at[0], at[1]]);
    const ring: readonly Spot[] = [
      [x - 1.5, y - 1],
      [x + 1.5, y - 1],
      [x + 1.5, y + 1],
      [x - 1.5, y + 1],
    ];
    return { kind: 'polygon', rings: [ring], fill: 'paper', pen: 'edge', role: 'symbol' };
  });
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

function labelsOf({ book, wiring }: WiringAsk, view: View): readonly Labelled[] {
  const ends = pairNumbers(wiring, view).map(
    ({ spot, numbers }): Labelled => ({ text: numbers.join(' '), box: boxAbout(spot, FEEDER) }),
  );
  const holes = wiring.holes.map(
    ({ id, at }): Labelled => ({ text: id.replace('hole-', 'H'), box: boxAbout(onPaper(view, [at[0], at[1]]), HOLE) }),
  );
  const cuts = wiring.gaps.flatMap(({ id, line, at }): readonly Labelled[] => {
    const spots = cutSpots(book, line, at);
    return spots === null ? [] : [{ text: id.replace('gap-', 'G'), box: boxAbout(onPaper(view, spots[0]), CUT.half) }];
  });
  const units = wiring.units.map(
    ({ place: [x, y] }, i): Labelled => ({ text: unitLetter(i), box: boxAbout(onPaper(view, [x, y]), 1.5) }),
  );
  const plugs = wiring.connectors.map(
    ({ at, id }): Labelled => ({ text: id.replace('plug-', 'P'), box: boxAbout(onPaper(view, [at[0], at[1]]), 1.5) }),
  );
  return [...ends, ...holes, ...cuts, ...units, ...plugs];
}
