import type { Point } from '../geometry/shapes.ts';
import { type ComesDown, clearNear } from './clear-way.ts';
import { districtOf } from './districts.ts';
import { belongsToFrog } from './frog-gaps.ts';
import type { Gap } from './gap.ts';
import { approachLength, onLine } from './gaps.ts';
import type { WiringInput } from './input.ts';
import type { RailLine } from './rail-plan.ts';
import type { Side } from './rail-sides.ts';

/** Where a pair of thin wires comes up to the rails; notebook coordinates, mm. */
export type Feeder = {
  readonly id: string;
  readonly line: string;
  readonly at: number;
  readonly segment: string;
  readonly point: Point;
  /** where its wires come down through the deck: below the rails or near them, or beside a span that lifts */
  readonly down: Point;
  /** from there on over the deck to its rails: straight, or along a span's line; empty where it comes up below them */
  readonly over: readonly Point[];
  readonly district: string;
  /** the rail that its wire a goes to, seen along its line from the line's start */
  readonly side: Side;
  /** the pair of heavy wires that it hangs on: its district's, or that of the unit that feeds its rails */
  readonly net: string;
  /** the lift bridge that switches it or carries it; null for most */
  readonly through: string | null;
  /** whether it is a flexible lead to a span that lifts */
  readonly lead: boolean;
  /** how far it was moved along its line to find a clear way down, mm */
  readonly moved: number;
  /** whether wires can come down here at all */
  readonly clear: boolean;
};

/** A length of a line between cuts through its rails, mm. */
type Run = { readonly line: RailLine; readonly from: number; readonly to: number };

/** Steps in which a feeder looks for a clear place along its line, mm. */
const LOOK = 10;

/** A lead's way along its line is drawn in steps of so much, mm. */
const STEP = 40;

/** A lead goes down this far from the span that it feeds, mm. */
const HINGE = 30;

/** Rails shorter than this between two cuts are fed through the turnout they belong to, mm. */
const SHORT = 5;

/**
 * Feeders so that no rail is farther than half of `every` from one: each length between cuts gets as many as it needs,
 * evenly, each moved to the nearest place where its wires come down clear.
 */
export function feedersOf(input: WiringInput, gaps: readonly Gap[], comesDown: ComesDown): readonly Feeder[] {
  const { feeders } = input;
  if (feeders === null) return [];
  const placed = input.rails.lines.flatMap((line) =>
    runsOf(input, line, gaps).flatMap((run) => {
      const count = Math.max(1, Math.ceil((run.to - run.from) / feeders.every - 1e-9));
      return Array.from({ length: count }, (_, i) =>
        feederAt(input, run, { share: (i + 0.5) / count, comesDown }),
      ).filter((one) => one !== null);
    }),
  );
  return placed.map((one, i) => ({ ...one, id: `feeder-${i + 1}` }));
}

function runsOf({ rails }: WiringInput, line: RailLine, gaps: readonly Gap[]): readonly Run[] {
  const cuts = gaps.filter((gap) => gap.line === line.id).map(({ at }) => at);
  const stops = [0, ...cuts, line.length].toSorted((a, b) => a - b);
  const runs = stops
    .slice(1)
    .map((to, i) => ({ line, from: stops[i] ?? 0, to }))
    .filter(({ from, to }) => to - from > SHORT && !belongsToFrog(rails, gaps, { line: line.id, from, to }));
  return isClosed(rails, line) ? roundTheEnd(runs, line.length) : runs;
}

/** A line that ends in its own start. */
function isClosed({ segments }: WiringInput['rails'], { id }: RailLine): boolean {
  const mine = segments.filter(({ line }) => line === id);
  const [first, last] = [mine[0], mine[mine.length - 1]];
  return first !== undefined && last !== undefined && first.from.node === last.to.node;
}

/** What lies before a closed line's end and what lies after its start are one length of rail, where nothing is cut between. */
function roundTheEnd(runs: readonly Run[], length: number): readonly Run[] {
  const [first, last] = [runs[0], runs[runs.length - 1]];
  if (first === undefined || last === undefined || first === last || first.from > 0 || last.to < length) return runs;
  return [...runs.slice(1, -1), { ...last, to: length + first.to }];
}

function feederAt(
  input: WiringInput,
  run: Run,
  ask: { readonly share: number; readonly comesDown: ComesDown },
): Feeder | null {
  const { line, from, to } = run;
  const wanted = from + (to - from) * ask.share;
  const most = Math.min((to - from) / 2, input.feeders?.every ?? 0);
  const offs = Array.from(
    { length: 2 * Math.floor(most / LOOK) + 1 },
    (_, i) => (i % 2 === 0 ? -1 : 1) * Math.ceil(i / 2) * LOOK,
  );
  const open = offs.filter((off) => onRail(input, line.id, wanted + off));
  const downAt = (at: number) => {
    const on = onLine(input.rails, line.id, at)?.at ?? at;
    return line.place(besideSpan(input, line.id, on) ?? on);
  };
  const off = open.find((one) => ask.comesDown(downAt(wanted + one))) ?? open[0];
  const place = off === undefined ? null : onLine(input.rails, line.id, wanted + off);
  if (off === undefined || place === null) return null;
  const hinge = besideSpan(input, line.id, place.at);
  const straight = downAt(place.at);
  const down = clearNear(straight, ask.comesDown);
  const district = districtOf(input.districts, line.id);
  return {
    ...{ id: '', line: line.id, at: place.at, segment: place.segment.id, point: line.place(place.at) },
    ...{ down: down ?? straight, district, net: district, side: 'left', moved: off + 0, clear: down !== null },
    through: switchedBy(input, line.id, place.at),
    lead: hinge !== null,
    over: overDeck(line, { down: down ?? straight, hinge, at: place.at }),
  };
}

/** A lead keeps to its line, so that it folds with the span; all else goes straight. */
function overDeck(
  line: RailLine,
  { at, down, hinge }: { readonly at: number; readonly down: Point; readonly hinge: number | null },
): readonly Point[] {
  const point = line.place(at);
  if (hinge === null) return Math.hypot(point[0] - down[0], point[1] - down[1]) > 1e-6 ? [point] : [];
  const far = (at - hinge + line.length) % line.length;
  const steps = Math.max(1, Math.ceil(far / STEP));
  return Array.from({ length: steps }, (_, i) => line.place((hinge + (far * (i + 1)) / steps) % line.length));
}

/** Plain rail, not the middle of a turnout. */
function onRail({ rails }: WiringInput, line: string, at: number): boolean {
  const place = onLine(rails, line, at);
  return place !== null && at > place.segment.from.at - 1e-9 && at < place.segment.to.at + 1e-9;
}

/** Beside its hinge, where the lead to a span that lifts goes down; null for rails that stay. */
function besideSpan({ lifts, rails }: WiringInput, line: string, at: number): number | null {
  const span = lifts.find((one) => one.line === line && at > one.from && at < one.to);
  return span === undefined ? null : (onLine(rails, line, span.from - HINGE)?.at ?? null);
}

/** The lift bridge whose span or dead approach a place lies on. */
function switchedBy({ lifts, train, rails }: WiringInput, line: string, at: number): string | null {
  const off = approachLength(train);
  const length = rails.lines.find(({ id }) => id === line)?.length ?? 0;
  const lift = lifts.find(
    (one) =>
      one.line === line &&
      [at, at - length, at + length].some((place) => place > one.from - off && place < one.to + off),
  );
  return lift?.id ?? null;
}
