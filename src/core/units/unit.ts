import { CURRENCIES, SIGNS } from './currency.ts';
import type { Dimension } from './quantity.ts';
import type { Ratio } from './ratio.ts';

/** A unit at a place in a text: what it measures and what one of it is in the core's unit. */
export type Unit = {
  readonly word: string;
  readonly dimension: Dimension;
  readonly size: Ratio;
  readonly currency?: string;
};

type Row = readonly [words: string, over: number, under: number];

const DAYS_OF_MONTH = 365.2425 / 12; // Gregorian mean month, days

/**
 * Units by dimension; words parted by commas; size in the core's unit as over/under.
 * Inch, foot, pound: exact since the international yard and pound agreement of 1959; psi from them with g = 9.80665 m/s2.
 */
const TABLE: Readonly<Record<Exclude<Dimension, 'number' | 'money'>, readonly Row[]>> = {
  length: [
    ['mm,millimetre,millimetres,millimeter,millimeters', 1, 1],
    ['cm,centimetre,centimetres,centimeter,centimeters', 10, 1],
    ['m,metre,metres,meter,meters', 1000, 1],
    [`in,in.,inch,inches,",''`, 254, 10],
    [`ft,ft.,foot,feet,'`, 3048, 10],
    ['yd,yard,yards', 9144, 10],
  ],
  angle: [
    ['°,deg,degree,degrees', Math.PI, 180],
    ["'", Math.PI, 10_800],
    ['"', Math.PI, 648_000],
    ['rad', 1, 1],
  ],
  grade: [
    ['%', 1, 100],
    ['‰', 1, 1000],
  ],
  duration: [
    ['d,day,days', 1440, 1],
    ['h,hr,hrs,hour,hours', 60, 1],
    ['min,min.,mins,minute,minutes,m', 1, 1],
    ['s,sec,secs,second,seconds', 1, 60],
  ],
  months: [
    ['year,years,yr,yrs', 12, 1],
    ['month,months', 1, 1],
    ['week,weeks', 7, DAYS_OF_MONTH],
    ['day,days', 1, DAYS_OF_MONTH],
  ],
  current: [
    ['A,amp,amps', 1, 1],
    ['mA', 1, 1000],
  ],
  voltage: [
    ['V,volt,volts', 1, 1],
    ['mV', 1, 1000],
  ],
  resistance: [
    ['ohm,ohms,\u03a9,\u2126', 1, 1],
    ['kohm,k\u03a9,k\u2126', 1000, 1],
    ['mohm,milliohm,m\u03a9,m\u2126', 1, 1000],
  ],
  power: [
    ['W,watt,watts', 1, 1],
    ['mW', 1, 1000],
    ['kW', 1000, 1],
  ],
  mass: [
    ['kg', 1000, 1],
    ['g,gram,grams', 1, 1],
    ['t,tonne,tonnes', 1_000_000, 1],
    ['lb,lb.,lbs,lbs.,pound,pounds', 45_359_237, 100_000],
    ['oz,oz.,ounce,ounces', 45_359_237, 1_600_000],
  ],
  density: [
    ['kg/m3,kg/m³', 1, 1],
    ['g/cm3,g/cm³', 1000, 1],
    ['lb/ft3,lb/ft³,pcf', 45_359_237, 2_831_684.6592],
  ],
  stress: [
    ['N/mm2,N/mm²,MPa', 1, 1],
    ['GPa,kN/mm2,kN/mm²', 1000, 1],
    ['kPa', 1, 1000],
    ['psi', 4.448_221_615_260_5, 645.16],
    ['Mpsi', 4_448_221.615_260_5, 645.16],
  ],
  volume: [
    ['ml', 1000, 1],
    ['l,litre,litres,liter,liters', 1_000_000, 1],
    ['mm3,mm³', 1, 1],
    ['cm3,cm³', 1000, 1],
    ['m3,m³', 1_000_000_000, 1],
    ['cu in,in3,in³', 16_387_064, 1000],
    ['US gal', 3_785_411_784, 1000],
    ['US fl oz', 3_785_411_784, 128_000],
    ['imperial gal', 4_546_090, 1],
  ],
};

/** Words of a dimension, longest first, so that `mm` is met before `m`. */
function unitsOf(dimension: Dimension, rows: readonly Row[]): readonly Unit[] {
  const units = rows.flatMap(([words, over, under]) =>
    words.split(',').map((word): Unit => ({ word, dimension, size: { over, under } })),
  );
  return units.sort((a, b) => b.word.length - a.word.length);
}

const MONEY: readonly Unit[] = [...CURRENCIES.map((code) => [code, code] as const), ...Object.entries(SIGNS)].map(
  ([word, currency]) => ({ word, dimension: 'money', size: { over: 1, under: 1 }, currency }),
);

const ALL: readonly (readonly [Dimension, readonly Unit[]])[] = [
  ['length', unitsOf('length', TABLE.length)],
  ['mass', unitsOf('mass', TABLE.mass)],
  ['angle', unitsOf('angle', TABLE.angle)],
  ['grade', unitsOf('grade', TABLE.grade)],
  ['duration', unitsOf('duration', TABLE.duration)],
  ['months', unitsOf('months', TABLE.months)],
  ['current', unitsOf('current', TABLE.current)],
  ['voltage', unitsOf('voltage', TABLE.voltage)],
  ['resistance', unitsOf('resistance', TABLE.resistance)],
  ['power', unitsOf('power', TABLE.power)],
  ['density', unitsOf('density', TABLE.density)],
  ['stress', unitsOf('stress', TABLE.stress)],
  ['volume', unitsOf('volume', TABLE.volume)],
  ['money', MONEY],
];

/** All units, those of the wanted dimension first: `m` is minutes where a duration stands, metres elsewhere. */
function inOrder(wanted: Dimension): readonly (readonly Unit[])[] {
  const own = ALL.filter(([dimension]) => dimension === wanted);
  return [...own, ...ALL.filter(([dimension]) => dimension !== wanted)].map(([, units]) => units);
}

const JOINS = /[\p{L}\p{N}³²]/u;

/** Whether a unit's word ends where it ends: `m` is no unit in `mmm`, `'` is one in `3'x8'`. */
function standsAlone(text: string, at: number, word: string): boolean {
  if (!JOINS.test(word.slice(-1))) return true;
  return !JOINS.test(text.slice(at + word.length, at + word.length + 1));
}

/** The unit that stands at a place in a text, or null; the longest word of a dimension wins. */
export function unitAt(text: string, at: number, wanted: Dimension): Unit | null {
  const found = inOrder(wanted).map((units) =>
    units.find(({ word }) => text.startsWith(word, at) && standsAlone(text, at, word)),
  );
  const own = found[0];
  if (own !== undefined) return own;
  return found.reduce<Unit | null>(
    (best, unit) => (unit !== undefined && (best === null || unit.word.length > best.word.length) ? unit : best),
    null,
  );
}

/** The currency of a code or sign, as a unit; null when it is none. */
export function currencyUnit(word: string): Unit | null {
  return MONEY.find((unit) => unit.word === word) ?? null;
}

/** One word for each unit of a dimension, the usual one, for a list of what may be written. */
export function usualUnits(dimension: Dimension): readonly string[] {
  if (dimension === 'number') return [];
  if (dimension === 'money') return ['EUR', 'GBP', 'USD'];
  return TABLE[dimension].map(([words]) => words.split(',')[0] ?? words);
}

/** Words an author may write for a dimension, for the nearest one to a slip; without a dimension all but currencies. */
export function unitWords(dimension: Dimension | null): readonly string[] {
  return ALL.filter(([one]) => (dimension === null ? one !== 'money' : one === dimension)).flatMap(([, units]) =>
    units.map(({ word }) => word),
  );
}
