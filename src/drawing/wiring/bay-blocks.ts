import { rectangle } from '../../core/geometry/polygon.ts';
import type { Point, Vector } from '../../core/geometry/shapes.ts';
import { benchWalls } from '../../core/wiring/bench-bays.ts';
import type { PlaceBelow } from '../../core/wiring/places.ts';
import { bayName } from '../../core/wiring/routing/bays.ts';
import { headedBlock } from '../bench-view.ts';
import type { Block } from '../block.ts';
import { saidLength } from '../figures.ts';
import { type Labelled, labelAll } from '../labels.ts';
import type { Mark } from '../mark.ts';
import { smallText, textWidth, wrapped } from '../text.ts';
import { onPaper, type View } from '../view.ts';
import { type Bundle, bundlesOf, gathered } from './bundles.ts';
import { mirrored } from './mirrored.ts';
import { bundleLabels, DOT, endLabels } from './pair-numbers.ts';
import { spaceName } from './space-name.ts';
import {
  APART,
  filledDot,
  holeMark,
  namedSpots,
  obstaclesOf,
  pairsOf,
  supplyMarks,
  supplySpot,
  unbroken,
  unitMarks,
  WIRE_PENS,
  type WiringAsk,
} from './wiring-stage.ts';

/** How far beyond its walls a bay's picture shows the wires, mm. */
const MARGIN = 25;
/** The widest line of words over a bay, mm of paper. */
const WORDS = 78;

/** Each bay that has something under it, alone, as one sees it from below, with its wires' numbers and its boards. */
export function bayBlocks(ask: WiringAsk): readonly Block[] {
  const used = ask.wiring.places.filter(
    ({ bus, feeders, loads, holes, units }) => bus || feeders.length + loads.length + holes.length + units.length > 0,
  );
  return used.map((place) => bayBlock(ask, place));
}

function bayBlock(ask: WiringAsk, place: PlaceBelow): Block {
  const lines = bayWords(ask, place).flatMap((words) => wrapped(words, WORDS, { size: smallText, weight: 'regular' }));
  return headedBlock(mirrored(bayPicture(ask, place)), bayName(place.bay), lines);
}

/** A bay from above, before it is turned over. */
export function bayPicture(ask: WiringAsk, place: PlaceBelow): Block {
  const view: View = { name: place.bay, scale: ask.scale, origin: [0, 0], breaks: [] };
  const marks = bayMarks(ask, place, view);
  const [[x0, y1], [x1, y0]] = [onPaper(view, place.low), onPaper(view, place.high)];
  const outer = { x0: x0 - 12, x1: x1 + 12, y0: y0 - 8, y1: y1 + 8 };
  const walls = wallLabels(ask, place, view);
  const labels = labelAll([...bayLabels(ask, place, view), ...walls], obstaclesOf(marks), [{ x0, x1, y0, y1 }, outer]);
  return { marks: [...marks, ...labels], views: [], dimensions: [] };
}

/** What is said over a bay's picture. */
function bayWords({ book, options, wiring }: WiringAsk, place: PlaceBelow): readonly string[] {
  const { bench, below, busHeight, loads, turnouts, units } = place;
  const said = (mm: number) => unbroken(saidLength(mm, options.unit));
  const deck = book.benches.find(({ id }) => id === bench)?.sideTop ?? null;
  const under = busHeight === null || deck === null ? '' : `, ${said(deck - busHeight)} under the deck`;
  const screwed = wiring.units.flatMap(({ id }, i) => (units.includes(id) ? [`U${i + 1}`] : []));
  return [
    ...(busHeight === null ? [] : [`bus ${said(busHeight)} above the floor${under}`]),
    ...listed('turnouts overhead', turnouts),
    ...listed('loads', loads),
    ...listed('screwed up', screwed),
    ...listed(
      'keep clear, above the floor',
      below.map(({ from, id, to }) => `${spaceName(id)} ${said(from)} to ${said(to)}`),
    ),
  ];
}

function listed(what: string, names: readonly string[]): readonly string[] {
  return names.length === 0 ? [] : [`${what}: ${names.join('; ')}`];
}

/** A bay's walls, the wires in it, its holes, and what is screwed up there. */
function bayMarks(ask: WiringAsk, place: PlaceBelow, view: View): readonly Mark[] {
  const ring = rectangle(place.low, place.high).map((p) => onPaper(view, p));
  const outline: Mark = { kind: 'polygon', rings: [ring], fill: 'none', pen: 'dimension', role: 'outline' };
  const box = widened(place);
  const wires = pairsOf(ask.wiring).flatMap(({ kind, path }) =>
    clippedPath(path, box).map(
      ([from, to]): Mark => ({
        ...{ kind: 'line', from: onPaper(view, from), to: onPaper(view, to) },
        ...{ pen: WIRE_PENS[kind], role: 'feature' },
      }),
    ),
  );
  const dots = endsIn(ask, place).map(({ at }) => filledDot(onPaper(view, at), DOT));
  const holes = ask.wiring.holes
    .filter(({ id }) => place.holes.includes(id))
    .map(({ at: [x, y] }) => holeMark(view, [x, y]));
  const units = ask.wiring.units.filter(({ id }) => place.units.includes(id));
  const start = supplySpot(ask);
  const supply = start !== null && isIn(place, start) ? supplyMarks(ask, view) : [];
  const symbols = unitMarks({ ...ask, wiring: { ...ask.wiring, units } }, view);
  return [outline, ...wires, ...dots, ...supply, ...holes, ...symbols];
}

/** Where thin pairs end in a bay. */
function endsIn({ wiring }: WiringAsk, place: PlaceBelow) {
  return pairsOf(wiring).flatMap((wire) => {
    const last = wire.path[wire.path.length - 1];
    if (wire.kind === 'bus' || last === undefined || !isIn(place, [last[0], last[1]])) return [];
    return [{ wire, at: [last[0], last[1]] as const }];
  });
}

/** The numbers of the pairs in a bay, its holes and its units. */
function bayLabels(ask: WiringAsk, place: PlaceBelow, view: View): readonly Labelled[] {
  const box = widened(place);
  const inside = bundlesOf(ask.wiring).flatMap(({ numbers, straights }) =>
    straights.flatMap(([from, to]): readonly Bundle[] => {
      const pieces = clippedPath([toVector(from), toVector(to)], box);
      return pieces.length === 0 ? [] : [{ numbers, straights: pieces }];
    }),
  );
  const ends = endsIn(ask, place).map(({ at, wire }) => ({ wire, spot: onPaper(view, at) }));
  const holes = ask.wiring.holes.filter(({ id }) => place.holes.includes(id)).map(({ at }) => at);
  const shown = ([x, y]: Point) => isIn(place, [x, y]) || holes.some((at) => at[0] === x && at[1] === y);
  return [...endLabels(ends), ...bundleLabels(gathered(inside), view), ...namedSpots(ask, view, shown)];
}

/** What is written on the boards round a bay, each beside its wall. */
function wallLabels({ book }: WiringAsk, { high, low, bench }: PlaceBelow, view: View): readonly Labelled[] {
  const labels = new Map(book.parts.flatMap(({ places }) => places.map(({ id, label }) => [id, label])));
  const [[x0, y1], [x1, y0]] = [onPaper(view, low), onPaper(view, high)];
  const edges = [
    { axis: 0, at: low[0], box: { x0: x0 - 1, x1: x0 - 0.5, y0, y1 } },
    { axis: 0, at: high[0], box: { x0: x1 + 0.5, x1: x1 + 1, y0, y1 } },
    { axis: 1, at: low[1], box: { x0, x1, y0: y1 + 0.5, y1: y1 + 1 } },
    { axis: 1, at: high[1], box: { x0, x1, y0: y0 - 1, y1: y0 - 0.5 } },
  ] as const;
  const walls = benchWalls(book).filter((wall) => wall.bench === bench);
  return edges.flatMap(({ at, axis, box }): readonly Labelled[] => {
    const other = axis === 0 ? 1 : 0;
    const wall = walls.find(
      ({ along, faces, span }) =>
        (along === 'y') === (axis === 0) &&
        faces.some((face) => Math.abs(face - at) < 0.5) &&
        span[0] < (low[other] + high[other]) / 2 &&
        span[1] > (low[other] + high[other]) / 2,
    );
    const text = wall === undefined ? undefined : labels.get(wall.part);
    return text === undefined || textWidth(text, smallText) > WORDS / 2 ? [] : [{ text, box, apart: APART }];
  });
}

type Box = { readonly low: Point; readonly high: Point };

function isIn({ high, low }: Box, [x, y]: Point): boolean {
  return x > low[0] && x < high[0] && y > low[1] && y < high[1];
}

function toVector([x, y]: Point): Vector {
  return [x, y, 0];
}

function widened({ low, high }: Box): Box {
  return { low: [low[0] - MARGIN, low[1] - MARGIN], high: [high[0] + MARGIN, high[1] + MARGIN] };
}

/** The pieces of a path inside a box, from above (Liang and Barsky, 1984). */
export function clippedPath(path: readonly Vector[], { low, high }: Box): readonly (readonly [Point, Point])[] {
  return path.slice(1).flatMap((to, i) => {
    const from = path[i] ?? to;
    let [enter, leave] = [0, 1];
    for (const axis of [0, 1] as const) {
      const step = to[axis] - from[axis];
      if (step === 0 && (from[axis] < low[axis] || from[axis] > high[axis])) return [];
      if (step === 0) continue;
      const ends = [(low[axis] - from[axis]) / step, (high[axis] - from[axis]) / step];
      enter = Math.max(enter, Math.min(...ends));
      leave = Math.min(leave, Math.max(...ends));
    }
    const at = (share: number): Point => [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
    return leave - enter > 1e-9 && Math.hypot(to[0] - from[0], to[1] - from[1]) > 1e-6
      ? [[at(enter), at(leave)] as const]
      : [];
  });
}
