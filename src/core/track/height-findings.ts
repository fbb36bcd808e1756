import type { Finding } from '../finding.ts';
import { atLeast, atMost, length, say } from '../units/say.ts';
import { curveDrag, effectiveGrade } from './curve-grade.ts';
import { curvatureOn } from './element.ts';
import type { HeightMeeting } from './heights.ts';
import type { TrackInput } from './input.ts';
import type { Layout } from './laid.ts';
import { elementOf, type LineWay } from './line.ts';
import { heightAt, type Profile, slopeAt, type VerticalCurve } from './profile.ts';
import { mostRise, rampRun } from './ramp.ts';
import { percent, tell } from './tell.ts';

/** A joint's step in height that throws HO off, mm; other gauges in proportion; common practice, no source. */
const STEP = { care: 0.1, halt: 0.25, gauge: 16.5 } as const;

/** A kink in height beyond this is felt, as a ratio; common practice, no source. */
const KINK = 0.01;

/** Steepest effective grade when the chapter names none: 3 %; common practice, no source (2 % main, 3 % branch, 4 % hidden). */
export const USUAL_GRADE = 0.03;

/** Heights and slopes that do not meet where lines join. */
export function meetingFindings(meetings: readonly HeightMeeting[], gauge: number): readonly Finding[] {
  return meetings.flatMap((one) => [...stepFinding(one, gauge), ...kinkFinding(one)]);
}

function stepFinding({ line, end, joined, own, other }: HeightMeeting, gauge: number): readonly Finding[] {
  const step = Math.abs(own.height - other.height);
  if (step <= 1e-6) return [];
  const share = gauge / STEP.gauge;
  return [
    tell({
      rule: 'height-step',
      level: step > STEP.care * share ? 'halt' : 'care',
      where: line,
      what: say`the ${end} of ${line} lies at ${length(own.height)} and ${joined} at ${length(other.height)}: a step of ${length(step)}`,
      figure: step,
      limit: STEP.care * share,
      unit: 'mm',
      mend: say`let the ${end === 'end' ? 'last' : 'first'} height of ${line} be ${length(other.height)}`,
      source: 'common practice, no source',
    }),
  ];
}

function kinkFinding({ line, end, joined, own, other }: HeightMeeting): readonly Finding[] {
  const kink = Math.abs(own.slope - other.slope);
  if (kink <= 1e-9) return [];
  return [
    tell({
      rule: 'slope-kink',
      level: kink > KINK ? 'halt' : 'care',
      where: line,
      what: say`the ${end} of ${line} slopes ${percent(own.slope)} and ${joined} ${percent(other.slope)}`,
      figure: kink * 100,
      limit: KINK * 100,
      unit: '%',
      mend: say`begin with a slope of ${percent(other.slope)} and change it further on, in a vertical curve`,
      source: 'common practice, no source',
    }),
  ];
}

type Climb = { readonly input: TrackInput; readonly perPercent: number };

/** Grades too steep with their curves, vertical curves that found no room, and turnouts on them. */
export function gradeFindings(line: LineWay, profile: Profile, { input, perPercent }: Climb): readonly Finding[] {
  return [
    ...beyondFindings(line, profile),
    ...steepFindings(line, profile, input),
    ...profile.curves.flatMap((curve) => curveFindings(line, curve, { profile, perPercent })),
  ];
}

/** Heights written for places the line does not reach. */
function beyondFindings(line: LineWay, profile: Profile): readonly Finding[] {
  const last = profile.breaks[profile.breaks.length - 1];
  if (last === undefined || last.at <= line.length + 1e-6) return [];
  return [
    tell({
      rule: 'height-beyond-end',
      level: 'halt',
      where: line.id,
      what: say`${line.id} has a height at ${length(last.at)} and ends at ${length(line.length)}, ${length(heightAt(profile, line.length))} high`,
      figure: last.at,
      limit: line.length,
      unit: 'mm',
      mend: say`write that height at ${length(line.length)} or before`,
      source: 'geometry of the line',
    }),
  ];
}

/** The steepest effective grade of a line: distance, slope, radius and both together. */
export function steepest(line: LineWay, profile: Profile, scale: string) {
  const stops = [...profile.curves.flatMap(({ from, to }) => [from, to]), ...profile.breaks.map(({ at }) => at)];
  const spots = line.elements.flatMap(({ from, length: long }) => {
    const inside = stops.filter((at) => at > from && at < from + long);
    return [from, ...inside, from + long].flatMap((at) => [at - 1e-6, at + 1e-6]);
  });
  return spots.reduce<Steepest | null>((most, at) => {
    const element = elementOf(line, at);
    const slope = slopeAt(profile, at);
    if (element === null || Math.abs(slope) < 1e-9) return most;
    const k = Math.abs(curvatureOn(element, Math.min(element.length, Math.max(0, at - element.from))));
    const radius = k === 0 ? Number.POSITIVE_INFINITY : 1 / k;
    const effective = effectiveGrade({ grade: slope, radius, scale });
    return most === null || effective > most.effective + 1e-12 ? { at, slope, radius, effective } : most;
  }, null);
}

export type Steepest = {
  readonly at: number;
  readonly slope: number;
  readonly radius: number;
  readonly effective: number;
};

function steepFindings(line: LineWay, profile: Profile, { scale, rules }: TrackInput): readonly Finding[] {
  const limit = rules.grade ?? USUAL_GRADE;
  const worst = steepest(line, profile, scale);
  if (worst === null || worst.effective <= limit + 1e-9) return [];
  const { at, slope, radius, effective } = worst;
  const curved = Number.isFinite(radius);
  const allowed = limit - curveDrag(radius, scale);
  return [
    tell({
      rule: 'grade-steep',
      level: 'care',
      where: line.id,
      what: curved
        ? say`at ${length(at)} ${line.id} climbs ${percent(Math.abs(slope))} on a radius of ${length(radius)}, which pulls like ${percent(effective)}`
        : say`at ${length(at)} ${line.id} climbs ${percent(Math.abs(slope))}`,
      figure: effective * 100,
      limit: limit * 100,
      unit: '%',
      mend:
        allowed > 0
          ? say`make the run ${String(Math.ceil((Math.abs(slope) / allowed) * 100) / 100)} times as long, or climb ${percent(allowed)} there`
          : say`lay this curve level: its drag alone is ${percent(curveDrag(radius, scale))}`,
      source: rules.grade === null ? 'common practice, no source' : "the chapter's own rule",
    }),
  ];
}

type Room = { readonly profile: Profile; readonly perPercent: number };

function curveFindings(line: LineWay, curve: VerticalCurve, { profile, perPercent }: Room): readonly Finding[] {
  const got = curve.to - curve.from;
  if (got >= curve.wanted - 1e-6) return [];
  const i = profile.breaks.findIndex(({ at }) => at === curve.at);
  const [a, b] = Math.abs(curve.after) > Math.abs(curve.before) ? [i, i + 1] : [i - 1, i];
  const [low, high] = [profile.breaks[a], profile.breaks[b]];
  const rise = Math.abs((high?.height ?? 0) - (low?.height ?? 0));
  const run = (high?.at ?? 0) - (low?.at ?? 0);
  const grade = Math.max(Math.abs(curve.before), Math.abs(curve.after));
  const most = mostRise({ run: run + got, perPercent });
  const wantedRun = grade > 0 ? rampRun({ rise, perPercent, grade }) : 0;
  return [
    tell({
      rule: 'vertical-curve-short',
      level: 'care',
      where: line.id,
      what: say`the grade changes by ${percent(Math.abs(curve.after - curve.before))} at ${length(curve.at)}, and only ${length(got)} are left to round it`,
      figure: got,
      limit: curve.wanted,
      unit: 'mm',
      mend: say`a climb of ${length(rise)} at ${percent(grade)} with its curves takes ${length(wantedRun)}; within ${length(run + got)} at most ${atMost(most.rise)} can be climbed`,
      source: 'common practice, no source: a length of vertical curve for each 1 %',
    }),
  ];
}

/** Turnouts whose line changes its grade within them: they are made flat. */
export function flatTurnoutFindings(layout: Layout, profiles: ReadonlyMap<string, Profile>): readonly Finding[] {
  return layout.turnouts.flatMap((turnout) => {
    const profile = profiles.get(turnout.line);
    const curve = profile?.curves.find(({ from, to }) => from < turnout.leaves - 1e-6 && to > turnout.enters + 1e-6);
    if (curve === undefined) return [];
    const shared = Math.min(curve.to, turnout.leaves) - Math.max(curve.from, turnout.enters);
    const shift = Math.min(turnout.leaves - curve.from, curve.to - turnout.enters);
    return [
      tell({
        rule: 'turnout-in-vertical-curve',
        level: 'care',
        where: turnout.id,
        what: say`the grade changes within ${turnout.id}, over ${length(shared)} of it`,
        figure: shared,
        limit: 0,
        unit: 'mm',
        mend: say`move the break of grade at ${length(curve.at)} along ${turnout.line} by ${atLeast(shift)}`,
        source: 'common practice, no source: turnouts lie on one even grade',
      }),
    ];
  });
}
