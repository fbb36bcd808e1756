import type { Point } from '../../core/geometry/shapes.ts';
import { curvatureOn } from '../../core/track/element.ts';
import type { LaidLine } from '../../core/track/lay.ts';
import { heightAt } from '../../core/track/profile.ts';
import { chainWithWhole, headedBlock } from '../bench-view.ts';
import { type Block, joined } from '../block.ts';
import type { DrawingUnit } from '../drawing.ts';
import { apartText, lengthText, saidLength } from '../figures.ts';
import { boxAbout, boxesOf, type Labelled, labelAll, linesOf } from '../labels.ts';
import type { Mark } from '../mark.ts';
import { scaleText } from '../paper.ts';
import { onPaper, paperX, paperY, type View } from '../view.ts';
import { type Drafted, pathMark, type TrackAsk } from './track-stage.ts';

/** Heights are drawn so many times larger than lengths. */
const EXAGGERATED = 10;
/** The strip that shows curves, mm of paper: its middle under the deck's line, and how far a curve steps out of it. */
const STRIP = { below: 13, step: 3.5 } as const;

/** A line's heights along its length, with its curves in a strip below. */
export function gradeProfile(ask: TrackAsk, line: LaidLine): Drafted {
  const { options, scale } = ask;
  const view: View = { name: `profile ${line.id}`, scale, origin: [0, 0], breaks: [] };
  const drawn = (at: number): Point => [at, EXAGGERATED * heightAt(line.profile, at)];
  const stops = stopsOf(line);
  const lowest = Math.min(0, ...stops.map((at) => drawn(at)[1]));
  const base = paperY(view, lowest) + STRIP.below + STRIP.step;
  const marks = [...heightMarks(view, line, drawn), curveStrip(view, line, paperY(view, lowest) + STRIP.below)];
  const chain = chainWithWhole({
    view,
    unit: options.unit,
    print: apartText,
    name: `${line.id} along`,
    side: 'below',
    stops,
    v: 10,
    base,
    opposite: paperY(view, Math.max(...stops.map((at) => drawn(at)[1]))),
  });
  const block = joined({ marks, views: [view], dimensions: [] }, chain);
  const room = {
    x0: paperX(view, 0) - 4,
    x1: paperX(view, line.length) + 4,
    y0: paperY(view, highest(line)) - 16,
    y1: base,
  };
  const headed = (own: Block) =>
    headedBlock(own, `Heights of ${line.id} ${scaleText(scale)}, ${EXAGGERATED} times higher`, [
      'Roadbed underside over the deck. The strip below steps up where the line curves left and down where it curves right.',
    ]);
  const labelled = () => {
    const wanted = labelsOf(line, { view, drawn, base, unit: options.unit });
    const labels = labelAll(wanted, { lines: linesOf(block.marks), boxes: boxesOf(block.marks) }, [room]);
    return headed({ ...block, marks: [...block.marks, ...labels] });
  };
  return { plain: headed(block), labelled };
}

/** The deck's line, the heights over it, and a line down from each break. */
function heightMarks(view: View, line: LaidLine, drawn: (at: number) => Point): readonly Mark[] {
  const down = (at: number): Mark => {
    const [from, to] = [onPaper(view, drawn(at)), onPaper(view, [at, 0])];
    return { kind: 'line', from, to, pen: 'dimension', role: 'leader' };
  };
  const deck: readonly Point[] = [
    [0, 0],
    [line.length, 0],
  ];
  return [
    pathMark(view, deck, { pen: 'feature', role: 'outline' }),
    pathMark(view, profilePoints(line, view.scale).map(drawn), { pen: 'cut-edge', role: 'feature' }),
    ...stopsOf(line).map(down),
  ];
}

function highest(line: LaidLine): number {
  return EXAGGERATED * Math.max(0, ...line.profile.breaks.map(({ height }) => height));
}

/** Start, breaks and end. */
function stopsOf({ profile, length }: LaidLine): readonly number[] {
  return [0, ...profile.breaks.map(({ at }) => at).filter((at) => at > 1e-6 && at < length - 1e-6), length];
}

/** Places close enough together that the drawn curve is smooth. */
function profilePoints({ profile, length }: LaidLine, scale: number): readonly number[] {
  const curves = profile.curves.flatMap(({ from, to }) =>
    Array.from({ length: 25 }, (_, i) => from + ((to - from) * i) / 24),
  );
  const all = [0, ...profile.breaks.map(({ at }) => at), ...curves, length].filter((at) => at >= 0 && at <= length);
  const sorted = all.toSorted((a, b) => a - b);
  return sorted.filter((at, i) => i === 0 || at - (sorted[i - 1] ?? 0) > scale / 1000);
}

/** One line that steps up for left and down for right curves; easements slant. */
function curveStrip(view: View, line: LaidLine, middle: number): Mark {
  const most = Math.max(
    1e-12,
    ...line.elements.flatMap((element) => [0, element.length].map((own) => Math.abs(curvatureOn(element, own)))),
  );
  const points = line.elements.flatMap((element) =>
    [0, element.length].map((own): readonly [number, number] => [
      paperX(view, element.from + own),
      middle - (STRIP.step * curvatureOn(element, own)) / most,
    ]),
  );
  return { kind: 'polyline', points, pen: 'feature', role: 'feature' };
}

type Labels = {
  readonly view: View;
  readonly drawn: (at: number) => Point;
  readonly base: number;
  readonly unit: DrawingUnit;
};

function labelsOf(line: LaidLine, { view, drawn, base, unit }: Labels): readonly Labelled[] {
  const heights = stopsOf(line).map((at): Labelled => {
    const height = heightAt(line.profile, at);
    const broken = line.profile.breaks.find((one) => Math.abs(one.at - at) < 1e-6)?.height ?? height;
    return {
      text: `${broken > 0 ? '+' : ''}${lengthText(broken, unit)}`,
      box: boxAbout(onPaper(view, drawn(at)), 1.8),
    };
  });
  const breaks = line.profile.breaks;
  const grades = breaks.slice(1).flatMap((one, i): readonly Labelled[] => {
    const before = breaks[i];
    const grade = before === undefined ? 0 : (one.height - before.height) / (one.at - before.at);
    if (before === undefined || Math.abs(grade) < 1e-9) return [];
    return [
      {
        text: `${Math.round(Math.abs(grade) * 1000) / 10} %`,
        box: boxAbout(onPaper(view, drawn((before.at + one.at) / 2)), 1.8),
      },
    ];
  });
  const arcs = line.elements.flatMap((element): readonly Labelled[] => {
    const k = curvatureOn(element, element.length / 2);
    if (element.kind !== 'arc' || element.turnout !== null) return [];
    const y = base - STRIP.step - (k > 0 ? STRIP.step : -STRIP.step);
    return [
      {
        text: `R ${lengthText(1 / Math.abs(k), unit)}`,
        box: boxAbout([paperX(view, element.from + element.length / 2), y], 1),
      },
    ];
  });
  return [...heights, ...grades, ...arcs];
}

/** What a profile shows, in words. */
export function profileWords(line: LaidLine, unit: DrawingUnit): string {
  const say = (mm: number) => saidLength(mm, unit);
  const breaks = line.profile.breaks.map(({ at, height }) => `${say(height)} at ${say(at)}`);
  return `Heights of ${line.id} over the deck along its ${say(line.length)}: ${breaks.join(', ')}. Heights are drawn ${EXAGGERATED} times larger than lengths.`;
}
