const INCH = 25.4;

/** One rail of code 100 nickel silver: 1.45 milliohm an inch, measured and published by modellers; ohm per m. */
const CODE_100 = (1.45e-3 / INCH) * 1000;

/**
 * Resistance of one rail of nickel silver, ohm per m, by its code (height in thousandths of an inch). Only code 100 is
 * published; others follow with the square of the height, as if all sections had one shape. Bonded joints count nothing.
 */
export function railOhmPerMetre(code: number): number {
  return CODE_100 * (100 / code) ** 2;
}

/** The rail most track of a scale is sold with; common practice, no source. */
export function usualCode(scale: string): number {
  if (scale === 'O' || scale === '0' || scale === '1') return 148;
  return scale === 'N' || scale === 'Z' || scale === 'TT' ? 80 : 100;
}
