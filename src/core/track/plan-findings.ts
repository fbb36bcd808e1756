import type { Finding } from '../finding.ts';
import { bothUnits } from '../units/reading.ts';
import { atLeast, atMost, length, type Sentence, say } from '../units/say.ts';
import type { ClearHeight, Levels } from './clearance.ts';
import { railSeparation } from './clearance.ts';
import type { Contact } from './contacts.ts';
import type { Leaving } from './deck.ts';
import { easementLimit } from './easement.ts';
import { sharpest } from './element.ts';
import type { TrackInput } from './input.ts';
import type { LineWay } from './line.ts';
import { heightAt, type Profile, slopeAt } from './profile.ts';
import { tell } from './tell.ts';
import { absoluteRadius, reliableRadius, strictest } from './trains-limit.ts';

type Sharp = { readonly radius: number; readonly where: string };

/** The sharpest curve of a line against the trains that must run. */
export function radiusFindings(line: LineWay, input: TrackInput): readonly Finding[] {
  const { scale, trains, rules } = input;
  const worst = line.elements.reduce<Sharp>(
    (least, element) => {
      const radius = sharpest(element);
      return radius < least.radius - 1e-9 ? { radius, where: element.turnout ?? line.id } : least;
    },
    { radius: Number.POSITIVE_INFINITY, where: line.id },
  );
  const least = strictest(trains.map((train) => absoluteRadius(train, scale)));
  const good = strictest(trains.map((train) => reliableRadius(train, scale, rules.radius)));
  const limit = least !== null && worst.radius < least.radius - 1e-6 ? least : good;
  if (limit === null || worst.radius >= limit.radius - 1e-6) return [];
  return [
    tell({
      rule: 'radius-small',
      level: limit === least ? 'halt' : 'care',
      where: worst.where,
      what: say`the sharpest curve of ${line.id} is ${length(worst.radius)}; ${limit.train.id}, ${length(limit.train.length)} long, asks for ${length(limit.radius)}`,
      figure: worst.radius,
      limit: limit.radius,
      unit: 'mm',
      mend: say`make it ${atLeast(limit.radius)}, or run nothing longer than ${atMost(longestOn(worst.radius, limit.radius, limit.train.length))}`,
      source: limit.source,
    }),
  ];
}

/** The longest vehicle for a radius, in proportion to the one that set the limit. */
function longestOn(radius: number, limit: number, long: number): number {
  return Math.floor((long * radius) / limit);
}

/** Curves of flexible track without easements that NEM 113 would have eased. */
export function easementFindings(line: LineWay, input: TrackInput, gauge: number): readonly Finding[] {
  const pieces = input.lines.find(({ id }) => id === line.id)?.pieces ?? [];
  const abrupt = pieces.flatMap((piece) =>
    piece.kind === 'curve' && piece.easement === 0 && piece.times === null && piece.radius !== 'to close'
      ? [piece.radius]
      : [],
  );
  const least = Math.min(...abrupt);
  if (least >= easementLimit(gauge)) return [];
  return [
    tell({
      rule: 'easement-missing',
      level: 'note',
      where: line.id,
      what: say`a curve of ${length(least)} begins without an easement`,
      figure: least,
      limit: easementLimit(gauge),
      unit: 'mm',
      mend: say`an easement of ${length(Math.round(Math.sqrt(24 * least * (gauge / 20))))} shifts it by only ${length(gauge / 20)}`,
      source: 'NEM 113: none is needed above 60 times the gauge',
    }),
  ];
}

/** Where lines meet in plan without enough height between them. */
export function contactFindings(
  found: readonly Contact[],
  profiles: ReadonlyMap<string, Profile>,
  { levels, clear }: { readonly levels: Levels; readonly clear: ClearHeight },
): readonly Finding[] {
  const needed = railSeparation(levels);
  return found.flatMap(({ a, b, point }) => {
    const [one, other] = [profiles.get(a.line), profiles.get(b.line)];
    if (one === undefined || other === undefined) return [];
    const apart = Math.abs(heightAt(one, a.at) - heightAt(other, b.at));
    if (apart >= needed - 1e-6) return [];
    const flat = apart < 1e-6;
    const lines =
      a.line === b.line
        ? say`${a.line} comes upon itself, at ${length(a.at)} and ${length(b.at)}`
        : say`${a.line} at ${length(a.at)} meets ${b.line} at ${length(b.at)}`;
    return [
      tell({
        rule: flat ? 'lines-cross' : 'levels-close',
        level: 'halt',
        where: a.line,
        what: [
          ...lines,
          ...say` (x ${length(point[0])}, y ${length(point[1])}) with ${length(apart)} between the rail tops`,
        ],
        figure: apart,
        limit: needed,
        unit: 'mm',
        mend: crossMend({ needed, apart, flat, slope: Math.abs(slopeAt(other, b.at)) }),
        source: `${clear.source}, and ${bothUnits(Math.round((levels.deck + levels.roadbed + levels.track) * 10) / 10)} of deck, roadbed and track`,
      }),
    ];
  });
}

type Crossing = { readonly needed: number; readonly apart: number; readonly flat: boolean; readonly slope: number };

function crossMend({ needed, apart, flat }: Crossing): Sentence {
  return flat
    ? say`lay a crossing there as a turnout, or raise one line by ${atLeast(needed)}`
    : say`raise the upper line by ${atLeast(needed - apart)} more`;
}

/** Where a roadbed leaves the deck; `largest` is the largest radius that stays, with its piece counted from 1. */
export function leavingFinding(
  leaving: Leaving,
  largest: { readonly piece: number; readonly radius: number } | null,
): Finding {
  const { line, from, to, worst, point, beyond } = leaving;
  return tell({
    rule: 'leaves-deck',
    level: 'halt',
    where: line,
    what: say`the roadbed of ${line} leaves the deck from ${length(from)} to ${length(to)}, by ${length(beyond)} at ${length(worst)} (x ${length(point[0])}, y ${length(point[1])})`,
    figure: beyond,
    limit: 0,
    unit: 'mm',
    mend:
      largest === null
        ? say`move it ${length(Math.ceil(beyond * 10) / 10)} further in`
        : say`the largest radius of piece ${String(largest.piece)} that stays on the deck is ${length(largest.radius)}`,
    source: "the deck's own outline",
  });
}
