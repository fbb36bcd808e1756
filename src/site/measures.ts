import type { Pair } from './lengths.ts';

/** 1 ft is 0.3048 m and 1 US fluid ounce 29.5735295625 ml exactly (NIST Handbook 44, Appendix C). mm2 and mm3. */
const SQUARE_FOOT = 304.8 ** 2;
const CUBIC_FOOT = 304.8 ** 3;
const FLUID_OUNCE = 29573.5295625;

const SQUARE_METRE = 1e6;
const LITRE = 1e6;

/** Ounces up to this volume, cubic feet above; mm3. */
const MUCH = 10 * LITRE;

/** Three figures that count, and no noise behind them. */
export function significant(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** An area, mm2. */
export function areaPair(area: number): Pair {
  return {
    mm: `${significant(area / SQUARE_METRE)}\u00A0m²`,
    in: `${significant(area / SQUARE_FOOT)}\u00A0sq\u00A0ft`,
  };
}

/** A volume, mm3. */
export function volumePair(volume: number): Pair {
  const large = volume >= MUCH;
  const inches = large ? volume / CUBIC_FOOT : volume / FLUID_OUNCE;
  return {
    mm: `${significant(volume / LITRE)}\u00A0l`,
    in: `${significant(inches)}\u00A0${large ? 'cu\u00A0ft' : 'fl\u00A0oz'}`,
  };
}

/** A grade as people say it, from a ratio. */
export function gradeWords(ratio: number): string {
  return `${Number((Math.abs(ratio) * 100).toFixed(2))}\u00A0%`;
}

/** A turn or an angle between ways, from radians. */
export function angleWords(radians: number): string {
  return `${Number(((Math.abs(radians) * 180) / Math.PI).toFixed(2))}°`;
}

/** Kilograms to a hundredth. */
export function kilograms(mass: number): string {
  return `${mass.toFixed(2)}\u00A0kg`;
}
