/** Preferred values of a decade, 5 %: IEC 60063, E24, from memory. */
const E24 = [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91];

/** Light-emitting diodes in a row on a supply: forward voltage of each, and the current they shall have. V, A. */
export type LedString = {
  readonly supply: number;
  readonly forward: number;
  readonly count: number;
  readonly amps: number;
};

/** What a string of light-emitting diodes needs before it. ohm, W, A. */
export type LedResistor = {
  readonly exact: number;
  /** the next preferred value up, so that the current stays below what was asked */
  readonly bought: number;
  /** heat at the bought value; buy twice that rating */
  readonly watts: number;
  readonly amps: number;
};

/** The resistor in series, (V - n Vf) / I; null when the supply cannot light the string. */
export function ledResistor({ supply, forward, count, amps }: LedString): LedResistor | null {
  const left = supply - count * forward;
  if (!(left > 0) || !(amps > 0)) return null;
  const exact = left / amps;
  const bought = preferredAbove(exact);
  return { exact, bought, watts: left ** 2 / bought, amps: left / bought };
}

/** The smallest preferred value not below `ohm`. */
export function preferredAbove(ohm: number): number {
  const decade = 10 ** (Math.floor(Math.log10(ohm)) - 1);
  const value = E24.find((one) => one * decade >= ohm * (1 - 1e-9));
  return tidy(value === undefined ? 100 * decade : value * decade);
}

function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
