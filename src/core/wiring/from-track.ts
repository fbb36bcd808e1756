import type { Point } from '../geometry/shapes.ts';
import type { LineInput } from '../track/input.ts';
import type { LaidTurnout } from '../track/laid.ts';
import { type LineWay, stanceAlong } from '../track/line.ts';
import { wayLength } from '../track/stretch.ts';
import { type Metal, metalOf } from './metal.ts';
import type { RailPlan, RailSegment, SegmentEnd } from './rail-plan.ts';

/** The track as laid, and as its pieces were written. */
export type TrackAsLaid = {
  readonly lines: readonly LineWay[];
  readonly turnouts: readonly LaidTurnout[];
  readonly pieces: readonly Pick<LineInput, 'id' | 'pieces'>[];
};

/** All rails that are built now, as metal that conducts. */
export function railPlan({ lines, turnouts, pieces }: TrackAsLaid): RailPlan {
  const now = lines.filter(({ phase }) => phase === 'now');
  const walked = now.map((line) => segmentsOf(line, now, pieces.find(({ id }) => id === line.id)?.pieces ?? []));
  const segments = walked.flat();
  return {
    lines: now.map((line) => ({ id: line.id, length: line.length, place: placeOn(line) })),
    segments,
    ways: turnouts.flatMap(({ id, shape }) =>
      shape.routes.map(({ from, to, way }) => ({
        turnout: id,
        from: `${id}.${from}`,
        to: `${id}.${to}`,
        length: wayLength(way),
      })),
    ),
    metal: [...turnouts.flatMap(({ id, shape }) => metalOf(id, shape.routes)), ...plainMetal(segments, turnouts)],
    turnouts: turnouts.map(({ id, line, place, turnout }) => ({
      id,
      line,
      at: [place.x, place.y],
      frog: turnout.frog,
    })),
  };
}

function placeOn(line: LineWay): (at: number) => Point {
  return (at) => {
    const { x, y } = stanceAlong(line, at) ?? line.start;
    return [x, y];
  };
}

/** A line's rails from turnout to turnout. */
function segmentsOf(line: LineWay, lines: readonly LineWay[], pieces: LineInput['pieces']): readonly RailSegment[] {
  const segments: RailSegment[] = [];
  let from = startOf(line, lines);
  const until = (to: SegmentEnd) => segments.push({ id: `${line.id}.${segments.length + 1}`, line: line.id, from, to });
  for (const [i, piece] of pieces.entries()) {
    if (piece.kind !== 'turnout') continue;
    const own = line.elements.filter(({ piece: of, turnout }) => of === i && turnout !== null);
    const [first, last] = [own[0], own[own.length - 1]];
    if (first === undefined || last === undefined) continue;
    until(turnoutEnd(first.from, `${piece.turnout}.${piece.enter}`));
    from = turnoutEnd(last.from + last.length, `${piece.turnout}.${piece.take}`);
  }
  until(endOf(line, lines));
  return segments;
}

function turnoutEnd(at: number, name: string): SegmentEnd {
  return { at, node: name, end: name };
}

/** A plain joint has a side that lines run into and one that they leave by. */
function plainEnd(at: number, node: string, side: 'in' | 'out'): SegmentEnd {
  return { at, node, end: `${node} ${side}` };
}

function startOf(line: LineWay, lines: readonly LineWay[]): SegmentEnd {
  const node = line.from === null ? `${line.id}.start` : resolved(line.from, lines);
  if (isTurnoutEnd(node, lines)) return turnoutEnd(0, node);
  return plainEnd(0, node, node === `${line.id}.start` || node.endsWith('.end') ? 'out' : 'in');
}

function endOf(line: LineWay, lines: readonly LineWay[]): SegmentEnd {
  const open = line.ends === 'open' || line.ends === 'buffer';
  const node = open ? `${line.id}.end` : resolved(line.ends, lines);
  if (isTurnoutEnd(node, lines)) return turnoutEnd(line.length, node);
  return plainEnd(line.length, node, node === `${line.id}.end` || node.endsWith('.start') ? 'in' : 'out');
}

/** `main.start` is whatever main starts from, and `main.end` what it ends at. */
function resolved(name: string, lines: readonly LineWay[]): string {
  const [owner, end] = name.split('.');
  const line = lines.find(({ id }) => id === owner);
  if (line === undefined) return name;
  if (end === 'start') return line.from !== null && line.from !== name ? line.from : name;
  const open = line.ends === 'open' || line.ends === 'buffer' || line.ends === name;
  return open ? name : line.ends;
}

function isTurnoutEnd(node: string, lines: readonly LineWay[]): boolean {
  const [owner] = node.split('.');
  return !lines.some(({ id }) => id === owner);
}

function plainMetal(segments: readonly RailSegment[], turnouts: readonly LaidTurnout[]): readonly Metal[] {
  const nodes = new Set(segments.flatMap(({ from, to }) => [from.node, to.node]));
  return [...nodes]
    .filter((node) => !turnouts.some(({ id }) => node.startsWith(`${id}.`)))
    .map((node) => ({ id: node, inlets: [`${node} in`], outlets: [`${node} out`] }));
}
