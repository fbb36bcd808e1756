import type { Point } from '../geometry/shapes.ts';
import type { Stock, WireStock } from '../stock/goods.ts';
import { distanceOf, type LineWay } from '../track/line.ts';
import type { Train } from '../track/train.schema.ts';
import { evaluate } from '../units/evaluate.ts';
import { done, type Fault, failed, type Result } from '../units/problem.ts';
import type { Dimension, Quantity, Scope } from '../units/quantity.ts';
import { showLength } from '../units/show.ts';
import type { LedsInput, LiftInput, LoadInput, LoadPlace, WiringGround, WiringInput } from './input.ts';
import { diodeVolts } from './led.ts';
import { ledAmps } from './led-load.ts';
import { nearestOnBenches } from './on-bench.ts';
import { railOhmPerMetre, usualCode } from './rail-metal.ts';
import type { RailPlan } from './rail-plan.ts';
import type { Wiring } from './schema.ts';

/** What evaluation needs besides the chapter. */
export type WiringContext = {
  readonly scope: Scope;
  readonly scale: string;
  readonly stock: readonly Stock[];
  readonly trains: readonly Train[];
  readonly lines: readonly Pick<LineWay, 'id' | 'joints' | 'length'>[];
  readonly rails: RailPlan;
  readonly lifts: readonly LiftInput[];
  readonly ground: WiringGround;
  readonly show: 'mm' | 'in';
};

/** Copper in a warm room under a deck, degrees Celsius; common practice, no source. */
const WARM = 40;

/** A deck stands over its frame by up to this much, mm. */
const OVERHANG = 60;

/** Share of the voltage that may be lost; common practice, no source: 3 to 5 %. */
const MAY_LOSE = 0.05;

type Read = (quantity: Quantity<Dimension>) => number;
/** What the core counts them in. */
const UNITS: Partial<Readonly<Record<Dimension, string>>> = { length: ' mm', current: ' A', voltage: ' V' };

type Place = Exclude<Wiring['loads'][number]['at'], string>;
type Reading = { readonly read: Read; readonly faults: Fault[]; readonly context: WiringContext };

/** The chapter's quantities as numbers, ready for wiringModel; every fault of every value at once. */
export function evaluateWiring(wiring: Wiring, context: WiringContext): Result<WiringInput> {
  const faults: Fault[] = [];
  const read: Read = (quantity) => {
    const amount = evaluate(quantity, context.scope);
    if (amount.ok) return amount.value.value;
    faults.push(...amount.faults);
    return 1;
  };
  const reading: Reading = { read, faults, context };
  const input: WiringInput = {
    supply: {
      control: wiring.supply.control,
      volts: read(wiring.supply.volts),
      tripsAt: read(wiring.supply['trips-at']),
    },
    bus: busOf(wiring, reading),
    feeders: feedersOf(wiring, reading),
    loads: wiring.loads.map((load, i) => ({
      id: load.id,
      kind: load.kind,
      place: loadPlace(load.at, { ...reading, at: `wiring.loads.${i}.at` }),
      ...drawn(wiring, load, { ...reading, at: `wiring.loads.${i}` }),
    })),
    districts: wiring.districts.map((one, i) => ({
      id: one.id,
      lines: one.lines,
      tripsAt: atLeast(0.01, one['trips-at'], { ...reading, at: `wiring.districts.${i}.trips-at` }),
    })),
    lifts: context.lifts,
    gaps: wiring.gaps?.map((place, i) => onLine(place, { ...reading, at: `wiring.gaps.${i}` })) ?? null,
    rail: railOf(wiring, reading),
    train: wiring['longest-train'] === undefined ? longestConducting(context.trains) : read(wiring['longest-train']),
    mayLose: wiring['may-lose'] === undefined ? MAY_LOSE : read(wiring['may-lose']),
    warm: WARM,
    rails: context.rails,
    ground: context.ground,
    show: context.show,
    wires: context.stock.filter((one) => one.kind === 'wire'),
  };
  return faults.length > 0 ? failed(...faults) : done(input);
}

function railOf({ rails }: Wiring, { context, read }: Reading): WiringInput['rail'] {
  return rails === undefined
    ? { ohmPerMetre: railOhmPerMetre(usualCode(context.scale)), assumed: true }
    : { ohmPerMetre: read(rails['ohm-per-metre']), assumed: false };
}

/** The longest vehicle whose wheels conduct; coaches on plastic wheels bridge nothing. */
function longestConducting(trains: readonly Train[]): number | null {
  const lengths = trains.filter((train) => train['conducting-wheels'] > 0).map(({ length }) => length);
  return lengths.length === 0 ? null : Math.max(...lengths);
}

function busOf({ bus }: Wiring, reading: Reading): WiringInput['bus'] {
  const { read } = reading;
  const stock = wireOf(bus.stock, { ...reading, at: 'wiring.bus.stock' });
  const from = onBench([read(bus.from[0]), read(bus.from[1])], { ...reading, at: 'wiring.bus.from' });
  const way = (points: NonNullable<typeof bus.branches>[number], at: string) =>
    points.map(([x, y], i) => onBench([read(x), read(y)], { ...reading, at: `${at}.${i}` }));
  const route = bus.route === 'auto' ? null : way(bus.route, 'wiring.bus.route');
  const branches = (bus.branches ?? []).map((one, i) => way(one, `wiring.bus.branches.${i}`));
  return stock === null ? null : { stock, from, route, ...(branches.length === 0 ? {} : { branches }) };
}

function feedersOf({ feeders }: Wiring, reading: Reading): WiringInput['feeders'] {
  if (feeders === undefined) return null;
  const stock = wireOf(feeders.stock, { ...reading, at: 'wiring.feeders.stock' });
  const every = atLeast(1, feeders.every, { ...reading, at: 'wiring.feeders.every' });
  return stock === null ? null : { stock, every };
}

type At = Reading & { readonly at: string };

function wireOf(id: string, { context, faults, at }: At): WireStock | null {
  const goods = context.stock.find((one) => one.id === id);
  if (goods?.kind === 'wire') return goods;
  const wires = context.stock.filter((one) => one.kind === 'wire').map((one) => one.id);
  faults.push({
    rule: 'not-a-wire',
    at,
    what: goods === undefined ? `no stock is called ${id}` : `${id} is ${goods.kind}, not wire`,
    mend: `name a wire: ${wires.join(', ')}`,
  });
  return null;
}

function atLeast(least: number, quantity: Quantity<Dimension>, { read, faults, at }: At): number {
  const value = read(quantity);
  if (value >= least) return value;
  const said = `${least}${UNITS[quantity.dimension] ?? ''}`;
  faults.push({
    rule: 'too-small',
    at,
    what: `\`${quantity.text}\` is less than ${said}`,
    mend: `write ${said} or more`,
  });
  return least;
}

type Load = Wiring['loads'][number];

/** What a load draws: as written, or what its diodes draw through resistors that can be bought. */
function drawn(wiring: Wiring, load: Load, reading: At): Omit<LoadInput, 'id' | 'kind' | 'place'> {
  const below = (key: string): At => ({ ...reading, at: `${reading.at}.${key}` });
  const leds = load.leds === undefined ? null : ledsOf(load.leds, below('leds'));
  const own = load.amps === undefined ? 0 : atLeast(0, load.amps, below('amps'));
  const volts = diodeVolts({ control: wiring.supply.control, volts: reading.read(wiring.supply.volts) });
  const amps = leds === null ? own : ledAmps(volts, leds);
  return {
    ...{ amps, leds },
    ...(load.inrush === undefined ? {} : { inrush: atLeast(amps, load.inrush, below('inrush')) }),
    fuse: load.fuse === undefined ? null : atLeast(0.01, load.fuse, below('fuse')),
  };
}

function ledsOf(leds: NonNullable<Load['leds']>, reading: At): LedsInput {
  const below = (key: string): At => ({ ...reading, at: `${reading.at}.${key}` });
  return {
    forward: atLeast(0.1, leds.forward, below('forward')),
    amps: atLeast(0.0001, leds.amps, below('amps')),
    inRow: leds['in-row'] === undefined ? 1 : wholeFrom1(leds['in-row'], below('in-row')),
    rows: leds.rows === undefined ? 1 : wholeFrom1(leds.rows, below('rows')),
  };
}

function wholeFrom1(quantity: Quantity<Dimension>, reading: At): number {
  const value = atLeast(1, quantity, reading);
  if (Number.isInteger(value)) return value;
  reading.faults.push({
    rule: 'not-whole',
    at: reading.at,
    what: `\`${quantity.text}\` is not a whole number`,
    mend: `write ${Math.round(value)}`,
  });
  return Math.round(value);
}

function loadPlace(at: Wiring['loads'][number]['at'], reading: At): LoadPlace {
  if (typeof at === 'string') return { kind: 'turnout', turnout: at };
  if (!('line' in at)) return { kind: 'place', at: onBench([reading.read(at[0]), reading.read(at[1])], reading) };
  return { kind: 'line', ...onLine(at, reading) };
}

/** A point on a bench; one beside all of them is a mistake, and its mend is the nearest point that is on one. */
function onBench(point: Point, { context, faults, at }: At): Point {
  const near = nearestOnBenches(context.ground.benches, point);
  if (near === null || near.off < OVERHANG) return point;
  const [said, instead] = [point, near.at].map(
    ([x, y]) => `[${showLength(x, context.show)}, ${showLength(y, context.show)}]`,
  );
  faults.push({
    rule: 'off-the-bench',
    at,
    what: `${said} is ${showLength(near.off, context.show)} beside the bench`,
    mend: `write ${instead}, or another point on the bench`,
  });
  return near.at;
}

function onLine(
  place: Extract<Place, { readonly line: string }>,
  { read, faults, context, at }: At,
): { readonly line: string; readonly at: number } {
  const line = context.lines.find(({ id }) => id === place.line);
  // lines that do not exist are told when references are read
  if (line === undefined) return { line: place.line, at: 0 };
  const along = distanceOf(line, 'past' in place ? { past: place.past, by: read(place.by) } : { at: read(place.at) });
  if (along === null) {
    faults.push({
      rule: 'off-the-line',
      at,
      what: `${place.line} has no such place: it is ${showLength(line.length, context.show)} long`,
      mend: `write a distance from 0 to ${showLength(Math.floor(line.length), context.show)}${line.joints.length === 0 ? '' : `, or past ${line.joints.map(({ id }) => id).join(', ')}`}`,
    });
  }
  return { line: place.line, at: along ?? 0 };
}
