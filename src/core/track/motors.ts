import { type Convex, convexPieces } from '../geometry/convex.ts';
import { rectangle } from '../geometry/polygon.ts';
import { standing, within } from '../geometry/pose.ts';
import type { Point, Pose, Vector } from '../geometry/shapes.ts';
import { clashOnLine } from '../geometry/sweep.ts';
import type { Envelope, Part, Request } from '../stock/part.ts';
import { partSolid } from '../stock/solid.ts';
import { benchUnder, deckAreas, outside } from './deck.ts';
import type { Element } from './element.ts';
import type { Ground, Obstacle, Standing } from './input.ts';
import type { LaidTurnout, Layout } from './laid.ts';
import type { LineWay } from './line.ts';
import { moved, type Stance } from './stretch.ts';
import type { Motor } from './turnout.ts';

/** What a motor asks for: room under the deck, and a slot through it for the throw bar. */
export type MotorRoom = {
  readonly turnout: string;
  readonly envelope: Envelope;
  readonly slot: Request | null;
  /** what stands in its room, and the least move along the turnout's straight that clears everything; mm, forwards positive */
  readonly clash: Clash | null;
  /** shelves whose space it takes from */
  readonly shared: Clash | null;
};

/** `within` says whether the straights before and after the turnout are long enough for the move. */
export type Clash = { readonly with: readonly string[]; readonly shift: number; readonly within: boolean };

/** Straight track a turnout can be moved along: back from its points, and on beyond its straight; mm. */
export type Travel = { readonly back: number; readonly on: number };

/** A throw bar's slot is one gauge across and 0.7 along (common practice, no source). */
const SLOT = { along: 0.7, across: 1 } as const;

/** Everything under the decks that a motor could meet, in notebook coordinates; floor at 0. */
export function obstaclesUnder({ benches, parts, envelopes }: Ground): readonly Obstacle[] {
  return benches.flatMap((bench) => {
    const stand = benchPose(bench);
    const pieces = parts
      .filter((part) => part.bench === bench.id && part.role !== 'deck')
      .flatMap((part) => part.places.flatMap(({ id, pose }) => bodies(id, part, within(stand, pose))));
    return [
      ...pieces,
      ...envelopes.filter(({ kind }) => kind !== 'motor' && kind !== 'wire').flatMap((one) => room(one, stand)),
    ];
  });
}

function benchPose({ place }: Standing): Pose {
  return standing([place.x, place.y], place.turn);
}

function bodies(id: string, part: Part, pose: Pose): readonly Obstacle[] {
  return convexPieces(partSolid(part), pose).map((body) => ({ id, kind: 'solid', body }));
}

function room({ id, kind, min, max }: Envelope, stand: Pose): readonly Obstacle[] {
  const body = box({ low: [min[0], min[1]], high: [max[0], max[1]], from: min[2], to: max[2] }, stand);
  return body.map((one) => ({ id, kind: kind === 'shelf' ? 'room' : 'solid', body: one }));
}

type Box = { readonly low: Point; readonly high: Point; readonly from: number; readonly to: number };

function box({ low, high, from, to }: Box, pose: Pose): readonly Convex[] {
  const polygon = { outline: rectangle(low, high), holes: [] };
  return convexPieces({ prisms: [{ polygon, from, to }], cuts: [] }, pose);
}

/** The room each turnout's motor takes, in the order of the turnouts. */
export function motorRooms({ turnouts, lines }: Layout, ground: Ground, gauge: number): readonly MotorRoom[] {
  const wanted = turnouts.filter(({ turnout }) => turnout.motor !== null);
  if (wanted.length === 0) return [];
  const obstacles = obstaclesUnder(ground);
  return wanted.flatMap((turnout) => {
    const { motor } = turnout.turnout;
    const travel = travelOf(
      turnout,
      lines.find(({ id }) => id === turnout.line),
    );
    return motor === null ? [] : [motorRoom(turnout, motor, { ground, obstacles, gauge, travel })];
  });
}

type Site = {
  readonly ground: Ground;
  readonly obstacles: readonly Obstacle[];
  readonly gauge: number;
  readonly travel: Travel;
};

/** The straights next to a turnout on the line that lays it; none beside a way that branches off. */
export function travelOf({ enter, take, enters, leaves }: LaidTurnout, line: LineWay | undefined): Travel {
  const straight = (isNext: (element: Element) => boolean) => {
    const next = line?.elements.find((element) => element.length > 0 && isNext(element));
    return next?.kind === 'straight' && next.turnout === null ? next.length : 0;
  };
  const before = straight(({ from, length }) => Math.abs(from + length - enters) < 1e-6);
  const after = straight(({ from }) => Math.abs(from - leaves) < 1e-6);
  if (enter === 'points' && take === 'straight') return { back: before, on: after };
  return enter === 'straight' && take === 'points' ? { back: after, on: before } : { back: 0, on: 0 };
}

function motorRoom(laid: LaidTurnout, motor: Motor, { ground, obstacles, gauge, travel }: Site): MotorRoom {
  const at = moved(laid.place, { x: laid.shape.throwBar, y: 0, turn: 0 });
  const bench = benchUnder(ground, [at.x, at.y]);
  const deck = bench === null ? null : deckAt(ground, bench, [at.x, at.y]);
  const top = bench === null ? 0 : bench.deckTop - (deck?.thickness ?? 0);
  const [c, s] = [Math.cos(at.heading), Math.sin(at.heading)];
  const pose: Pose = { origin: [at.x, at.y, 0], x: [c, s, 0], y: [-s, c, 0], z: [0, 0, 1] };
  const [half, side] = [motor.along / 2, motor.across / 2];
  const [body] = box({ low: [-half, -side], high: [half, side], from: top - motor.below, to: top }, pose);
  const none: Vector = [at.x, at.y, top];
  const envelope: Envelope = {
    id: `${laid.id}.motor`,
    of: laid.id,
    kind: 'motor',
    min: body?.box.min ?? none,
    max: body?.box.max ?? none,
  };
  const slot =
    deck === null || bench === null ? null : slotThrough(laid.id, { part: deck.id, at, top: bench.deckTop, gauge });
  const clash = (kind: Obstacle['kind']) => {
    const own = obstacles.filter((one) => one.kind === kind);
    return body === undefined ? null : clashOf(body, own, { direction: [c, s, 0], travel });
  };
  return { turnout: laid.id, envelope, slot, clash: clash('solid'), shared: clash('room') };
}

type Slot = { readonly part: string; readonly at: Stance; readonly top: number; readonly gauge: number };

/** The slot for a throw bar: by its size where the track lies along an axis, else by its outline. */
function slotThrough(by: string, { part, at, top, gauge }: Slot): Request {
  const [along, across] = [SLOT.along * gauge, SLOT.across * gauge];
  const [c, s] = [Math.cos(at.heading), Math.sin(at.heading)];
  const asked = { by, part, at: [at.x, at.y, top], limit: null, chapter: 'track' } as const;
  if (Math.abs(s) < 1e-9) return { ...asked, kind: 'slot', size: [along, across] };
  if (Math.abs(c) < 1e-9) return { ...asked, kind: 'slot', size: [across, along] };
  const corner = (u: number, v: number): Point => [at.x + c * u - s * v, at.y + s * u + c * v];
  const [a, b] = [along / 2, across / 2];
  return {
    ...asked,
    kind: 'cut-out',
    size: [along, across],
    outline: [corner(-a, -b), corner(a, -b), corner(a, b), corner(-a, b)],
  };
}

/** The piece of deck under a point, null where there is none. */
function deckAt({ benches, parts }: Ground, bench: Standing, point: Point) {
  for (const part of parts.filter(({ role, bench: on }) => role === 'deck' && on === bench.id)) {
    for (const place of part.places) {
      const areas = deckAreas({ benches, parts: [{ ...part, places: [place] }], envelopes: [] });
      if (areas.length > 0 && outside(areas, point) === 0) return { id: place.id, thickness: part.blank.thickness };
    }
  }
  return null;
}

/** The line a motor is moved along, and how far the track beside its turnout lets it. */
type Moving = { readonly direction: Vector; readonly travel: Travel };

/** What a body stands in, and the shortest move along a line after which it stands in nothing; one that fits comes first. */
export function clashOf(body: Convex, obstacles: readonly Obstacle[], { direction, travel }: Moving): Clash | null {
  const clashes = obstacles.flatMap(({ id, body: still }) => {
    const clash = mayMeet(body, still) ? clashOnLine(body, still, direction) : null;
    return clash === null ? [] : [{ id, ...clash }];
  });
  const now = clashes.filter(({ from, to }) => from < 0 && to > 0);
  if (now.length === 0) return null;
  const isFree = (shift: number) => clashes.every(({ from, to }) => shift <= from + 1e-9 || shift >= to - 1e-9);
  const ends = clashes.flatMap(({ from, to }) => [from, to]).filter(isFree);
  const nearest = (all: readonly number[]) =>
    all.reduce((best, end) => (Math.abs(end) < Math.abs(best) - 1e-9 ? end : best), Number.POSITIVE_INFINITY);
  const fitting = nearest(ends.filter((shift) => shift >= -travel.back && shift <= travel.on));
  const within = Number.isFinite(fitting);
  return { with: [...new Set(now.map(({ id }) => id))], shift: within ? fitting : nearest(ends), within };
}

/** Whether two bodies stand at one height at all; along the deck they may be moved to meet. */
function mayMeet(a: Convex, b: Convex): boolean {
  return a.box.min[2] < b.box.max[2] && b.box.min[2] < a.box.max[2];
}
