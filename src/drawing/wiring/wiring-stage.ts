import type { Vector } from '../../core/geometry/shapes.ts';
import { pointsOn } from '../../core/track/element.ts';
import { type Sentence, spoken } from '../../core/units/say.ts';
import { UNIT_SIZE } from '../../core/wiring/unit-room.ts';
import type { Wire } from '../../core/wiring/wire.ts';
import type { WiringModel } from '../../core/wiring/wiring.ts';
import type { DrawingBook } from '../book.ts';
import type { DrawingOptions } from '../drawing.ts';
import { saidLength } from '../figures.ts';
import { boxAbout, boxesOf, linesOf, type Obstacles } from '../labels.ts';
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

/** The number both wires of a pair carry. */
export function pairNumber({ label }: Pick<Wire, 'label'>): string {
  return label.replace(/[a-z]$/, '');
}

/** A sentence in the reader's unit. */
export function saidWords({ options }: WiringAsk, sentence: Sentence): string {
  return spoken(sentence, (mm) => saidLength(mm, options.unit));
}

/** A reverser or a switch on the drawings: its own size, but never too small to see. */
export function unitMarks({ wiring }: WiringAsk, view: View): readonly Mark[] {
  return wiring.units.map(({ place: [x, y] }): Mark => {
    const [cx, cy] = onPaper(view, [x, y]);
    const [dx, dy] = UNIT_SIZE.map((size) => Math.max(1.5, size / view.scale / 2));
    const [hx, hy] = [dx ?? 1.5, dy ?? 1.5];
    const ring: readonly Spot[] = [
      [cx - hx, cy - hy],
      [cx + hx, cy - hy],
      [cx + hx, cy + hy],
      [cx - hx, cy + hy],
    ];
    return { kind: 'polygon', rings: [ring], fill: 'none', pen: 'edge', role: 'symbol' };
  });
}

/** Units are lettered on the drawings in their order. */
export function unitLetter(place: number): string {
  return `U${place + 1}`;
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
