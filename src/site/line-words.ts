import { sharpest } from '../core/track/element.ts';
import { steepest } from '../core/track/height-findings.ts';
import type { LaidLine } from '../core/track/lay.ts';
import type { FoundValue } from '../core/track/line.ts';
import { heightAt, type Profile } from '../core/track/profile.ts';
import { both, type Html, line, listed, text } from './html.ts';
import { figurePair, lengthPair, type Pair } from './lengths.ts';
import { angleWords, gradeWords } from './measures.ts';
import type { Book } from './notebooks.ts';
import type { Fact, Told } from './table.ts';
import { UNIT_NAMES } from './words.ts';

/** Two figures closer than this are one, mm. */
const SAME = 1e-6;

function span(from: number, to: number): Pair {
  const [a, b] = [figurePair(from), lengthPair(to)];
  return { mm: `${a.mm} to ${b.mm}`, in: `${a.in} to ${b.in}` };
}

function smallestRadius({ elements }: LaidLine): Html {
  const radius = Math.min(...elements.map(sharpest));
  return Number.isFinite(radius) ? both(lengthPair(radius)) : text('straight throughout');
}

/** The hardest place to pull up, with the drag of its curve. */
export function climbWords(laid: LaidLine, scale: string): Html {
  const worst = steepest(laid, laid.profile, scale);
  if (worst === null) return text('level');
  const climb = line(text(`${gradeWords(worst.slope)} at `), both(lengthPair(worst.at)));
  if (!Number.isFinite(worst.radius)) return climb;
  return line(
    climb,
    text(' on a radius of '),
    both(lengthPair(worst.radius)),
    text(`, which pulls like ${gradeWords(worst.effective)}`),
  );
}

/** A value that closing found, with the piece it belongs to, counted from 1 as people count. */
export function foundWords({ piece, value, what }: FoundValue): Html {
  const number = `piece ${piece + 1}, `;
  if (what === 'through') return text(`${number}turns ${angleWords(value)}`);
  const name = what === 'radius' ? 'a radius of ' : 'a straight of ';
  return line(text(`${number}${name}`), both(lengthPair(value)));
}

function endWords({ ends, from, id }: LaidLine): string {
  const end = ends === `${id}.start` ? 'closes on its own start' : `ends ${ends === 'open' ? 'open' : `at ${ends}`}`;
  return from === null ? end : `from ${from}; ${end}`;
}

/** A line in figures. Distances are along its middle, from its start. */
export function lineFacts(laid: LaidLine, scale: string): readonly Fact[] {
  const { extents, joints, length, phase, unknowns } = laid;
  const named = joints.map(({ at, id }) => line(text(`${id} at `), both(lengthPair(at))));
  return [
    ['Length', both(lengthPair(length))],
    ['Left to right', both(span(extents.x0, extents.x1))],
    ['Front to back', both(span(extents.y0, extents.y1))],
    ['Smallest radius', smallestRadius(laid)],
    ['Hardest climb', climbWords(laid, scale)],
    [
      'Found, so that it closes',
      unknowns.length === 0 ? text('nothing: every value is the author’s') : listed(unknowns.map(foundWords)),
    ],
    ['Ends', text(endWords(laid))],
    ...(named.length === 0 ? [] : [['Named joints', listed(named)] as const]),
    ...(phase === 'later' ? [['Built', text('later')] as const] : []),
  ];
}

/** A stretch of even grade between two breaks; heights of the straight grades at its ends, mm. */
type Even = { readonly from: number; readonly to: number; readonly low: number; readonly high: number };

/** The grades of a line from its start to its end, level before the first height and after the last. */
export function evenGrades({ breaks }: Profile, length: number): readonly Even[] {
  const first = breaks[0]?.height ?? 0;
  const last = breaks[breaks.length - 1]?.height ?? 0;
  const inside = breaks.filter(({ at }) => at > SAME && at < length - SAME);
  const stops = [
    { at: 0, height: breaks.find(({ at }) => at <= SAME)?.height ?? first },
    ...inside,
    { at: length, height: last },
  ];
  return stops.slice(1).map(({ at, height }, i) => {
    const before = stops[i] ?? { at, height };
    return { from: before.at, to: at, low: before.height, high: height };
  });
}

function gradeName({ from, high, low, to }: Even): string {
  if (Math.abs(high - low) < SAME) return 'level';
  return `${high > low ? 'up' : 'down'} ${gradeWords((high - low) / (to - from))}`;
}

/** Height of a line that is level all the way, mm; null for one with grades. */
export function levelAt({ length, profile }: LaidLine): number | null {
  const grades = evenGrades(profile, length);
  return grades.every(({ high, low }) => Math.abs(high - low) < SAME) ? heightAt(profile, 0) : null;
}

/** The grades of a line between its breaks. */
export function gradeTable({ id, length, profile }: LaidLine): Told {
  return {
    label: `Grades of ${id}`,
    caption: line(
      text(
        `Grades of ${id}: distances from its start, heights of the roadbed’s underside over the top of the deck, in `,
      ),
      both(UNIT_NAMES),
    ),
    columns: [['From', 'right'], ['To', 'right'], ['Height at the end', 'right'], ['Grade']],
    rows: evenGrades(profile, length).map((even) => [
      both(figurePair(even.from)),
      both(figurePair(even.to)),
      both(figurePair(even.high)),
      text(gradeName(even)),
    ]),
  };
}

/** Where the changes of grade are rounded; null where there are none. */
export function roundedWords({ profile }: LaidLine): Html | null {
  const curves = profile.curves.filter(({ from, to }) => to - from > SAME);
  if (curves.length === 0) return null;
  const spans = curves.map(({ from, to }) => both(span(from, to)));
  return line(text('The changes of grade are rounded, each by a parabola: from '), listed(spans), text('.'));
}

/** What is to be added to a height to have the top of the rail. */
export function railTopWords({ notebook }: Book): Html {
  return line(
    text('The top of the rail lies '),
    both(lengthPair(notebook.track?.railHeight ?? 0)),
    text(' above these heights.'),
  );
}
