import type { Fault } from '../units/problem.ts';
import { besideLine } from './beside.ts';
import { chainSlots, closeChain } from './closing.ts';
import { fault } from './fault.ts';
import { formFaults } from './form-faults.ts';
import type { LineInput, TrackInput } from './input.ts';
import type { LaidTurnout, Layout, LineClosing } from './laid.ts';
import { layLine } from './lay-line.ts';
import type { LineWay } from './line.ts';
import { lineFaults } from './line-faults.ts';
import { gaugeOf } from './scale.ts';
import { wayThrough } from './site.ts';
import { facingBack, type Stance } from './stretch.ts';
import type { TurnoutShape } from './turnout.ts';
import { endStance, isEnd, turnoutShape } from './turnout-shape.ts';

type Laid = {
  readonly lines: Map<string, LineWay>;
  readonly turnouts: Map<string, LaidTurnout>;
  readonly closings: LineClosing[];
};

/** All lines in plan, each after those it starts from or has to arrive at. Lines with faults are left out. */
export function layOutLines(input: TrackInput): Layout & { readonly faults: readonly Fault[] } {
  const early = formFaults(input);
  if (early.length > 0) return { lines: [], turnouts: [], closings: [], faults: early };
  const gauge = gaugeOf(input.scale);
  const shapes = new Map(input.turnouts.map((turnout) => [turnout.id, turnoutShape(turnout, gauge)]));
  const faults = input.lines.flatMap((line) => lineFaults(line, shapes));
  if (faults.length > 0) return { lines: [], turnouts: [], closings: [], faults };
  const laid: Laid = { lines: new Map(), turnouts: new Map(), closings: [] };
  const found: Fault[] = [];
  let waiting = input.lines;
  for (let before = -1; waiting.length !== before; ) {
    before = waiting.length;
    for (const line of waiting) if (isReady(line, input, laid)) found.push(...layNow(line, input, { laid, shapes }));
    waiting = waiting.filter(({ id }) => !laid.lines.has(id));
  }
  laid.closings.push(...lateClosings(input, laid, shapes));
  const stuck = waiting.map((line) => waitingFault(line));
  const beside = input.beside.map((one) => besideLine(one, laid.lines));
  const lines = [
    ...input.lines.flatMap(({ id }) => laid.lines.get(id) ?? []),
    ...beside.flatMap(({ line }) => line ?? []),
  ];
  return {
    lines,
    turnouts: [...laid.turnouts.values()],
    closings: laid.closings,
    faults: [...found, ...stuck, ...beside.flatMap((one) => one.faults)],
  };
}

/** The line that sets a turnout's place: the first that lays it. */
function ownerOf(turnout: string, { lines }: TrackInput): string | undefined {
  return lines.find(({ pieces }) => pieces.some((piece) => piece.kind === 'turnout' && piece.turnout === turnout))?.id;
}

function isReady(line: LineInput, input: TrackInput, laid: Laid): boolean {
  if (startOf(line, laid) === null) return false;
  const others = line.pieces.every(
    (piece) =>
      piece.kind !== 'turnout' || ownerOf(piece.turnout, input) === line.id || laid.turnouts.has(piece.turnout),
  );
  // a line with nothing to find can be laid before what it arrives at, and is held against it afterwards
  return others && (chainSlots(line.pieces).length === 0 || arrival(line, input, laid) !== 'not yet');
}

function layNow(
  line: LineInput,
  input: TrackInput,
  { laid, shapes }: { readonly laid: Laid; readonly shapes: ReadonlyMap<string, TurnoutShape> },
): readonly Fault[] {
  const turnouts = new Map(input.turnouts.map((turnout) => [turnout.id, turnout]));
  const goal = arrival(line, input, laid);
  const start = startOf(line, laid);
  if (start === null) return [];
  const target = goal === 'not yet' || goal === 'none' ? null : goal;
  const one = layLine(line, { turnouts, shapes, placed: laid.turnouts, start, target });
  laid.lines.set(line.id, one.line);
  for (const turnout of one.turnouts) laid.turnouts.set(turnout.id, turnout);
  laid.closings.push(...one.closings);
  return one.faults;
}

/** Lines that were laid before what they have to arrive at. */
function lateClosings(
  input: TrackInput,
  laid: Laid,
  shapes: ReadonlyMap<string, TurnoutShape>,
): readonly LineClosing[] {
  return input.lines.flatMap((line): readonly LineClosing[] => {
    const way = laid.lines.get(line.id);
    const told = laid.closings.some((one) => one.line === line.id && one.target === line.ends);
    const target = arrival(line, input, laid);
    if (way === undefined || told || target === 'none' || target === 'not yet') return [];
    const turnoutWay = wayThrough({ shapes });
    const chain = { start: way.start, pieces: line.pieces, target, turnoutWay };
    return [{ line: line.id, first: 0, target: line.ends, chain, closing: closeChain(chain) }];
  });
}

/** Where a line starts and looks; null while what it starts from is not laid. */
function startOf(line: LineInput, laid: Laid): Stance | null {
  if (line.from.kind === 'place') return line.from.stance;
  return outward(line.from.name, laid);
}

/** Where a line has to arrive, looking on: `none` when it ends open or in itself, `not yet` while it is not known. */
function arrival(line: LineInput, input: TrackInput, laid: Laid): Stance | 'none' | 'not yet' {
  if (line.ends === 'open' || line.ends === 'buffer') return 'none';
  const [name = '', end = ''] = line.ends.split('.');
  if (ownerOf(name, input) === line.id && isEnd(end)) return 'none';
  if (name === line.id) return startOf(line, laid) ?? 'not yet';
  const other = input.lines.find(({ id }) => id === name);
  if (end === 'start' && other?.from.kind === 'place') return other.from.stance;
  const out = outward(line.ends, laid);
  return out === null ? 'not yet' : facingBack(out);
}

/** An end of a turnout or line, looking away from it; null while it is not laid. */
export function outward(name: string, laid: Pick<Laid, 'lines' | 'turnouts'>): Stance | null {
  const [owner = '', end = ''] = name.split('.');
  const turnout = laid.turnouts.get(owner);
  if (turnout !== undefined && isEnd(end)) return endStance(turnout.shape, end, turnout.place);
  const line = laid.lines.get(owner);
  if (line === undefined) return null;
  return end === 'start' ? facingBack(line.start) : line.end;
}

function waitingFault(line: LineInput): Fault {
  const from = line.from.kind === 'end' ? line.from.name : line.ends;
  return fault('line-waits', line.from.kind === 'end' ? `${line.at}.from` : `${line.at}.ends`, {
    what: `${line.id} waits for ${from}, which no line before it lays`,
    mend: 'lay the turnout in a line that starts from a place, or start this line from a place',
  });
}
