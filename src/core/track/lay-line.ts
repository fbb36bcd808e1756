import type { Fault } from '../units/problem.ts';
import { closeLine } from './close-line.ts';
import { chainSlots } from './closing.ts';
import { deg, fault, mm } from './fault.ts';
import type { LineInput } from './input.ts';
import type { LaidTurnout, LineClosing } from './laid.ts';
import type { LineWay } from './line.ts';
import type { Piece } from './piece.ts';
import type { Site } from './site.ts';
import type { Stance } from './stretch.ts';
import { walkLine } from './walk-line.ts';

export type LineLaid = {
  readonly line: LineWay;
  readonly turnouts: readonly LaidTurnout[];
  readonly closings: readonly LineClosing[];
  readonly faults: readonly Fault[];
};

/** Lays a line in plan: finds what is to close, then goes along its pieces. */
export function layLine(input: LineInput, site: Site): LineLaid {
  const { pieces, closings, found } = closeLine(input, site);
  const faults = closings.flatMap((closing) => looseFaults(input, closing));
  const left = unfound(input, pieces);
  if (left.length > 0)
    return { line: empty(input, site.start), turnouts: [], closings: [], faults: [...faults, ...left] };
  return { ...walkLine({ ...input, pieces }, site, found), closings, faults };
}

/** Unknowns of a line that has nowhere to arrive after them. */
function unfound(input: LineInput, pieces: readonly Piece[]): readonly Fault[] {
  return chainSlots(pieces).map(({ piece, what }) =>
    fault('nothing-to-close', `${pieces[piece]?.at ?? input.at}.${what === 'length' ? 'straight' : what}`, {
      what: `nothing determines this: after it ${input.id} has nowhere to arrive`,
      mend: 'give it a value, or write under `ends` where the line has to arrive',
    }),
  );
}

function empty({ id, at, phase, ends }: LineInput, start: Stance): LineWay {
  const none = { elements: [], length: 0, joints: [], unknowns: [], from: null };
  return { id, at, phase, ends, start, end: start, ...none };
}

/** Unknowns that nothing determines, with a value that would do. */
function looseFaults(
  input: LineInput,
  { chain, closing, first }: Pick<LineClosing, 'chain' | 'closing' | 'first'>,
): readonly Fault[] {
  const { loose, slots, values } = closing;
  const names = loose.map(
    (i) =>
      `${slots[i]?.what === 'length' ? 'straight' : slots[i]?.what} of piece ${first + (slots[i]?.piece ?? 0) + 1}`,
  );
  const slot = slots[loose[0] ?? -1];
  if (slot === undefined) return [];
  const value = values[loose[0] ?? 0] ?? 0;
  const key = slot.what === 'length' ? 'straight' : slot.what;
  const lengths = loose.every((i) => slots[i]?.what === 'length');
  const sum = loose.reduce((total, i) => total + (values[i] ?? 0), 0);
  return [
    fault('undetermined', `${chain.pieces[slot.piece]?.at ?? input.at}.${key}`, {
      what: `closing ${input.id} does not determine the ${names.join(' and the ')}${lengths ? `; together they come to ${mm(sum)}` : ''}`,
      mend: `give one of them a value, here for example ${slot.what === 'through' ? deg(value) : mm(value)}`,
    }),
  ];
}
