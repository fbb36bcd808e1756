import { districtsOf } from './districts.ts';
import type { WiringInput } from './input.ts';
import { carries, FUSE_OVER_LOAD, fuseRange } from './protection.ts';
import type { Tail } from './tail.ts';

/** Fuse links as sold, A: IEC 60127, from memory. */
const LINKS = [
  0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8,
  10,
];

/** The smallest fuse as sold that carries a load and still protects its wire; null when none does both. A */
export function fuseFor(load: number, wire: number): number | null {
  const range = fuseRange(load, wire);
  if (range === null) return null;
  return LINKS.find((one) => one >= range.least - 1e-9 && one <= range.most + 1e-9) ?? null;
}

/** The fuse of one load where its wires leave the bus. A. */
export type LoadFuse = {
  readonly load: string;
  /** as written, else the smallest that does; null: none does */
  readonly amps: number | null;
  readonly written: boolean;
  /** what it has to carry, and what its wires may carry */
  readonly least: number;
  readonly most: number;
  /** what its district lets through */
  readonly tripsAt: number;
};

/**
 * Fuses of all loads whose wires may carry less than their district lets through, and those that are written. They are
 * slow ones: an inrush is over before they melt.
 */
export function loadFuses(input: WiringInput, tails: readonly Tail[]): readonly LoadFuse[] {
  const stock = input.feeders?.stock ?? input.bus?.stock;
  if (stock === undefined) return [];
  const districts = districtsOf(input);
  return input.loads.flatMap((load) => {
    const tail = tails.find(({ tap }) => tap.drop === `load.${load.id}`);
    if (tail === undefined) return [];
    const tripsAt = districts.find(({ id }) => id === tail.district)?.tripsAt ?? input.supply.tripsAt;
    const most = carries(stock.amps, tail.length);
    const written = load.fuse ?? null;
    if (written === null && most >= tripsAt) return [];
    const least = FUSE_OVER_LOAD * load.amps;
    const amps = written ?? fuseFor(load.amps, most);
    return [{ load: load.id, amps, written: written !== null, least, most, tripsAt }];
  });
}
