import { minorDigits } from './currency.ts';
import type { Amount, Dimension } from './quantity.ts';
import { roundTo } from './round.ts';
import { type LengthUnit, showLength, showNumber } from './show.ts';

/** An angle in degrees to 0.01: `22.5°`. Angle in radians. */
export function showAngle(radians: number): string {
  return `${showNumber((radians * 180) / Math.PI, 2)}°`;
}

/** A duration to the minute: `45 min`, `1 h 30 min`, `2 h`. Duration in minutes. */
export function showDuration(minutes: number): string {
  const whole = roundTo(Math.abs(minutes), 1);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  const said = hours === 0 ? `${rest} min` : rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
  return minutes < 0 && whole > 0 ? `-${said}` : said;
}

/** A span of months: `1 month`, `12 months`. */
export function showMonths(months: number): string {
  return showCount(roundTo(months, 0.1), 'month', 'months');
}

/** An amount of money to its currency's minor unit: `18.50 EUR`, `1200 JPY`. Currency by ISO 4217. */
export function showMoney(value: number, currency: string): string {
  const digits = minorDigits(currency);
  return `${roundTo(value, 10 ** -digits).toFixed(digits)} ${currency}`.trim();
}

/** A grade in percent to 0.01: `2 %`. Grade as a ratio. */
export function showGrade(ratio: number): string {
  return `${showNumber(ratio * 100, 2)} %`;
}

/** A grade as one in a run: `1:50`; level ground is `level`. Grade as a ratio. */
export function showGradeRun(ratio: number): string {
  return ratio === 0 ? 'level' : `${ratio < 0 ? '-' : ''}1:${showNumber(1 / Math.abs(ratio), 1)}`;
}

/** A mass: `850 g` under a kilogram, `12.4 kg` above. Mass in grams. */
export function showMass(grams: number): string {
  return Math.abs(roundTo(grams, 1)) < 1000 ? `${showNumber(grams, 0)} g` : `${showNumber(grams / 1000, 2)} kg`;
}

/** A count with its noun: `1 screw`, `12 screws`. */
export function showCount(count: number, one: string, many: string): string {
  return `${showNumber(count, 1)} ${count === 1 ? one : many}`;
}

/** A value with its unit to 0.001: `0.3 A`, `15 V`. */
function withUnit(value: number, unit: string): string {
  return `${showNumber(value, 3)} ${unit}`;
}

const UNITS: Readonly<Partial<Record<Dimension, string>>> = {
  current: 'A',
  voltage: 'V',
  resistance: 'ohm',
  power: 'W',
  density: 'kg/m3',
  stress: 'N/mm2',
};

const SHOWN: Readonly<Partial<Record<Dimension, (value: number) => string>>> = {
  angle: showAngle,
  grade: showGrade,
  duration: showDuration,
  months: showMonths,
  mass: showMass,
  volume: (cubicMm) => withUnit(cubicMm / 1000, 'ml'),
  number: (value) => showNumber(value, 3),
};

/** An amount of any kind with its unit; lengths in the unit asked for. */
export function showAmount(amount: Amount, unit: LengthUnit): string {
  const { value, dimension, currency = '' } = amount;
  if (dimension === 'length') return showLength(value, unit);
  if (dimension === 'money') return showMoney(value, currency);
  return SHOWN[dimension]?.(value) ?? withUnit(value, UNITS[dimension] ?? '');
}
