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

/** What a bridge rectifier takes, two junctions of silicon; common practice, no source. V */
export const RECTIFIER = 1.4;

/** Ratings of resistors as sold, W; common practice, no source. */
const RATINGS = [0.25, 0.5, 1, 2, 3, 5, 10];

/** The rating to buy for a resistor that gives off `watts`: twice as much, so that it stays cool; null above all. W */
export function ratingFor(watts: number): number | null {
  return RATINGS.find((one) => one >= 2 * watts - 1e-9) ?? null;
}

/** Volts that diodes on the bus have: a digital signal changes its sign and passes a bridge rectifier first. V */
export function diodeVolts({ control, volts }: { readonly control: 'digital' | 'dc'; readonly volts: number }): number {
  return control === 'digital' ? volts - RECTIFIER : volts;
}

/** How many diodes of `forward` V in a row a voltage lights, a tenth of it left for the resistor. */
export function mostInRow(volts: number, forward: number): number {
  return Math.max(0, Math.floor((0.9 * volts) / forward + 1e-9));
}
