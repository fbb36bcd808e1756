import type { HeightInput, LineInput, TrackInput } from './input.ts';
import type { LaidTurnout, Layout } from './laid.ts';
import type { LineWay } from './line.ts';
import type { TurnoutEnd } from './piece.ts';
import { type BreakAsked, heightAt, type Profile, profileOf, slopeAt } from './profile.ts';
import { isEnd } from './turnout-shape.ts';

/** Height and slope where two things meet, looking away from the one that sets them. */
export type Level = { readonly height: number; readonly slope: number };

/** How a line's end fits what it is joined to. */
export type HeightMeeting = {
  readonly line: string;
  readonly end: 'start' | 'end';
  readonly joined: string;
  readonly own: Level;
  readonly other: Level;
};

export type Heights = {
  readonly profiles: ReadonlyMap<string, Profile>;
  readonly meetings: readonly HeightMeeting[];
};

/** Length of vertical curve for each 1 %: the rule's, else one length of the longest vehicle, else 20 gauges' worth. */
export function curvePerPercent({ rules, trains }: TrackInput, gauge: number): number {
  if (rules.curvePerPercent !== null) return rules.curvePerPercent;
  const longest = trains.reduce((most, { length }) => Math.max(most, length), 0);
  return longest > 0 ? longest : 20 * gauge;
}

/** Profiles of all lines, each after those it starts from. */
export function layHeights(input: TrackInput, layout: Layout, perPercent: number): Heights {
  const profiles = new Map<string, Profile>();
  const ways = new Map(layout.lines.map((line) => [line.id, line]));
  const known: Known = { profiles, ways, turnouts: new Map(layout.turnouts.map((one) => [one.id, one])) };
  let waiting = input.lines.filter(({ id }) => ways.has(id));
  for (let before = -1; waiting.length !== before; ) {
    before = waiting.length;
    for (const line of waiting) {
      const start = startHeight(line, known);
      const way = ways.get(line.id);
      if (start === null || way === undefined) continue;
      profiles.set(line.id, profileOf(breaksOf(line.heights, start), { length: way.length, perPercent }));
    }
    waiting = waiting.filter(({ id }) => !profiles.has(id));
  }
  for (const { id, line } of input.beside) {
    const [own, main, profile] = [ways.get(id), ways.get(line), profiles.get(line)];
    if (own !== undefined && main !== undefined && profile !== undefined)
      profiles.set(id, besideProfile(profile, main, own));
  }
  return { profiles, meetings: input.lines.flatMap((line) => meetingsOf(line, known)) };
}

type Known = {
  readonly profiles: ReadonlyMap<string, Profile>;
  readonly ways: ReadonlyMap<string, LineWay>;
  readonly turnouts: ReadonlyMap<string, LaidTurnout>;
};

function startHeight(line: LineInput, known: Known): number | null {
  if (line.from.kind === 'place') return line.from.height ?? line.heights[0]?.height ?? 0;
  const joined = levelAt(line.from.name, known);
  return joined === null ? null : joined.height;
}

function breaksOf(heights: readonly HeightInput[], start: number): readonly BreakAsked[] {
  const asked = heights.map(({ along, height, curve }) => ({ at: along, height, curve }));
  return asked[0]?.at === 0 ? asked : [{ at: 0, height: start, curve: null }, ...asked];
}

/** A profile stretched to the length of a line beside it, element by element. */
function besideProfile(profile: Profile, main: LineWay, own: LineWay): Profile {
  const beside = (at: number) => {
    const i = main.elements.findLastIndex(({ from }) => from <= at);
    const [a, b] = [main.elements[Math.max(0, i)], own.elements[Math.max(0, i)]];
    return a === undefined || b === undefined ? at : b.from + ((at - a.from) * b.length) / (a.length || 1);
  };
  const breaks = profile.breaks.map(({ at, height }) => ({ at: beside(at), height }));
  const slope = (i: number) => {
    const [a, b] = [breaks[i], breaks[i + 1]];
    return a === undefined || b === undefined ? 0 : (b.height - a.height) / (b.at - a.at);
  };
  const curves = profile.curves.map((curve) => {
    const i = profile.breaks.findIndex(({ at }) => at === curve.at);
    const at = beside(curve.at);
    const half = Math.min(at - beside(curve.from), beside(curve.to) - at);
    return { ...curve, at, from: at - half, to: at + half, before: slope(i - 1), after: slope(i) };
  });
  return { breaks, curves };
}

/** Height and slope at an end of a turnout or line, looking away from it; null while it is not known. */
export function levelAt(name: string, known: Known): Level | null {
  const [owner = '', end = ''] = name.split('.');
  const turnout = known.turnouts.get(owner);
  if (turnout !== undefined && isEnd(end)) return turnoutLevel(turnout, end, known);
  const [profile, way] = [known.profiles.get(owner), known.ways.get(owner)];
  if (profile === undefined || way === undefined) return null;
  return end === 'start' ? backwards(levelOn(profile, 0)) : levelOn(profile, way.length);
}

function levelOn(profile: Profile, at: number): Level {
  return { height: heightAt(profile, at), slope: slopeAt(profile, at) };
}

function backwards({ height, slope }: Level): Level {
  return { height, slope: -slope || 0 };
}

/** A turnout lies in one plane, tilted along its straight as the line that laid it runs. */
function turnoutLevel(turnout: LaidTurnout, end: TurnoutEnd, known: Known): Level | null {
  const { profiles } = known;
  const profile = profiles.get(turnout.line);
  const own = turnout.shape.ends[end];
  if (profile === undefined || own === undefined) return null;
  const { slope, height } = turnoutPlane(turnout, profile);
  return { height: height + slope * own.x, slope: slope * Math.cos(own.heading) || 0 };
}

/** Height at the points' end of a turnout and slope along its straight, from the line that laid it. */
export function turnoutPlane({ shape, enter, take, enters, leaves }: LaidTurnout, profile: Profile): Level {
  const [a, b] = [shape.ends[enter]?.x ?? 0, shape.ends[take]?.x ?? 0];
  const [low, high] = [heightAt(profile, enters), heightAt(profile, leaves)];
  const slope = a === b ? 0 : (high - low) / (b - a);
  return { height: low - slope * a, slope };
}

/** Where a line's own heights meet what it starts from and ends at. */
function meetingsOf(line: LineInput, known: Known): readonly HeightMeeting[] {
  const [profile, way] = [known.profiles.get(line.id), known.ways.get(line.id)];
  if (profile === undefined || way === undefined) return [];
  const start =
    line.from.kind === 'end'
      ? meeting(line, { end: 'start', joined: line.from.name, own: levelOn(profile, 0) }, known)
      : [];
  if (line.ends === 'open' || line.ends === 'buffer') return start;
  return [...start, ...meeting(line, { end: 'end', joined: line.ends, own: levelOn(profile, way.length) }, known)];
}

type Half = Pick<HeightMeeting, 'end' | 'joined' | 'own'>;

function meeting(line: LineInput, half: Half, known: Known): readonly HeightMeeting[] {
  const other = levelAt(half.joined, known);
  if (other === null) return [];
  // at its end a line looks on, and what it meets looks back at it
  return [{ line: line.id, ...half, other: half.end === 'end' ? backwards(other) : other }];
}
