import type { Finding } from '../finding.ts';
import { evaluate } from '../units/evaluate.ts';
import type { Fault } from '../units/problem.ts';
import type { Quantity } from '../units/quantity.ts';
import { length, say } from '../units/say.ts';
import type { LogRecord, Measured } from './record.ts';
import { entryPath } from './records.ts';

/** What the log knows of one measured input: the readings of its latest entry. mm. */
export type Measurement = Measured & {
  readonly date: string;
  readonly entry: string;
  /** path of the readings in the plan's spots */
  readonly at: string;
};

/** All measurements of a log, oldest first. */
export function measurements(records: readonly LogRecord[]): Measurement[] {
  return records.flatMap((record) =>
    record.measured
      .map((one, i) => ({ ...one, date: record.date, entry: record.id, at: `${entryPath(record.id)}.measured.${i}` }))
      .filter((one) => one.readings.length > 0),
  );
}

/** The latest measurement of each name. */
export function latestMeasurements(records: readonly LogRecord[]): Map<string, Measurement> {
  return new Map(measurements(records).map((one) => [one.what, one]));
}

/** A chapter's figure is the log's mean when it rounds to it: half of the 0.1 mm a caliper tells apart. mm. */
const TOLD_APART = 0.05;

/** A chapter's own `measured` that is not the log's mean: both are named, neither wins in silence. */
export function measuredFaults(
  latest: ReadonlyMap<string, Measurement>,
  own: Readonly<Record<string, Quantity | null>>,
): Fault[] {
  return Object.entries(own).flatMap(([what, quantity]) => {
    const measured = latest.get(what);
    if (measured === undefined || quantity === null) return [];
    const amount = evaluate(quantity, {});
    if (!amount.ok || Math.abs(amount.value.value - measured.mean) <= TOLD_APART + 1e-9) return [];
    const mean = shown(measured);
    return [
      {
        rule: 'measured-twice',
        at: quantity.at,
        what: `the chapter has ${quantity.text} for ${what}, but the readings of ${measured.date} (${measured.texts.join(', ')}) have the mean ${mean}`,
        mend: `write ${mean} here, leave 'measured' out, or log a new reading`,
      },
    ];
  });
}

/** The mean in the unit of its first reading: mm to 0.01, inches to 0.001. */
function shown(measured: Measured): string {
  const inches = /(?:in|inch|inches|["”″])\s*$/.test(measured.texts[0] ?? '');
  return inches
    ? `${Math.round((measured.mean / 25.4) * 1000) / 1000} in`
    : `${Math.round(measured.mean * 100) / 100} mm`;
}

/** How far two readings of one thing may lie apart before one of them is doubted; mm; common practice, no source. */
function doubtful(mean: number): number {
  return Math.max(1, 0.08 * Math.abs(mean));
}

/** Readings of one thing that can't both be right: far apart in one entry, or two entries of one day that exclude each other. */
export function contradictions(records: readonly LogRecord[], names: ReadonlySet<string>): Finding[] {
  const all = measurements(records).filter((one) => names.has(one.what));
  const wide = all.filter((one) => one.thickest - one.thinnest > doubtful(one.mean)).map(wideFinding);
  const before = new Map<string, Measurement>();
  const clashes = all.flatMap((one) => {
    const key = `${one.what} ${one.date}`;
    const earlier = before.get(key);
    before.set(key, one);
    return earlier !== undefined && apart(earlier, one) > 0 ? [clashFinding(earlier, one)] : [];
  });
  return [...wide, ...clashes];
}

/** The gap between two spans of readings, each widened by its instrument's accuracy; 0 when they meet. mm. */
function apart(a: Measurement, b: Measurement): number {
  const slack = (a.within ?? 0) + (b.within ?? 0);
  return Math.max(0, Math.max(a.thinnest, b.thinnest) - Math.min(a.thickest, b.thickest) - slack);
}

const SHAPE = { rule: 'readings-contradict', level: 'care', chapter: 'benchwork', unit: 'mm', accepted: null } as const;

function wideFinding(one: Measurement): Finding {
  return {
    ...SHAPE,
    where: one.what,
    what: say`The readings of ${one.what} on ${one.date} lie ${length(one.thickest - one.thinnest)} apart.`,
    figure: one.thickest - one.thinnest,
    limit: doubtful(one.mean),
    mend: say`Measure again; strike out the reading that was a slip.`,
    source: 'common practice, no source',
  };
}

function clashFinding(one: Measurement, other: Measurement): Finding {
  return {
    ...SHAPE,
    where: one.what,
    what: say`Two entries of ${one.date} measure ${one.what} as ${length(one.mean)} and ${length(other.mean)}; ${other.entry} is used.`,
    figure: Math.abs(one.mean - other.mean),
    limit: (one.within ?? 0) + (other.within ?? 0),
    mend: say`Keep the entry that is right, or put all readings in one.`,
    source: 'common practice, no source',
  };
}
