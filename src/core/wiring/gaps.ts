import { districtOf } from './districts.ts';
import { frogGaps } from './frog-gaps.ts';
import type { Gap } from './gap.ts';
import type { GapInput, WiringInput } from './input.ts';
import { reversingSections } from './polarity.ts';
import { railGraph } from './rail-graph.ts';
import type { RailPlan, RailSegment } from './rail-plan.ts';

/** A section whose rails swap as a train passes. mm */
export type ReversingSection = {
  readonly segment: string;
  readonly line: string;
  readonly from: number;
  readonly to: number;
  readonly length: number;
};

export type Gaps = {
  readonly gaps: readonly Gap[];
  readonly sections: readonly ReversingSection[];
  readonly proved: boolean;
};

/** A cut as written may lie this far from where it belongs, mm; common practice, no source. */
export const NEAR_CUT = 30;

/** A lift bridge's approaches go dead this far before it: one vehicle that conducts, and a little; common practice, no source. mm */
const APPROACH_SPARE = 50;
const APPROACH_LEAST = 150;

/** A lift bridge's dead approach on each side, mm. */
export function approachLength(train: number | null): number {
  return Math.max(APPROACH_LEAST, (train ?? 0) + APPROACH_SPARE);
}

/** Every place where both rails have to be cut, once each, in the order of lines and distances. */
export function gapsOf(input: WiringInput): Gaps {
  const { rails } = input;
  const reversing = reversingSections(railGraph(rails));
  const sections = reversing.sections.flatMap(({ id }) => rails.segments.filter((segment) => segment.id === id));
  const all = [
    ...districtGaps(input),
    ...sections.flatMap((segment) => [
      gap(segment, segment.from.at, { why: 'reversing', of: segment.id }),
      gap(segment, segment.to.at, { why: 'reversing', of: segment.id }),
    ]),
    ...liftGaps(input),
    ...frogGaps(rails, input.gaps ?? []),
  ];
  const own = (input.gaps ?? []).flatMap((cut) => writtenGap(rails, all, cut));
  const every = [...all, ...own];
  const once = every.filter(
    (one, i) => every.findIndex(({ segment, at }) => segment === one.segment && Math.abs(at - one.at) < 1e-6) === i,
  );
  const order = (line: string) => rails.lines.findIndex(({ id }) => id === line);
  const sorted = once.toSorted((a, b) => order(a.line) - order(b.line) || a.at - b.at);
  return {
    gaps: sorted.map((one, i) => ({ ...one, id: `gap-${i + 1}` })),
    sections: sections.map(({ id, line, from, to }) => ({
      segment: id,
      line,
      from: from.at,
      to: to.at,
      length: to.at - from.at,
    })),
    proved: reversing.proved,
  };
}

function gap({ id, line }: RailSegment, at: number, why: Pick<Gap, 'why' | 'of'>): Gap {
  return { id: '', line, at, segment: id, rails: 'both', ...why };
}

/** A cut that its author made beside those that are needed. */
function writtenGap(rails: RailPlan, needed: readonly Gap[], { line, at }: GapInput): readonly Gap[] {
  const place = onLine(rails, line, at);
  if (place === null || needed.some((one) => one.line === line && Math.abs(one.at - place.at) <= NEAR_CUT)) return [];
  return [gap(place.segment, place.at, { why: 'written', of: line })];
}

/** Where a line meets metal of another district, it is cut at its own end. */
function districtGaps({ rails, districts }: WiringInput): readonly Gap[] {
  return rails.segments.flatMap((segment) => {
    const mine = districtOf(districts, segment.line);
    return [segment.from, segment.to].flatMap(({ at, node }) => {
      const other = districtOf(districts, ownerOf(rails, node));
      return other === mine ? [] : [gap(segment, at, { why: 'district', of: mine })];
    });
  });
}

/** The line whose metal a node is: that lays the turnout, or that a plain joint is named after. */
function ownerOf({ turnouts }: RailPlan, node: string): string {
  const [owner = ''] = node.split('.');
  return turnouts.find(({ id }) => id === owner)?.line ?? owner;
}

function liftGaps({ lifts, rails, train }: WiringInput): readonly Gap[] {
  const off = approachLength(train);
  return lifts.flatMap(({ id, line, from, to }) => {
    const cuts = [
      { at: from - off, why: 'approach' },
      { at: from, why: 'bridge' },
      { at: to, why: 'bridge' },
      { at: to + off, why: 'approach' },
    ] as const;
    return cuts.flatMap(({ at, why }) => {
      const place = onLine(rails, line, at);
      return place === null ? [] : [gap(place.segment, place.at, { why, of: id })];
    });
  });
}

/** A place on a line, past its end on a closed one; null where the line has no plain rail. */
export function onLine(
  rails: RailPlan,
  line: string,
  at: number,
): { readonly segment: RailSegment; readonly at: number } | null {
  const length = rails.lines.find(({ id }) => id === line)?.length ?? 0;
  const mine = rails.segments.filter((segment) => segment.line === line);
  const [first, last] = [mine[0], mine[mine.length - 1]];
  const closed = first !== undefined && last !== undefined && first.from.node === last.to.node;
  const along = closed && length > 0 ? ((at % length) + length) % length : at;
  const segment = mine.find(({ from, to }) => along >= from.at && along <= to.at);
  return segment === undefined ? null : { segment, at: along };
}
