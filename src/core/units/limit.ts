import { misread } from './misread.ts';
import type { Dimension } from './quantity.ts';

/** Largest values a notebook may hold, in the core's units: what is larger is a slip of the pen. */
export const LARGEST: Readonly<Record<Dimension, number>> = {
  number: 1e9,
  length: 1e7, // 10 km: a prototype's length still fits
  angle: 1e4,
  grade: 1e3,
  duration: 1e8,
  months: 1e5,
  money: 1e9,
  current: 1e5,
  voltage: 1e6,
  resistance: 1e9,
  power: 1e6,
  mass: 1e9,
  density: 1e5,
  stress: 1e7,
  volume: 1e15,
};

const LIMIT_WORDS: Readonly<Record<Dimension, string>> = {
  number: '1000000000',
  length: '10 km',
  angle: '10000 rad',
  grade: '1000',
  duration: '100000000 min',
  months: '100000 months',
  money: '1000000000',
  current: '100000 A',
  voltage: '1000000 V',
  resistance: '1000000000 ohm',
  power: '1000000 W',
  mass: '1000 t',
  density: '100000 kg/m3',
  stress: '10000 GPa',
  volume: '1000000 m3',
};

/** The words of a value's limit, for a fault. */
export function limitWords(dimension: Dimension): string {
  return LIMIT_WORDS[dimension];
}

/** Whether a value is a number the core can compute with. */
export function isSound(value: number, dimension: Dimension): boolean {
  return Number.isFinite(value) && Math.abs(value) <= LARGEST[dimension];
}

/** Throws Misread when a written value is larger than any a notebook may hold. */
export function withinLimits(
  value: number,
  dimension: Dimension,
  place: { readonly from: number; readonly text: string },
): void {
  if (isSound(value, dimension)) return;
  throw misread(place.from, 'too-large', [
    `${place.text} is larger than any ${dimension} a notebook may hold`,
    `write a value up to ${limitWords(dimension)}`,
  ]);
}
