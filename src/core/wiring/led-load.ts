import type { LedsInput, WiringInput } from './input.ts';
import { diodeVolts, type LedResistor, ledResistor, ratingFor } from './led.ts';

/** Diodes of one load with what stands before each of their rows. ohm, W, A. */
export type LedLoad = {
  readonly load: string;
  readonly rows: number;
  readonly inRow: number;
  /** null: the supply cannot light so many in a row */
  readonly resistor: LedResistor | null;
  /** to buy, at least twice the heat; null: none is sold, or there is no resistor */
  readonly rating: number | null;
  /** a digital signal is led through a bridge rectifier */
  readonly rectifier: boolean;
};

function resistorOf(volts: number, { amps, forward, inRow }: LedsInput): LedResistor | null {
  return ledResistor({ supply: volts, forward, count: inRow, amps });
}

/** Current of all rows together through resistors as sold; what was asked where they cannot be lit. A */
export function ledAmps(volts: number, leds: LedsInput): number {
  return leds.rows * (resistorOf(volts, leds)?.amps ?? leds.amps);
}

/** Every load of diodes with its resistors. */
export function ledLoads({ loads, supply }: Pick<WiringInput, 'loads' | 'supply'>): readonly LedLoad[] {
  return loads.flatMap(({ id, leds }) => {
    if (leds === undefined || leds === null) return [];
    const resistor = resistorOf(diodeVolts(supply), leds);
    const rating = resistor === null ? null : ratingFor(resistor.watts);
    const { inRow, rows } = leds;
    return [{ load: id, rows, inRow, resistor, rating, rectifier: supply.control === 'digital' }];
  });
}
