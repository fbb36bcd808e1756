import type { Finding } from '../finding.ts';
import type { Polygon } from '../geometry/shapes.ts';
import { isClosed } from './closing.ts';
import { deckAreas, type Leaving, leavings } from './deck.ts';
import { halfWidthOf } from './half-width.ts';
import type { LineInput, TrackInput } from './input.ts';
import { layOutLines } from './layout.ts';
import { type Extents, type FoundValue, type LineWay, lineExtents } from './line.ts';
import { type CurvePiece, withValue } from './piece.ts';
import { leavingFinding } from './plan-findings.ts';

/** A curve of a line by its piece, counted from 0. */
export type CurveOf = { readonly line: string; readonly piece: number };

/** What follows when one radius changes. */
export type RadiusChange = {
  readonly radius: number;
  readonly lines: readonly {
    readonly id: string;
    readonly length: { readonly before: number; readonly after: number };
    readonly extents: { readonly before: Extents; readonly after: Extents };
    readonly unknowns: { readonly before: readonly FoundValue[]; readonly after: readonly FoundValue[] };
  }[];
  readonly closes: boolean;
  readonly leaves: readonly Leaving[];
  /** the largest radius with which everything closes and stays on the deck; null when the written one already does not */
  readonly largest: number | null;
};

/** The radius a curve is written with, mm; null where it is none, or is found. */
export function writtenRadius(input: TrackInput, { line, piece }: CurveOf): number | null {
  const own = input.lines.find(({ id }) => id === line)?.pieces[piece];
  return own?.kind === 'curve' && own.radius !== 'to close' ? own.radius : null;
}

/** The line of a curve and all lines that hang together with it by turnouts and ends: no other follows its change. */
export function together(input: TrackInput, id: string): TrackInput {
  const names = ({ id: own, pieces, from, ends }: LineInput): readonly string[] => [
    own,
    ...pieces.flatMap((piece) => (piece.kind === 'turnout' ? [piece.turnout] : [])),
    ...[from.kind === 'end' ? from.name : '', ends].map((name) => name.split('.')[0] ?? ''),
  ];
  const joined = new Set([id]);
  for (let before = 0; before !== joined.size; ) {
    before = joined.size;
    for (const line of input.lines) {
      const own = names(line).filter((name) => name !== 'open' && name !== 'buffer' && name !== '');
      if (own.some((name) => joined.has(name))) for (const name of own) joined.add(name);
    }
  }
  const beside = input.beside.filter(({ line }) => joined.has(line));
  return { ...input, lines: input.lines.filter((line) => joined.has(line.id)), beside };
}

/** The plan with another radius of one curve, mm. */
export function withRadius(input: TrackInput, { line, piece }: CurveOf, radius: number): TrackInput {
  const change = (own: LineInput): LineInput => ({
    ...own,
    pieces: own.pieces.map((one, i) => (i === piece ? withValue(one, 'radius', radius) : one)),
  });
  return { ...input, lines: input.lines.map((own) => (own.id === line ? change(own) : own)) };
}

/** Decks, and half of what has to lie on them; mm. */
export type Ground = { readonly areas: readonly Polygon[]; readonly half: number };

/** Whether every line can be laid, closes and stays on the deck. */
function stays(input: TrackInput, { areas, half }: Ground): boolean {
  const { lines, closings, faults } = layOutLines(input);
  if (faults.length > 0) return false;
  if (closings.some(({ closing }) => !isClosed(closing.miss) || closing.short.length > 0)) return false;
  return lines.every((line) => leavings(line, areas, half).length === 0);
}

/** A hundredth of a mm: finer than any trammel. */
const FINE = 0.01;

/**
 * The largest radius of a curve, up to `most`, with which every line still closes and stays on the deck, rounded down to
 * 0.1 mm; null when no smaller radius does.
 */
export function largestRadius(
  input: TrackInput,
  curve: CurveOf,
  { most, ...ground }: Ground & { readonly most: number },
): number | null {
  const connected = together(input, curve.line);
  const ok = (radius: number) => stays(withRadius(connected, curve, radius), ground);
  let high = most;
  let low = most;
  // down in steps of a twentieth until one stays: a closing may fail again for radii that are too small
  for (let step = 1; step <= 16 && !ok(low); step += 1) {
    high = low;
    low = most * (1 - step / 20);
  }
  if (!ok(low)) return null;
  while (high - low > FINE) {
    const middle = (low + high) / 2;
    if (ok(middle)) low = middle;
    else high = middle;
  }
  return Math.floor(low * 10 + 1e-6) / 10;
}

/** What follows when a written radius is made larger by so much: what is found anew, where it leaves the deck, the most. */
export function enlargeRadius(input: TrackInput, curve: CurveOf, by: number): RadiusChange | null {
  const radius = writtenRadius(input, curve);
  if (radius === null) return null;
  const half = halfWidthOf(input);
  const ground = { areas: deckAreas(input.ground), half };
  const before = layOutLines(input);
  const after = layOutLines(withRadius(input, curve, radius + by));
  const lines = after.lines.flatMap((line) => {
    const old = before.lines.find(({ id }) => id === line.id);
    return old === undefined ? [] : [compared(old, line)];
  });
  return {
    radius: radius + by,
    lines,
    closes: after.closings.every(({ closing }) => isClosed(closing.miss) && closing.short.length === 0),
    leaves: after.lines.flatMap((line) => leavings(line, ground.areas, half)),
    largest: stays(input, ground) ? largestRadius(input, curve, { ...ground, most: radius + by }) : null,
  };
}

/** A line before and after a change. */
export function compared(old: LineWay, now: LineWay): RadiusChange['lines'][number] {
  return {
    id: now.id,
    length: { before: old.length, after: now.length },
    extents: { before: lineExtents(old), after: lineExtents(now) },
    unknowns: { before: old.unknowns, after: now.unknowns },
  };
}

/** Every place where a roadbed leaves the deck, with the largest radius that stays where one curve can mend it. */
export function edgeFindings(
  input: TrackInput,
  { lines, ...ground }: Ground & { readonly lines: readonly LineWay[] },
): readonly Finding[] {
  if (ground.areas.length === 0) return [];
  const found = lines.flatMap((line) => leavings(line, ground.areas, ground.half));
  const answers = new Map<string, number | null>();
  return found.map((leaving) => {
    const curve = curveToMend(input, leaving);
    if (curve === null) return leavingFinding(leaving, null);
    const key = `${curve.line} ${curve.piece}`;
    const known = answers.get(key);
    const radius =
      known === undefined ? largestRadius(input, curve, { ...ground, most: writtenRadius(input, curve) ?? 0 }) : known;
    answers.set(key, radius);
    return leavingFinding(leaving, radius === null ? null : { piece: curve.piece + 1, radius });
  });
}

/** The curve that leaves the deck, if its radius is written; else the first of its line whose is. */
function curveToMend(input: TrackInput, { line, piece }: Leaving): CurveOf | null {
  const pieces = input.lines.find(({ id }) => id === line)?.pieces ?? [];
  const isWritten = (one: CurvePiece) => one.radius !== 'to close';
  const own = pieces[piece];
  if (own?.kind === 'curve' && isWritten(own)) return { line, piece };
  const first = pieces.findIndex((one) => one.kind === 'curve' && isWritten(one));
  return first < 0 || own?.kind === 'straight' ? null : { line, piece: first };
}
