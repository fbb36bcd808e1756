import type { Finding } from '../finding.ts';
import { atLeast, length, say } from '../units/say.ts';
import type { Levels } from './clearance.ts';
import { railSeparation } from './clearance.ts';
import { type Contact, meetingsOf, nearPlaces, type OnLine } from './contacts.ts';
import { curvatureOn } from './element.ts';
import type { Layout } from './laid.ts';
import { type LineWay, stanceAlong } from './line.ts';
import { heightAt, type Profile } from './profile.ts';
import { reachNear, reachTowards } from './reach.ts';
import type { Stance } from './stretch.ts';
import { tell } from './tell.ts';
import type { Train } from './train.schema.ts';

/** Room for fingers between vehicles that pass, half an inch; common practice, no source. */
const FINGER = 12.7;

const SOURCE = 'overhang of a vehicle on its two centres, d = sqrt(R² - c²); plane geometry';

/** Where vehicles on two tracks come nearest: what is left between them, and which they are; mm. */
type Passing = Contact & { readonly spacing: number; readonly left: number; readonly pair: readonly [Train, Train] };

type Ground = {
  readonly trains: readonly Train[];
  readonly profiles: ReadonlyMap<string, Profile>;
  readonly levels: Levels;
  readonly gauge: number;
};

/**
 * Where tracks run side by side so near that the vehicles that must run touch, or leave no room for a finger. Lines nearer
 * than a gauge lie over each other, which is told elsewhere.
 */
export function passingFindings(layout: Layout, { trains, profiles, levels, gauge }: Ground): readonly Finding[] {
  if (trains.length === 0) return [];
  const sharpest = sharpestBend(layout);
  const widest = Math.max(...trains.flatMap((car) => [reachTowards(car, sharpest), reachTowards(car, -sharpest)]));
  const all = nearPlaces(layout, 2 * widest + FINGER)
    .filter(({ a, b }) => apart(a, b, profiles) < railSeparation(levels) - 1e-6)
    .flatMap((contact) => passingAt(layout, contact, trains));
  // grouped by what is left, so that each meeting is told where it is tightest
  return meetingsOf(
    all.filter(({ left }) => left < FINGER - 1e-6).map((one) => ({ ...one, distance: one.left })),
    2 * widest,
  )
    .filter(({ spacing }) => spacing >= gauge)
    .map(passingFinding);
}

function apart(a: OnLine, b: OnLine, profiles: ReadonlyMap<string, Profile>): number {
  const [one, other] = [profiles.get(a.line), profiles.get(b.line)];
  return one === undefined || other === undefined ? 0 : Math.abs(heightAt(one, a.at) - heightAt(other, b.at));
}

function sharpestBend({ lines }: Layout): number {
  const bends = lines.flatMap(({ elements }) =>
    elements.flatMap((element) => [0, element.length].map((own) => Math.abs(curvatureOn(element, own)))),
  );
  return Math.max(0, ...bends);
}

function passingAt(layout: Layout, contact: Contact, trains: readonly Train[]): readonly Passing[] {
  const [p, q] = contact.places;
  const [a, b] = [sideOf(layout, contact.a, [p, q]), sideOf(layout, contact.b, [q, p])];
  if (a === null || b === null) return [];
  const [one, other] = [reaching(trains, a), reaching(trains, b)];
  if (one === null || other === null) return [];
  // the search runs along chords; the lines themselves lie a little beside them
  const spacing = Math.hypot(a.stance.x - b.stance.x, a.stance.y - b.stance.y);
  return [{ ...contact, spacing, left: spacing - one.reach - other.reach, pair: [one.train, other.train] }];
}

/** A line at a place, and which side of it the other track is on: 1 left, -1 right. */
type Side = { readonly line: LineWay; readonly at: number; readonly stance: Stance; readonly side: 1 | -1 };

function sideOf({ lines }: Layout, { line: id, at }: OnLine, [from, to]: Contact['places']): Side | null {
  const line = lines.find((one) => one.id === id);
  const stance = line === undefined ? null : stanceAlong(line, at);
  if (line === undefined || stance === null) return null;
  const left = -Math.sin(stance.heading) * (to[0] - from[0]) + Math.cos(stance.heading) * (to[1] - from[1]);
  return { line, at, stance, side: left >= 0 ? 1 : -1 };
}

type Reaching = { readonly train: Train; readonly reach: number };

/** The vehicle that reaches farthest to a side. */
function reaching(trains: readonly Train[], { line, at, side }: Side): Reaching | null {
  return trains.reduce<Reaching | null>((most, train) => {
    const reach = reachNear(train, line, { at, side });
    return most === null || reach > most.reach ? { train, reach } : most;
  }, null);
}

function passingFinding({ a, b, point, spacing, left, pair: [one, other] }: Passing): Finding {
  const touch = left < 0;
  const ends = say`${one.id} on ${a.line} at ${length(a.at)} and ${other.id} on ${b.line} at ${length(b.at)}`;
  return tell({
    rule: touch ? 'trains-touch' : 'trains-close',
    level: touch ? 'halt' : 'note',
    where: a.line,
    what: [
      ...ends,
      ...(touch
        ? say` touch when they pass (x ${length(point[0])}, y ${length(point[1])}): the tracks are ${length(spacing)} apart and ${length(-left)} is missing`
        : say` pass with ${length(left)} between them (x ${length(point[0])}, y ${length(point[1])}), less than a finger's ${length(FINGER)}`),
    ],
    figure: left,
    limit: touch ? 0 : FINGER,
    unit: 'mm',
    mend: say`lay them ${atLeast(spacing - left + (touch ? 0 : FINGER))} apart there, from middle to middle`,
    source: touch ? SOURCE : 'common practice, no source',
  });
}
