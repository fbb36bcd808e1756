import { showLength } from '../units/show.ts';
import { boughtGear, loadPart } from './bought-gear.ts';
import type { LoadFuse } from './fuses.ts';
import type { BusHole } from './holes.ts';
import type { WiringInput } from './input.ts';
import type { LaidBus } from './laid-bus.ts';
import type { LedLoad } from './led-load.ts';
import type { SmallPart } from './small-part.ts';
import { throwerParts } from './thrower.ts';
import { spaceLength } from './wire.ts';

/** Wires are clipped up at least this often; common practice, no source. mm */
export const CLIP_EVERY = { mm: 150, in: 152.4 } as const;

type Counted = {
  readonly input: WiringInput;
  readonly laid: LaidBus;
  readonly leds: readonly LedLoad[];
  readonly fuses: readonly LoadFuse[];
};

/** Supply, breakers, units, motors, lights and all that is fixed to wires, each kind and size once. */
export function smallParts({ input, laid, leds, fuses }: Counted): readonly SmallPart[] {
  const each: readonly SmallPart[] = [
    ...boughtGear(input, laid.wired.units),
    ...input.loads.flatMap((load) => [loadPart(input, load), ...throwerParts(input.supply, load)]),
    ...leds.flatMap(ledParts),
    ...fuses.flatMap(({ amps, load }): readonly SmallPart[] =>
      amps === null ? [] : [{ kind: 'fuse', name: `Fuse ${amps} A, slow, with its holder`, quantity: 1, of: [load] }],
    ),
    ...leadPlugs(laid),
    ...joints(laid),
    ...clips(laid),
    ...laid.holes.map((hole) => grommet(hole, input.show)),
  ];
  const names = [...new Set(each.map(({ name }) => name))];
  return names.flatMap((name) => {
    const same = each.filter((one) => one.name === name);
    const [first] = same;
    if (first === undefined) return [];
    const quantity = same.reduce((sum, one) => sum + one.quantity, 0);
    return [{ ...first, quantity, of: same.flatMap(({ of }) => of) }];
  });
}

function ledParts({ load, rating, rectifier, resistor, rows }: LedLoad): readonly SmallPart[] {
  if (resistor === null) return [];
  const heat = rating === null ? 'of no rating that is sold' : `${rating} W`;
  return [
    { kind: 'resistor', name: `Resistor ${ohmName(resistor.bought)}, 5 %, ${heat}`, quantity: rows, of: [load] },
    ...(rectifier ? [{ kind: 'rectifier', name: 'Bridge rectifier, 1 A', quantity: 1, of: [load] } as const] : []),
  ];
}

/** 1200 is 1.2 kilohm. */
export function ohmName(ohm: number): string {
  return ohm >= 1000 ? `${ohm / 1000} kilohm` : `${ohm} ohm`;
}

/** A lead to a span that lifts parts at a plug. */
function leadPlugs({ wired }: LaidBus): readonly SmallPart[] {
  return wired.feeders
    .filter(({ id, lead }) => lead && wired.taps.has(id))
    .map(({ id }) => ({
      kind: 'plug',
      name: 'Plug and socket of 2 pins that goes in one way only',
      quantity: 1,
      of: [id],
    }));
}

/** Each wire that meets the bus is joined to it, and each wire of a branch to the wire that it leaves. */
function joints({ tails, wired }: LaidBus): readonly SmallPart[] {
  const thin = 2 * tails.length;
  const heavy = 4 * wired.units.length;
  const branches = wired.nets.reduce((sum, { stretches }) => sum + 2 * Math.max(0, stretches.length - 1), 0);
  const part = (name: string, quantity: number): readonly SmallPart[] =>
    quantity === 0 ? [] : [{ kind: 'joint', name, quantity, of: [] }];
  return [
    ...part('Insulated joint of a thin wire to the bus', thin),
    ...part('Insulated joint of a unit’s heavy wire to the bus', heavy),
    ...part('Insulated T-joint in the bus', branches),
  ];
}

/** Along the bus, and along every pair under the deck that is longer than it is high. */
function clips({ run, tails, wired }: LaidBus): readonly SmallPart[] {
  const every = CLIP_EVERY[wired.input.show];
  const along = [run.path, ...run.branches].reduce((sum, path) => sum + Math.ceil(spaceLength(path) / every), 0);
  const across = tails.reduce((sum, { tap }) => sum + Math.ceil(tap.across / every), 0);
  const quantity = along + across;
  return quantity === 0 ? [] : [{ kind: 'clip', name: 'Cable clip with its screw', quantity, of: [] }];
}

function grommet({ diameter, id }: BusHole, show: 'mm' | 'in'): SmallPart {
  return { kind: 'grommet', name: `Grommet for a hole of ${showLength(diameter, show)}`, quantity: 1, of: [id] };
}
