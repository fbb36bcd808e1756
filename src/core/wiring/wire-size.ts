import type { WireStock } from '../stock/goods.ts';
import { length, type Sentence, say } from '../units/say.ts';
import type { Computed, Served, Wires } from './computed.ts';
import type { WiringInput } from './input.ts';
import type { DistrictFigures } from './layout-circuit.ts';
import { carries } from './protection.ts';

/** Thin wires are tried up to so many sizes over the smallest that carries what is let through. */
const MORE = 3;

/** The wires as they are; null without a bus. */
export function wiresOf({ bus, feeders }: WiringInput): Wires | null {
  return bus === null ? null : { bus: bus.stock, thin: feeders?.stock ?? bus.stock };
}

/** The longest thin wire to the rails of a district, mm. */
export function longestTail({ tails }: Served, district: string): number {
  const mine = tails.filter((one) => one.district === district && !one.tap.drop.startsWith('load.'));
  return mine.reduce((most, { length: long }) => Math.max(most, long), 0);
}

/** Whether a district has its volts, trips at once, and has wires that carry all it lets through. */
export function isServed(input: WiringInput, { bus, thin }: Wires, served: Served): (one: DistrictFigures) => boolean {
  const least = input.supply.volts * (1 - input.mayLose);
  return ({ id, loads, short, trips, tripsAt, worst }) =>
    (worst === null || worst.volts >= least - 1e-9) &&
    (short === null || trips) &&
    loads.every(({ volts }) => volts === null || volts >= least - 1e-9) &&
    carries(bus.amps, Number.POSITIVE_INFINITY) >= tripsAt &&
    carries(thin.amps, longestTail(served, id)) >= tripsAt;
}

/** The smallest wires in stock with which every district is served, laid anew with each; null when none are. */
export function sizeThatServes(input: WiringInput, computed: Omit<Computed, 'sized'>): Wires | null {
  const own = wiresOf(input);
  if (own === null) return null;
  const most = computed.districts.reduce((high, { tripsAt }) => Math.max(high, tripsAt), 0);
  const longest = computed.districts.reduce((high, { id }) => Math.max(high, longestTail(computed, id)), 0);
  const buses = fromOn(input.wires, own.bus, { run: Number.POSITIVE_INFINITY, amps: most });
  const thins = fromOn(input.wires, own.thin, { run: longest, amps: most }).slice(0, MORE);
  for (const thin of thins) {
    for (const bus of buses) {
      const wires = { bus, thin };
      const served = computed.served(wires);
      if (served.districts.every(isServed(input, wires, served))) return wires;
    }
  }
  return null;
}

type Carried = { readonly run: number; readonly amps: number };

/** A wire and the thicker ones in stock that carry a current, the thinnest first. */
function fromOn(wires: readonly WireStock[], own: WireStock, { amps, run }: Carried): readonly WireStock[] {
  return [own, ...wires.filter(({ area }) => area > own.area + 1e-9).toSorted((a, b) => a.area - b.area)].filter(
    (one) => carries(one.amps, run) >= amps,
  );
}

/** The same, looked for when it is first asked and then kept. */
export function sizedOnce(input: WiringInput, computed: Omit<Computed, 'sized'>): Computed['sized'] {
  let found: Wires | null | undefined;
  return () => {
    if (found === undefined) found = sizeThatServes(input, computed);
    return found;
  };
}

/** What to do so that every district is served. */
export function sizeMend(input: WiringInput, computed: Computed): Sentence {
  const own = wiresOf(input);
  const found = computed.sized();
  if (own === null) return say`Give the layout a bus.`;
  if (found !== null) {
    const both = [
      ...(found.bus === own.bus ? [] : [`${named(found.bus)} for the bus`]),
      ...(found.thin === own.thin ? [] : [`${named(found.thin)} for the feeders`]),
    ];
    return both.length === 0 ? [] : say`Take ${both.join(' and ')}.`;
  }
  const every = input.feeders === null ? 900 : input.feeders.every / 2;
  return say`No wire in stock is thick enough alone: put a feeder every ${length(every)}, and a second supply for half of the layout.`;
}

function named({ id, gauge, area }: WireStock): string {
  return `${id} (${String(area)} mm2${gauge === null ? '' : `, ${gauge}`})`;
}
