import type { Finding } from '../finding.ts';
import type { Point } from '../geometry/shapes.ts';
import { atLeast, length, type Sentence, say } from '../units/say.ts';
import type { LaidTurnout } from './laid.ts';
import type { Clash, MotorRoom } from './motors.ts';
import { moveAlong, moved, wayLength } from './stretch.ts';
import { tell } from './tell.ts';
import { endStance, isEnd } from './turnout-shape.ts';

/** Motors that stand in wood, drawers or other envelopes, or in a shelf's space, with the shortest move that clears them. */
export function motorFindings(rooms: readonly MotorRoom[]): readonly Finding[] {
  return rooms.flatMap(({ turnout, clash, shared, envelope }) => [
    ...(clash === null ? [] : [clashFinding(turnout, clash)]),
    ...(shared === null ? [] : [sharedFinding(turnout, shared, envelope.max[2] - envelope.min[2])]),
  ]);
}

function clashFinding(turnout: string, clash: Clash): Finding {
  const { with: others, shift } = clash;
  return tell({
    rule: 'motor-clash',
    level: 'halt',
    where: turnout,
    what: say`the motor of ${turnout} stands in ${others.join(', ')}`,
    figure: Number.isFinite(shift) ? Math.abs(shift) : null,
    limit: 0,
    unit: 'mm',
    mend: moveWords(turnout, clash),
    source: 'solid geometry: the motor needs its room to itself',
  });
}

function sharedFinding(turnout: string, clash: Clash, deep: number): Finding {
  const others = clash.with;
  return tell({
    rule: 'motor-in-shelf',
    level: 'care',
    where: turnout,
    what: say`the motor of ${turnout} hangs ${length(deep)} into ${others.join(', ')}`,
    figure: deep,
    limit: 0,
    unit: 'mm',
    mend: [
      ...say`keep what stands there ${atLeast(deep)} lower and cover the wires`,
      ...(clash.within ? [', or ', ...moveWords(turnout, clash)] : []),
    ],
    source: 'solid geometry: what is put on the shelf can meet the motor',
  });
}

function moveWords(turnout: string, { shift, within }: Clash): Sentence {
  if (!Number.isFinite(shift))
    return say`no move along its straight clears it: choose a motor that stands beside the track`;
  const away = Math.ceil(Math.abs(shift) * 10 - 1e-6) / 10;
  const way = shift > 0 ? 'on, the way one enters at the points' : 'back, towards its points';
  const words = say`move ${turnout} ${atLeast(away)} ${way}`;
  return within ? words : [...words, '; the straight next to it is shorter, so the line has to change'];
}

/** Points along every way of a turnout, in notebook coordinates. */
function spine({ shape, place }: LaidTurnout, apart: number): readonly Point[] {
  return shape.routes.flatMap(({ from, way }) => {
    const out = endStance(shape, from, place);
    let at = { x: out.x, y: out.y, heading: out.heading + Math.PI };
    return way.flatMap((stretch) => {
      const count = Math.max(1, Math.ceil(stretch.length / apart));
      const points = Array.from({ length: count + 1 }, (_, i): Point => {
        const { x, y } = moved(at, moveAlong(stretch, (stretch.length * i) / count));
        return [x, y];
      });
      at = moved(at, moveAlong(stretch, stretch.length));
      return points;
    });
  });
}

/** Turnouts that lie over each other: their middles come nearer than a gauge where they are not joined. */
export function overlapFindings(turnouts: readonly LaidTurnout[], gauge: number): readonly Finding[] {
  const all = turnouts.map((turnout) => ({
    turnout,
    points: spine(turnout, gauge / 2),
    reach: Math.max(...turnout.shape.routes.map(({ way }) => wayLength(way))),
    ends: Object.keys(turnout.shape.ends)
      .filter(isEnd)
      .map((end) => endStance(turnout.shape, end, turnout.place)),
  }));
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b) => {
      const [p, q] = [a.turnout.place, b.turnout.place];
      if (Math.hypot(p.x - q.x, p.y - q.y) > a.reach + b.reach + gauge) return [];
      const shared = a.ends.filter((end) =>
        b.ends.some((other) => Math.hypot(end.x - other.x, end.y - other.y) < 1e-3),
      );
      const isJoint = ([x, y]: Point) => shared.some((end) => Math.hypot(end.x - x, end.y - y) < 3 * gauge);
      const free = a.points.filter((point) => !isJoint(point));
      const others = b.points.filter((point) => !isJoint(point));
      const least = free.reduce(
        (low, [x, y]) => others.reduce((near, [u, v]) => Math.min(near, Math.hypot(u - x, v - y)), low),
        Number.POSITIVE_INFINITY,
      );
      return least >= 0.95 * gauge ? [] : [overlapFinding([a.turnout.id, b.turnout.id], least, gauge)];
    }),
  );
}

/** Turnouts that are written and that no line runs through. */
export function unlaidFindings(
  written: readonly { readonly id: string }[],
  laid: readonly LaidTurnout[],
): readonly Finding[] {
  const known = new Set(laid.map(({ id }) => id));
  return written
    .filter(({ id }) => !known.has(id))
    .map(({ id }) =>
      tell({
        ...{ rule: 'turnout-not-laid', level: 'care', where: id, figure: null, limit: null, unit: 'count' },
        what: say`${id} is written, and no line is laid through it: it is on no drawing, in no list and in no wiring`,
        mend: say`lay it as a piece of a line, { turnout: ${id}, enter: points }, or take it off`,
        source: 'this notebook',
      }),
    );
}

function overlapFinding([one, other]: readonly [string, string], least: number, gauge: number): Finding {
  return tell({
    rule: 'turnouts-overlap',
    level: 'halt',
    where: one,
    what: say`${one} and ${other} lie over each other: their middles come within ${length(least)}`,
    figure: least,
    limit: gauge,
    unit: 'mm',
    mend: say`move one of them by at least ${atLeast(Math.ceil((gauge - least) * 10) / 10)}`,
    source: 'plane geometry: rails of two turnouts cannot share a place',
  });
}

const WORDS: Readonly<Record<string, string>> = {
  lengths: 'its lengths follow its frog number by RP-12.7 for 9 mm gauge, in proportion',
  radius: 'the radius of its branch follows from its straight and angle',
  throw: "its throw bar is taken 1.5 gauges from the points' end",
};

/** Figures of turnouts that nobody measured. */
export function assumedFindings(turnouts: readonly LaidTurnout[]): readonly Finding[] {
  return turnouts.flatMap(({ id, shape }) => {
    if (shape.assumed.length === 0) return [];
    return [
      tell({
        rule: 'turnout-assumed',
        level: 'note',
        where: id,
        what: say`of ${id}, ${shape.assumed.map((name) => WORDS[name] ?? name).join('; ')}`,
        figure: null,
        limit: null,
        unit: 'mm',
        mend: say`measure the turnout and write straight, angle, radius and throw`,
        source: 'assumption, no source; most ready-made turnouts follow no frog formula',
      }),
    ];
  });
}
