import type { Finding } from '../finding.ts';
import type { Fault } from '../units/problem.ts';
import { bothUnits } from '../units/reading.ts';
import { length, say } from '../units/say.ts';
import type { BoardStock, SheetStock } from './goods.ts';
import type { KnownThickness } from './thickness.ts';

/** One measured thickness and where its author wrote it, mm. */
export type Reading = { readonly value: number; readonly at: string };

/** Beyond this from nominal a reading is of another sheet: 1 mm or 8 %, whichever is more; common practice, no source. */
export function readingAllowance(nominal: number): number {
  return Math.max(1, 0.08 * nominal);
}

/** The mean sets dados and lengths, the thickest reading sets slots; both are the listed figure while there is no reading. mm. */
export function knownThickness(stock: SheetStock | BoardStock, readings: readonly number[]): KnownThickness {
  const { nominal, listed, low, high } = stock.thickness;
  const known = { stock: stock.id, nominal, listed, low, high };
  if (readings.length === 0) return { ...known, mean: listed, thickest: listed, measured: false };
  const sum = readings.reduce((total, reading) => total + reading, 0);
  const thickest = readings.reduce((most, reading) => Math.max(most, reading));
  return { ...known, mean: Math.min(tidy(sum / readings.length), thickest), thickest, measured: true };
}

/** Takes the last bits of floating point off a mean, so that three equal readings give that reading. */
function tidy(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}

/** Readings that can't be of this stock. */
export function readingFaults(stock: SheetStock | BoardStock, readings: readonly Reading[]): readonly Fault[] {
  const { nominal, low, high } = stock.thickness;
  const most = readingAllowance(nominal);
  return readings
    .filter(({ value }) => !(Math.abs(value - nominal) <= most))
    .map(({ value, at }) => ({
      rule: 'thickness-of-another-sheet',
      at,
      what: `${bothUnits(value)} can't be the thickness of ${stock.id}, which is sold as ${bothUnits(nominal)}`,
      mend: `measure again, or name the stock it is; ${stock.id} runs from ${bothUnits(low)} to ${bothUnits(high)}`,
    }));
}

/** Ranges are printed to 0.001 in: 15/32 in is listed as 0.469 in, and a sheet of just that is in its range. mm */
const PRINTED = 0.02;

/** What a builder should know about a sheet's thickness before cutting; `where` is the role it is used for. */
export function thicknessFindings(known: KnownThickness, role: string): readonly Finding[] {
  const about = { where: role, chapter: 'benchwork', unit: 'mm', accepted: null } as const;
  const range = say`${known.stock} is listed at ${length(known.listed)}, from ${length(known.low)} to ${length(known.high)}`;
  if (!known.measured) {
    return [
      {
        ...about,
        rule: 'thickness-not-measured',
        level: 'note',
        what: [...range, '; nobody has measured the sheet in hand'],
        figure: known.listed,
        limit: null,
        mend: say`measure the sheet and log the readings; cut slots and lengths after that`,
        source: 'common practice, no source',
      },
    ];
  }
  const outlier =
    known.thickest > known.high + PRINTED ? known.thickest : known.mean < known.low - PRINTED ? known.mean : null;
  if (outlier === null) return [];
  return [
    {
      ...about,
      rule: 'thickness-outside-range',
      level: 'care',
      what: [...say`the sheet measures ${length(outlier)}, but `, ...range],
      figure: outlier,
      limit: outlier > known.high ? known.high : known.low,
      mend: say`measure again in several places; every part here follows ${length(known.mean)} and every slot ${length(known.thickest)}`,
      source: `thickness range of ${known.stock} in the stock file`,
    },
  ];
}
