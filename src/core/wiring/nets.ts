import type { LaidUnit } from './laid-unit.ts';
import { type BusSpot, type Limb, type Stretch, spanning } from './routing/limbs.ts';
import type { Tail } from './tail.ts';

/** A pair of heavy wires of its own along the bus: a district's from the supply, or a unit's from the unit. */
export type Net = {
  readonly id: string;
  readonly district: string;
  /** the unit it comes from; null: the supply */
  readonly unit: string | null;
  /** where it is fed */
  readonly source: BusSpot;
  /** how far it runs, nearer the supply first; empty where all hangs at one place */
  readonly stretches: readonly Stretch[];
};

type Hung = {
  readonly limbs: readonly Limb[];
  readonly districts: readonly string[];
  readonly units: readonly LaidUnit[];
  readonly tails: readonly Tail[];
};

/** Every pair of its own, each as long as what hangs on it needs. */
export function netsOf({ limbs, districts, units, tails }: Hung): readonly Net[] {
  const hung = (id: string) => [
    ...tails.filter(({ net }) => net === id).map(({ tap }) => tap),
    ...units.filter(({ from }) => from === id).map(({ tap }) => tap),
  ];
  const net = (id: string, given: Pick<Net, 'district' | 'unit' | 'source'>): readonly Net[] => {
    const mine = hung(id);
    if (mine.length === 0) return [];
    const stretches = spanning(limbs, [given.source, ...mine]).filter(({ from, to }) => to - from > 1e-6);
    return [{ id, ...given, stretches }];
  };
  return [
    ...districts.flatMap((id) => net(id, { district: id, unit: null, source: { limb: 0, along: 0 } })),
    ...units.flatMap(({ id, district, tap }) => net(id, { district, unit: id, source: tap })),
  ];
}
