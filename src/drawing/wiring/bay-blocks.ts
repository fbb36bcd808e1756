import { rectangle } from '../../core/geometry/polygon.ts';
import { standing, toWorld } from '../../core/geometry/pose.ts';
import type { Point, Vector } from '../../core/geometry/shapes.ts';
import type { PlaceBelow } from '../../core/wiring/places.ts';
import type { Wire } from '../../core/wiring/wire.ts';
import { headedBlock } from '../bench-view.ts';
import type { Block } from '../block.ts';
import { saidLength } from '../figures.ts';
import { boxAbout, type Labelled, labelAll } from '../labels.ts';
import type { Mark } from '../mark.ts';
import { onPaper, type View } from '../view.ts';
import { sharedNumbers } from './pair-numbers.ts';
import { obstaclesOf, pairsOf, unitLetter, unitMarks, WIRE_PENS, type WiringAsk } from './wiring-stage.ts';

/** How far beyond its walls a bay's picture shows the wires, mm. */
const MARGIN = 25;
const HOLE = 1.1;

/** Each bay that has something under it, alone, as seen from above, with its wires' numbers. */
export function bayBlocks(ask: WiringAsk): readonly Block[] {
  const used = ask.wiring.places.filter(
    ({ bus, feeders, loads, holes, units }) => bus || feeders.length + loads.length + holes.length + units.length > 0,
  );
  return used.map((place) => bayBlock(ask, place));
}

function bayBlock(ask: WiringAsk, place: PlaceBelow): Block {
  const view: View = { name: place.bay, scale: ask.scale, origin: [0, 0], breaks: [] };
  const box = boxOn(ask, place);
  const pairs = pairsOf(ask.wiring).flatMap((wire) => {
    const pieces = clippedPath(wire.path, widened(box));
    return pieces.length === 0 ? [] : [{ wire, pieces }];
  });
  const marks = bayMarks(ask, place, { view, box, pairs });
  const [[x0, y1], [x1, y0]] = [onPaper(view, box.low), onPaper(view, box.high)];
  const named = labelAll(bayLabels(ask, place, { view, pairs }), obstaclesOf(marks), [{ x0, x1, y0, y1 }]);
  const { busHeight } = place;
  const said = [
    busHeight === null ? '' : `bus ${saidLength(busHeight, ask.options.unit)} above the floor`,
    listed('turnouts', place.turnouts),
    listed('loads', place.loads),
    listed('screwed up', place.units),
    listed('keep clear of', place.spaces),
  ].filter((one) => one !== '');
  return headedBlock(
    { marks: [...marks, ...named], views: [view], dimensions: [] },
    place.bay.replace('bay.', 'Bay '),
    said,
  );
}

type Run = { readonly wire: Wire; readonly pieces: readonly (readonly [Point, Point])[] };
type Seen = { readonly view: View; readonly pairs: readonly Run[] };

/** A bay's walls, the wires in it, its holes, and what is screwed up there. */
function bayMarks(
  ask: WiringAsk,
  place: PlaceBelow,
  { box, pairs, view }: Seen & { readonly box: Box },
): readonly Mark[] {
  const ring = rectangle(box.low, box.high).map((p) => onPaper(view, p));
  const outline: Mark = { kind: 'polygon', rings: [ring], fill: 'none', pen: 'feature', role: 'outline' };
  const wires = pairs.flatMap(({ wire, pieces }) =>
    pieces.map(
      ([from, to]): Mark => ({
        ...{ kind: 'line', from: onPaper(view, from), to: onPaper(view, to) },
        ...{ pen: WIRE_PENS[wire.kind], role: 'feature' },
      }),
    ),
  );
  const holes = holesIn(ask, place).map(
    ({ at }): Mark => ({
      ...{ kind: 'circle', centre: onPaper(view, [at[0], at[1]]), radius: HOLE },
      ...{ fill: 'paper', pen: 'feature', role: 'symbol' },
    }),
  );
  const units = ask.wiring.units.filter(({ id }) => place.units.includes(id));
  return [outline, ...wires, ...holes, ...unitMarks({ ...ask, wiring: { ...ask.wiring, units } }, view)];
}

function holesIn({ wiring }: WiringAsk, place: PlaceBelow) {
  return wiring.holes.filter(({ id }) => place.holes.includes(id));
}

/** The numbers of the pairs where they leave the bay or end, its holes and its units. */
function bayLabels(ask: WiringAsk, place: PlaceBelow, { pairs, view }: Seen): readonly Labelled[] {
  const ends = pairs.flatMap(({ wire, pieces }) => {
    const last = pieces[pieces.length - 1]?.[1];
    return last === undefined ? [] : [{ wire, spot: onPaper(view, last) }];
  });
  const numbers = sharedNumbers(ends).map((one) => ({ text: one.numbers.join(' '), box: boxAbout(one.spot, 0.7) }));
  const bored = holesIn(ask, place).map(({ id, at }) => ({
    text: id.replace('hole-', 'H'),
    box: boxAbout(onPaper(view, [at[0], at[1]]), HOLE),
  }));
  const screwed = ask.wiring.units.flatMap(({ id, place: [x, y] }, i) =>
    place.units.includes(id) ? [{ text: unitLetter(i), box: boxAbout(onPaper(view, [x, y]), 1.5) }] : [],
  );
  return [...numbers, ...bored, ...screwed];
}

function listed(what: string, names: readonly string[]): string {
  return names.length === 0 ? '' : `${what}: ${names.slice(0, 2).join(', ')}`;
}

type Box = { readonly low: Point; readonly high: Point };

/** A bay's box in notebook coordinates; benches that stand square only turn it by quarters. */
function boxOn({ book }: WiringAsk, { bench, x, y }: PlaceBelow): Box {
  const place = book.benches.find(({ id }) => id === bench)?.place ?? { x: 0, y: 0, turn: 0 };
  const first = book.benches[0]?.place ?? place;
  const pose = standing([first.x, first.y], first.turn);
  const corners = [toWorld(pose, [x[0], y[0], 0]), toWorld(pose, [x[1], y[1], 0])];
  const [a, b] = corners;
  if (a === undefined || b === undefined) return { low: [0, 0], high: [0, 0] };
  return { low: [Math.min(a[0], b[0]), Math.min(a[1], b[1])], high: [Math.max(a[0], b[0]), Math.max(a[1], b[1])] };
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
