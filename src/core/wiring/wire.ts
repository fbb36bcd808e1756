import type { Vector } from '../geometry/shapes.ts';
import type { Sentence } from '../units/say.ts';

/** One wire as it is cut and labelled. Notebook coordinates, mm. */
export type Wire = {
  readonly id: string;
  /** what is written on both its ends: the pair's number and the wire's letter */
  readonly label: string;
  readonly kind: 'bus' | 'unit' | 'feeder' | 'lead' | 'load' | 'frog';
  /** what it feeds, which sets its colours */
  readonly use: 'rails' | 'turnout' | 'other';
  readonly stock: string;
  readonly colour: string;
  readonly from: Sentence;
  readonly to: Sentence;
  /** what else its builder has to know; absent for most */
  readonly note?: Sentence;
  readonly district: string;
  /** the pair it belongs to or hangs on: a district's, or a unit's */
  readonly net: string;
  /** the pair of bus that it is joined to, by a T-joint or a plug where it is bus itself; null at the supply or a unit */
  readonly on: string | null;
  /** how far along the bus from the supply it begins or is joined, mm */
  readonly along: number;
  readonly path: readonly Vector[];
  /** length of the path as drawn */
  readonly drawn: number;
  /** added for ends, bends and mistakes */
  readonly slack: number;
  readonly length: number;
};

/** The two wires of a pair; none where it is not laid. */
export function wiresOfPair(wires: readonly Wire[], pair: string): readonly Wire[] {
  return wires.filter(({ id }) => id === `${pair}-a` || id === `${pair}-b`);
}

/** What is written on both wires of a pair before their letters; its own id where it is not laid. */
export function pairNumber(wires: readonly Wire[], pair: string): string {
  return wires.find(({ id }) => id === `${pair}-a`)?.label.replace(/a$/, '') ?? pair;
}

/** Both wires of a pair before they have their number. */
export type Pair = Omit<Wire, 'label' | 'colour'>;

type Slack = { readonly share: number; readonly ends: number };

/** Slack: a bus has a share of its length and an end at both ends, a thin wire its two ends; common practice, no source. */
export const BUS_SLACK: Slack = { share: 0.05, ends: 300 };
export const TAIL_SLACK: Slack = { share: 0.1, ends: 60 };

/** A lead to a span that lifts hangs in a loop besides, mm. */
export const LEAD_LOOP = 200;

/** Wires are cut to whole steps that a rule shows: 5 mm, or a quarter of an inch; mm. */
const CUT = { mm: 5, in: 6.35 } as const;

/** Length of a path through space, mm. */
export function spaceLength(path: readonly Vector[]): number {
  return path.slice(1).reduce((sum, to, i) => {
    const from = path[i] ?? to;
    return sum + Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  }, 0);
}

/** A path with its slack, the whole rounded up to what a rule shows. */
export function cut(
  path: readonly Vector[],
  { share, ends }: Slack,
  show: 'mm' | 'in',
): Pick<Wire, 'path' | 'drawn' | 'slack' | 'length'> {
  const drawn = spaceLength(path);
  const length = Math.ceil((drawn * (1 + share) + ends) / CUT[show] - 1e-9) * CUT[show];
  return { path, drawn, slack: length - drawn, length };
}

/** Colours by what a pair feeds; none is brown, blue or green with yellow, which IEC 60445 keeps for the mains. */
const COLOURS: Readonly<Record<Wire['use'], readonly [string, string]>> = {
  rails: ['red', 'black'],
  turnout: ['orange', 'pink'],
  other: ['violet', 'white'],
};

/** The colours of a pair's wires a and b; common practice, no source, as far as the mains' are left out. */
export function colours(use: Wire['use']): readonly [string, string] {
  return COLOURS[use];
}

/** Up to a live frog. */
export const FROG_COLOUR = 'turquoise';
