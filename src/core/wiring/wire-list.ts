import type { Point, Vector } from '../geometry/shapes.ts';
import type { Tap } from './bus-run.ts';
import { districtOf } from './districts.ts';
import type { Feeder } from './feeders.ts';
import type { WiringInput } from './input.ts';
import type { RailTurnout } from './rail-plan.ts';
import { outward, type Under } from './under.ts';

/** One wire as it is cut and labelled. Notebook coordinates, mm. */
export type Wire = {
  readonly id: string;
  /** what is written on both its ends: the pair's number and the wire's letter */
  readonly label: string;
  readonly kind: 'bus' | 'feeder' | 'lead' | 'load' | 'frog';
  readonly stock: string;
  readonly colour: string;
  readonly from: string;
  readonly to: string;
  readonly district: string;
  readonly path: readonly Vector[];
  /** length of the path as drawn */
  readonly drawn: number;
  /** added for ends, bends and mistakes */
  readonly slack: number;
  readonly length: number;
};

/** Slack: a bus has a share of its length and an end at both ends, a thin wire its two ends; common practice, no source. */
const BUS_SLACK = { share: 0.05, ends: 300 } as const;
const TAIL_SLACK = { share: 0.1, ends: 60 } as const;
/** A lead to a span that lifts hangs in a loop besides, mm. */
const LEAD_LOOP = 200;

/** Wire is cut to whole centimetres. */
const CUT = 10;

/** Below the deck's underside at this depth thin wires are clipped, mm. */
const CLIPPED = 5;

/** Lengths of path through space, mm. */
export function spaceLength(path: readonly Vector[]): number {
  return path.slice(1).reduce((sum, to, i) => {
    const from = path[i] ?? to;
    return sum + Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  }, 0);
}

type Slack = { readonly share: number; readonly ends: number };

function cut(path: readonly Vector[], { share, ends }: Slack): Pick<Wire, 'path' | 'drawn' | 'slack' | 'length'> {
  const drawn = spaceLength(path);
  const length = Math.ceil((drawn * (1 + share) + ends) / CUT - 1e-9) * CUT;
  return { path, drawn, slack: length - drawn, length };
}

/** NEM 605: digital red and brown; direct current red and black; turnouts green; the rest violet. */
export function colours(
  kind: Wire['kind'],
  use: { readonly control: 'digital' | 'dc'; readonly turnout: boolean },
): readonly [string, string] {
  if (kind === 'load') return use.turnout ? ['green', 'green'] : ['violet', 'violet'];
  return use.control === 'digital' ? ['red', 'brown'] : ['red', 'black'];
}

/** Everything the wires are drawn between. */
export type Wired = {
  readonly input: WiringInput;
  readonly under: Under;
  readonly path: readonly Point[];
  readonly z: number;
  readonly taps: ReadonlyMap<string, Tap>;
  readonly feeders: readonly Feeder[];
  readonly loads: readonly {
    readonly drop: string;
    readonly id: string;
    readonly at: Point;
    readonly district: string;
    readonly turnout: boolean;
  }[];
  /** how far along the bus each district's pair reaches, mm */
  readonly pairs: readonly { readonly district: string; readonly reach: number }[];
};

/** Every wire of the layout, in pairs numbered in the order they are laid. */
export function wireList(wired: Wired): readonly Wire[] {
  const { input } = wired;
  const { bus, feeders } = input;
  if (bus === null) return [];
  const thin = feeders?.stock.id ?? bus.stock.id;
  const pairs: readonly Pair[] = [
    ...wired.pairs.map(
      ({ district, reach }): Pair => ({
        ...{
          id: `bus-${district}`,
          kind: 'bus',
          stock: bus.stock.id,
          from: 'supply',
          to: `end of ${district}`,
          district,
          turnout: false,
        },
        ...cut(busPath(wired, reach), BUS_SLACK),
      }),
    ),
    ...wired.feeders.flatMap((feeder) => feederPair(wired, feeder, thin)),
    ...wired.loads.flatMap((load) => loadPair(wired, load, thin)),
  ];
  const both = pairs.flatMap((pair, i) => wiresOf(pair, i + 1, input.supply.control));
  const frogs = input.rails.turnouts
    .filter(({ frog }) => frog === 'live')
    .map((one, i) => frogWire(wired, one, { stock: thin, number: pairs.length + 1 + i }));
  return [...both, ...frogs];
}

type Pair = Omit<Wire, 'label' | 'colour'> & { readonly turnout: boolean };

function wiresOf({ turnout, ...pair }: Pair, number: number, control: 'digital' | 'dc'): readonly Wire[] {
  const [first, second] = colours(pair.kind, { control, turnout });
  return [
    { ...pair, id: `${pair.id}-a`, label: `${number}a`, colour: first },
    { ...pair, id: `${pair.id}-b`, label: `${number}b`, colour: second },
  ];
}

/** The bus from the supply to the last tap of a district. */
function busPath({ under, path, z }: Wired, reach: number): readonly Vector[] {
  const points: Point[] = [];
  let along = 0;
  for (const [i, to] of path.entries()) {
    const from = path[i - 1] ?? to;
    const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (i > 0 && along + long > reach) {
      const share = (reach - along) / long;
      if (share > 1e-9) points.push([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]);
      break;
    }
    points.push(to);
    along += long;
  }
  return points.map((point) => outward(under, point, z));
}

/** From a tap along the deck's underside and up through the deck. */
export function tailPath({ under, z }: Pick<Wired, 'under' | 'z'>, tap: Tap, down: Point): readonly Vector[] {
  const level = under.bench.sideTop - CLIPPED;
  const [x, y] = down;
  return [outward(under, tap.at, z), outward(under, tap.at, level), [x, y, level], [x, y, under.bench.deckTop]];
}

function feederPair(wired: Wired, feeder: Feeder, stock: string): readonly Pair[] {
  const tap = wired.taps.get(feeder.id);
  if (tap === undefined) return [];
  const { down, point } = feeder;
  const lead = down[0] !== point[0] || down[1] !== point[1];
  const tail = tailPath(wired, tap, down);
  const path: readonly Vector[] = lead ? [...tail, [point[0], point[1], wired.under.bench.deckTop]] : tail;
  const kind = lead ? 'lead' : 'feeder';
  const slack = lead ? { ...TAIL_SLACK, ends: TAIL_SLACK.ends + LEAD_LOOP } : TAIL_SLACK;
  const from = feeder.through === null || lead ? `bus-${feeder.district}` : `switch of ${feeder.through}`;
  const to = `${feeder.line} at ${Math.round(feeder.at)} mm`;
  return [{ id: feeder.id, kind, stock, from, to, district: feeder.district, turnout: false, ...cut(path, slack) }];
}

function loadPair(wired: Wired, load: Wired['loads'][number], stock: string): readonly Pair[] {
  const tap = wired.taps.get(load.drop);
  if (tap === undefined) return [];
  const { id, district, turnout } = load;
  const path = tailPath(wired, tap, load.at);
  return [{ id, kind: 'load', stock, from: `bus-${district}`, to: id, district, turnout, ...cut(path, TAIL_SLACK) }];
}

/** From the switch beside a turnout's motor up to its frog. */
function frogWire(
  { input, under }: Wired,
  { id, at, line }: RailTurnout,
  { stock, number }: { readonly stock: string; readonly number: number },
): Wire {
  const level = under.bench.sideTop - CLIPPED;
  const [x, y] = at;
  const path: readonly Vector[] = [
    [x, y, level],
    [x, y, under.bench.deckTop],
  ];
  const slack = { share: 0, ends: 200 };
  return {
    id: `frog-${id}`,
    label: `${number}f`,
    kind: 'frog',
    stock,
    colour: 'green',
    from: `switch at ${id}`,
    to: `frog of ${id}`,
    district: districtOf(input.districts, line),
    ...cut(path, slack),
  };
}
