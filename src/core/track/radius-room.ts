import { isClosed } from './closing.ts';
import { contacts } from './contacts.ts';
import { deckAreas, leavings } from './deck.ts';
import {
  type CurveOf,
  compared,
  type Ground,
  largestRadius,
  type RadiusChange,
  together,
  withRadius,
  writtenRadius,
} from './enlarge.ts';
import { halfWidthOf } from './half-width.ts';
import type { TrackInput } from './input.ts';
import { layOutLines } from './layout.ts';

/** What ends a radius's growth: the deck's edge, another line, or a closing that finds no values; null when nothing does. */
export type RadiusStop =
  | { readonly kind: 'deck'; readonly line: string; readonly at: number }
  | { readonly kind: 'line'; readonly line: string; readonly at: number; readonly other: string }
  | { readonly kind: 'closing'; readonly line: string };

/** How large one curve's radius can become, mm, and what follows for its own line and the others at that radius. */
export type RadiusRoom = CurveOf & {
  readonly radius: number;
  /** rounded down to 0.1 mm; null when no radius does */
  readonly largest: number | null;
  /** what comes first beyond it */
  readonly stop: RadiusStop | null;
  readonly lines: RadiusChange['lines'];
};

/** Radii grow by this share at a time until something stops them, and to so many times the written one at most. */
const STEP = 0.1;
const MOST = 4;
/** Half of this is lost to rounding down, mm. */
const FINE = 0.02;

type Try = Ground & { readonly near: number };

/** How large every written radius of flexible track can become while all lines close, stay on the deck and stay apart. */
export function radiusRooms(input: TrackInput): readonly RadiusRoom[] {
  const half = halfWidthOf(input);
  const ground = { areas: deckAreas(input.ground), half };
  return input.lines.flatMap(({ id, pieces }) =>
    pieces.flatMap((piece, i) =>
      piece.kind === 'curve' && piece.radius !== 'to close' && piece.times === null
        ? [roomOf(input, { line: id, piece: i }, ground)]
        : [],
    ),
  );
}

function roomOf(input: TrackInput, curve: CurveOf, ground: Ground): RadiusRoom {
  const radius = writtenRadius(input, curve) ?? 0;
  const own = together(input, curve.line);
  const near = meetings(input, ground.half);
  const stopAt = (value: number) => stopOf(withRadius(input, curve, value), { ...ground, near });
  const now = stopAt(radius);
  if (now !== null) {
    const largest = largestRadius(input, curve, { ...ground, most: radius });
    return { ...curve, radius, largest, stop: now, lines: linesAt(own, curve, largest) };
  }
  const { low, stop } = grown(radius, stopAt);
  const largest = stop === null ? null : Math.max(radius, Math.floor(low * 10 + 1e-6) / 10);
  return { ...curve, radius, largest, stop, lines: linesAt(own, curve, largest) };
}

/** The largest radius that nothing stops, from one that nothing stops, and what stops the next. */
function grown(radius: number, stopAt: (value: number) => RadiusStop | null) {
  let [low, high] = [radius, radius * (1 + STEP)];
  let stop = stopAt(high);
  while (stop === null && high < MOST * radius) {
    [low, high] = [high, high * (1 + STEP)];
    stop = stopAt(high);
  }
  while (stop !== null && high - low > FINE) {
    const middle = (low + high) / 2;
    const next = stopAt(middle);
    if (next === null) low = middle;
    else [high, stop] = [middle, next];
  }
  return { low, stop };
}

/** What is wrong first when a plan is laid; the meetings it has had all along are not. */
function stopOf(input: TrackInput, { areas, half, near }: Try): RadiusStop | null {
  const layout = layOutLines(input);
  const [fault] = layout.faults;
  const open = layout.closings.find(({ closing }) => !isClosed(closing.miss) || closing.short.length > 0);
  if (open !== undefined) return { kind: 'closing', line: open.line };
  if (fault !== undefined)
    return { kind: 'closing', line: input.lines.find(({ at }) => fault.at.startsWith(`${at}.`))?.id ?? '' };
  const left = areas.length === 0 ? [] : layout.lines.flatMap((line) => leavings(line, areas, half));
  const [worst] = left.toSorted((a, b) => b.beyond - a.beyond);
  if (worst !== undefined) return { kind: 'deck', line: worst.line, at: worst.worst };
  const met = contacts(layout, 2 * half);
  const [nearest] = met.toSorted((a, b) => a.distance - b.distance);
  if (met.length <= near || nearest === undefined) return null;
  return { kind: 'line', line: nearest.a.line, at: nearest.a.at, other: nearest.b.line };
}

/** How often roadbeds meet away from turnouts as the plan is written. */
function meetings(input: TrackInput, half: number): number {
  return contacts(layOutLines(input), 2 * half).length;
}

/** Every line that is another with a radius changed; none when there is no such radius. */
function linesAt(input: TrackInput, curve: CurveOf, radius: number | null): RadiusChange['lines'] {
  if (radius === null) return [];
  const before = layOutLines(input);
  const after = layOutLines(withRadius(input, curve, radius));
  return after.lines.flatMap((line) => {
    const old = before.lines.find(({ id }) => id === line.id);
    return old === undefined ? [] : [compared(old, line)];
  });
}
