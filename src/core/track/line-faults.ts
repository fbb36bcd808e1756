import type { Fault } from '../units/problem.ts';
import { longestEasement } from './easement.ts';
import { deg, fault, mm } from './fault.ts';
import type { LineInput } from './input.ts';
import type { CurvePiece, Piece, TurnoutPiece } from './piece.ts';
import type { TurnoutShape } from './turnout.ts';
import { endsFrom, routeBetween } from './turnout-shape.ts';

type Shapes = ReadonlyMap<string, TurnoutShape>;

/** What keeps a line from being laid out at all: lengths of nothing, easements too long, ways a turnout does not have. */
export function lineFaults(line: LineInput, shapes: Shapes): readonly Fault[] {
  return [...line.pieces.flatMap((piece) => pieceFaults(piece, shapes)), ...heightFaults(line), ...startFaults(line)];
}

function pieceFaults(piece: Piece, shapes: Shapes): readonly Fault[] {
  if (piece.kind === 'turnout') return turnoutFaults(piece, shapes);
  const times = piece.times === null ? [] : timesFaults(piece.times, piece.at);
  if (piece.kind === 'straight') return [...times, ...positive(piece.length, `${piece.at}.straight`, 'the straight')];
  return [
    ...times,
    ...positive(piece.radius, `${piece.at}.radius`, 'the radius'),
    ...turnFaults(piece),
    ...easementFaults(piece),
  ];
}

function timesFaults(times: number, at: string): readonly Fault[] {
  if (Number.isInteger(times) && times >= 1 && times <= 1000) return [];
  return [
    fault('times-impossible', `${at}.times`, {
      what: `${times} pieces cannot be laid`,
      mend: 'write a whole number from 1 to 1000',
    }),
  ];
}

function positive(value: number | 'to close', at: string, name: string): readonly Fault[] {
  if (value === 'to close' || value > 0) return [];
  return [fault('length-impossible', at, { what: `${name} is ${mm(value)}`, mend: 'write a length of more than 0' })];
}

function turnFaults({ through, times, at }: CurvePiece): readonly Fault[] {
  if (through === 'to close' || (through > 0 && through * (times ?? 1) <= 40 * Math.PI + 1e-9)) return [];
  const words = { what: `the curve turns through ${deg(through)}`, mend: 'write more than 0° and at most 20 turns' };
  return [fault('turn-impossible', `${at}.through`, words)];
}

function easementFaults({ radius, through, easement, times, at }: CurvePiece): readonly Fault[] {
  if (easement < 0) {
    const words = { what: `the easement is ${mm(easement)}`, mend: 'write a length, or leave it out' };
    return [fault('length-impossible', `${at}.easement`, words)];
  }
  if (easement > 0 && times !== null) {
    const words = { what: 'ready-made curves have no easements', mend: 'leave out `times`, or the easement' };
    return [fault('easement-on-sections', `${at}.easement`, words)];
  }
  if (radius === 'to close' || through === 'to close') return [];
  const most = longestEasement({ radius, through });
  if (easement <= most + 1e-9) return [];
  return [
    fault('easement-too-long', `${at}.easement`, {
      what: `two easements of ${mm(easement)} turn ${deg(easement / radius)}, and the whole curve is ${deg(through)}`,
      mend: `at most ${mm(Math.floor(most * 10) / 10)} at each end fit a radius of ${mm(radius)}`,
    }),
  ];
}

function turnoutFaults(piece: TurnoutPiece, shapes: Shapes): readonly Fault[] {
  const shape = shapes.get(piece.turnout);
  if (shape === undefined) return [];
  if (routeBetween(shape, piece.enter, piece.take) !== null) return [];
  const ways = endsFrom(shape, piece.enter);
  const known = Object.keys(shape.ends).join(', ');
  const words =
    ways.length === 0
      ? { what: `${piece.turnout} has no end called ${piece.enter}`, mend: `it has ${known}` }
      : {
          what: `${piece.turnout} has no way from ${piece.enter} to ${piece.take}`,
          mend: `from ${piece.enter} it goes to ${ways.join(' or ')}`,
        };
  return [fault('no-way-through', `${piece.at}.take`, words)];
}

function heightFaults(line: LineInput): readonly Fault[] {
  return line.heights.flatMap((height, i) => {
    const before = line.heights[i - 1];
    const from = before === undefined ? 0 : before.along;
    if (before === undefined ? height.along >= 0 : height.along > from) return [];
    const what = `the height at ${mm(height.along)} comes after the one at ${mm(from)}`;
    return [fault('heights-order', `${height.at}.at`, { what, mend: 'write heights in the order of the line' })];
  });
}

/** A height written twice for one place, once at the start and once among the heights. */
function startFaults({ from, heights }: LineInput): readonly Fault[] {
  const [first] = heights;
  if (from.kind !== 'place' || from.height === null || first === undefined || first.along !== 0) return [];
  if (first.height === from.height) return [];
  const what = `the line starts at ${mm(from.height)}, and its heights say ${mm(first.height)} at 0`;
  return [fault('height-twice', `${first.at}.height`, { what, mend: 'write the height of the start once' })];
}
