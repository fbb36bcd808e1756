import type { Point, Vector } from '../../core/geometry/shapes.ts';
import { pointsOn } from '../../core/track/element.ts';
import { type Sentence, spoken } from '../../core/units/say.ts';
import { plugTag } from '../../core/wiring/bench-joints.ts';
import { UNIT_SIZE } from '../../core/wiring/unit-room.ts';
import { unitTag } from '../../core/wiring/units.ts';
import type { Wire } from '../../core/wiring/wire.ts';
import type { WiringModel } from '../../core/wiring/wiring.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingOptions } from '../drawing.ts';
import { saidLength } from '../figures.ts';
import { boxAbout, boxesOf, type Labelled, linesOf, type Obstacles } from '../labels.ts';
import type { Mark, Spot } from '../mark.ts';
import type { PenName } from '../pens.ts';
import { framePlans, loopMark } from '../scenery/land-stage.ts';
import { onPaper, type View } from '../view.ts';

/** What a drawing of the wiring is made from. */
export type WiringAsk = {
  readonly book: DrawingBook;
  readonly wiring: WiringModel;
  readonly options: DrawingOptions;
  readonly scale: number;
};

/** Wires by dash: the bus whole and wide, feeders short dashes, leads and frogs dots, loads long dashes. */
export const WIRE_PENS: Readonly<Record<Wire['kind'], PenName>> = {
  bus: 'cut-edge',
  unit: 'edge',
  feeder: 'hidden',
  lead: 'phantom',
  load: 'phantom',
  frog: 'hidden',
};

/** A hole's radius on paper, and the room between numbers that would read as one, mm. */
const HOLE = 1.1;
export const APART = 1.6;

/** The number both wires of a pair carry. */
export function pairNumber({ label }: Pick<Wire, 'label'>): string {
  return label.replace(/[a-z]$/, '');
}

/** A sentence in the reader's unit. */
export function saidWords({ options }: WiringAsk, sentence: Sentence): string {
  return spoken(sentence, (mm) => saidLength(mm, options.unit));
}

/** A box about a spot of paper, by half its width and half its height. */
export function oblong([x, y]: Spot, [hx, hy]: Spot, fill: 'none' | 'paper' = 'none'): Mark {
  const ring: readonly Spot[] = [
    [x - hx, y - hy],
    [x + hx, y - hy],
    [x + hx, y + hy],
    [x - hx, y + hy],
  ];
  return { kind: 'polygon', rings: [ring], fill, pen: 'edge', role: 'symbol' };
}

/** A reverser or a switch on the drawings: its own size, but never too small to see. */
export function unitMarks({ wiring }: WiringAsk, view: View): readonly Mark[] {
  const [hx, hy] = [UNIT_SIZE[0], UNIT_SIZE[1]].map((size) => Math.max(1.5, size / view.scale / 2));
  return wiring.units.map(({ place: [x, y] }) => oblong(onPaper(view, [x, y]), [hx ?? 1.5, hy ?? 1.5]));
}

/** Half of the square that stands for the supply on paper, mm. */
const SUPPLY = 1.8;

/** Where the bus begins: the supply's lead comes up here. */
export function supplySpot({ wiring }: WiringAsk): Point | null {
  const [start] = wiring.bus?.path ?? [];
  return start === undefined ? null : [start[0], start[1]];
}

/** The supply as a square with a cross in it, where its lead meets the bus. */
export function supplyMarks(ask: WiringAsk, view: View): readonly Mark[] {
  const spot = supplySpot(ask);
  return spot === null ? [] : crossedSquare(onPaper(view, spot));
}

/** A filled dot about a spot of paper. */
export function filledDot(centre: Spot, radius: number): Mark {
  return { kind: 'circle', centre, radius, fill: 'ink', pen: 'feature', role: 'symbol' };
}

/** The sign of the supply about a spot of paper. */
export function crossedSquare(spot: Spot): readonly Mark[] {
  const { x0, x1, y0, y1 } = boxAbout(spot, SUPPLY);
  return [
    oblong(spot, [SUPPLY, SUPPLY], 'paper'),
    { kind: 'line', from: [x0, y0], to: [x1, y1], pen: 'feature', role: 'symbol' },
    { kind: 'line', from: [x0, y1], to: [x1, y0], pen: 'feature', role: 'symbol' },
  ];
}

/** Marks nearer than this on paper share one label, mm. */
const CROWDED = 2;

/** Names of the supply, holes, units and plugs, each beside its mark, those of one spot together. */
export function namedSpots(ask: WiringAsk, view: View, shown: (at: Point) => boolean): readonly Labelled[] {
  const { connectors, holes, units } = ask.wiring;
  const start = supplySpot(ask);
  const spots = [
    ...(start === null ? [] : [{ text: 'supply', at: start, by: SUPPLY }]),
    ...holes.map(({ at: [x, y], id }) => ({ text: id.replace('hole-', 'H'), at: [x, y] as const, by: HOLE })),
    ...units.map(({ id, place: [x, y] }) => ({ text: unitTag(units, id), at: [x, y] as const, by: 1.5 })),
    ...connectors.map(({ at: [x, y], id }) => ({ text: plugTag(id), at: [x, y] as const, by: 1.5 })),
  ];
  const groups: { readonly names: string[]; readonly at: Spot; readonly by: number }[] = [];
  for (const { at, by, text } of spots.filter((one) => shown(one.at))) {
    const spot = onPaper(view, at);
    const near = groups.find((one) => Math.hypot(one.at[0] - spot[0], one.at[1] - spot[1]) < CROWDED);
    if (near === undefined) groups.push({ names: [text], at: spot, by });
    else near.names.push(text);
  }
  return groups.map(({ at, by, names }) => ({ text: names.join(', '), box: boxAbout(at, by), apart: APART }));
}

/** What is written beside a bundle of pairs: their numbers, told apart by commas. */
export function numbersSaid(numbers: readonly string[]): string {
  return numbers.toSorted((a, b) => Number(a) - Number(b)).join(', ');
}

/** A wire's cross-section or gauge, short enough to stand in a row: `2.5 mm²`, `AWG 14`. */
export function wireSize({ book }: WiringAsk, stock: string): string {
  const name = book.stock?.find(({ id }) => id === stock)?.name ?? stock;
  return /(?:AWG \d+|[\d.]+ mm2)$/.exec(name)?.[0].replace('mm2', 'mm²') ?? name;
}

/** Words that stay on one line. */
export function unbroken(words: string): string {
  return words.replaceAll(' ', '\u00a0');
}

/** A hole on paper: a ring of one size at every scale; the drawing of its piece has its diameter. */
export function holeMark(view: View, at: Point): Mark {
  return { kind: 'circle', centre: onPaper(view, at), radius: HOLE, fill: 'paper', pen: 'feature', role: 'symbol' };
}

/** One wire of each pair: both run together. */
export function pairsOf({ wires }: WiringModel): readonly Wire[] {
  return wires.filter(({ label }) => !label.endsWith('b'));
}

/** Corners of a path from above that a drawing of this scale tells apart. */
export function flatPath(view: View, path: readonly Vector[]): readonly Spot[] {
  const spots = path.map(([x, y]) => onPaper(view, [x, y]));
  return spots.filter(
    (spot, i) => i === 0 || Math.hypot(spot[0] - (spots[i - 1]?.[0] ?? 0), spot[1] - (spots[i - 1]?.[1] ?? 0)) > 0.01,
  );
}

/** The frame that the wires hang in: boards on edge as thin outlines. */
export function frameMarks(book: DrawingBook, view: View): readonly Mark[] {
  return framePlans(book, ['strut', 'side', 'end', 'joist']).flatMap(({ areas }) =>
    areas.map(({ outline }) => loopMark(view, outline, { pen: 'dimension', role: 'outline' })),
  );
}

/** The middles of the lines, so that one knows what is overhead. */
export function trackMarks(book: DrawingBook, view: View): readonly Mark[] {
  return (book.track?.lines ?? []).map((line): Mark => {
    const points = line.elements.flatMap((element) =>
      pointsOn(element, { within: 0.2, apart: 200 }).map(({ point }) => onPaper(view, point)),
    );
    return { kind: 'polyline', points, pen: 'centre', role: 'centre' };
  });
}

/** What labels keep off: rings count as lines, so that a leader may end in one. */
export function obstaclesOf(marks: readonly Mark[]): Obstacles {
  const rings = marks.flatMap((mark) => {
    if (mark.kind !== 'circle') return [];
    const { x0, x1, y0, y1 } = boxAbout(mark.centre, mark.radius);
    const corners: readonly Spot[] = [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ];
    return corners.map((corner, i) => [corner, corners[(i + 1) % 4] ?? corner] as const);
  });
  return { lines: [...linesOf(marks), ...rings], boxes: boxesOf(marks.filter(({ kind }) => kind === 'text')) };
}
