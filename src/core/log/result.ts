import type { Finding } from '../finding.ts';
import type { Part } from '../stock/part.ts';
import { atLeast, length, type Sentence, say } from '../units/say.ts';
import { latestMeasurements, type Measurement } from './measurement.ts';
import type { LogRecord } from './record.ts';
import { likelySlip, type Slip } from './slip.ts';
import { skew } from './square.ts';

/** The outside of a bench, mm; a bench of the model is one. */
export type Outside = { readonly id: string; readonly length: number; readonly width: number };

/** A measured part or bench beside what the model says; it never enters the model. mm. */
export type ResultRow = {
  readonly what: string;
  readonly entry: string;
  readonly date: string;
  readonly measured: number;
  readonly expected: number;
  readonly difference: number;
  readonly slip: Slip | null;
};

/** A part of this size is right for wood when it is out by no more, mm; common practice, no source. */
const RIGHT = 1;

/** Diagonals of a frame may differ by this, mm; common practice, no source. */
const SQUARE = 2;

/** Every figure a result may be compared with: `side.front.length`, `table.width`, `table.diagonals`. mm. */
export function expectedSizes(parts: readonly Part[], benches: readonly Outside[]): Readonly<Record<string, number>> {
  const sizes: Record<string, number> = {};
  for (const part of parts) {
    for (const { id } of part.places) {
      sizes[`${id}.length`] = part.blank.length;
      sizes[`${id}.width`] = part.blank.width;
      sizes[`${id}.thickness`] = part.blank.thickness;
    }
  }
  for (const bench of benches) {
    sizes[`${bench.id}.length`] = bench.length;
    sizes[`${bench.id}.width`] = bench.width;
    sizes[`${bench.id}.diagonals`] = Math.hypot(bench.length, bench.width);
  }
  return sizes;
}

function rowOf(one: Measurement, expected: number): ResultRow {
  const slip = likelySlip(one.mean, expected, one.within ?? 0);
  const base = { what: one.what, entry: one.entry, date: one.date };
  return { ...base, measured: one.mean, expected, difference: one.mean - expected, slip };
}

/** The latest measurement of each part and bench beside its computed figure. */
export function measuredResults(
  records: readonly LogRecord[],
  expected: Readonly<Record<string, number>>,
): ResultRow[] {
  return [...latestMeasurements(records).values()].flatMap((one) => {
    const figure = Object.hasOwn(expected, one.what) ? expected[one.what] : undefined;
    return figure === undefined ? [] : [rowOf(one, figure)];
  });
}

/** Results that are out by more than wood forgives, with the slip that explains them; and frames out of square. */
export function resultFindings(
  records: readonly LogRecord[],
  parts: readonly Part[],
  benches: readonly Outside[],
): Finding[] {
  const rows = measuredResults(records, expectedSizes(parts, benches));
  const off = rows.filter((row) => !row.what.endsWith('.diagonals') && Math.abs(row.difference) > RIGHT);
  return [...off.map(offFinding), ...benches.flatMap((bench) => squareFindings(records, bench))];
}

const SHAPE = {
  chapter: 'benchwork',
  level: 'care',
  unit: 'mm',
  source: 'common practice, no source',
  accepted: null,
} as const;

function offMend(row: ResultRow): Sentence {
  if (row.slip !== null) return say`Measure again: this looks like ${row.slip.says}.`;
  if (row.difference > 0 && row.what.endsWith('.width')) {
    return say`Take ${length(row.difference / 2)} off each side, or log a change that adopts what is there.`;
  }
  if (row.difference > 0) return say`Take ${length(row.difference)} off, or log a change that adopts what is there.`;
  return say`Make it again, fill it with a packer of ${length(-row.difference)}, or log a change that adopts what is there.`;
}

function offFinding(row: ResultRow): Finding {
  return {
    ...SHAPE,
    rule: 'measured-off',
    where: row.what,
    what: say`${row.what} measured ${length(row.measured)} on ${row.date}; the model has ${length(row.expected)}.`,
    figure: Math.abs(row.difference),
    limit: RIGHT,
    mend: offMend(row),
  };
}

function squareFindings(records: readonly LogRecord[], bench: Outside): Finding[] {
  const [first, second] = latestMeasurements(records).get(`${bench.id}.diagonals`)?.readings ?? [];
  if (first === undefined || second === undefined) return [];
  const difference = Math.abs(first - second);
  if (difference <= SQUARE) return [];
  const across = bench.width * Math.tan(skew({ length: bench.length, width: bench.width, readings: [first, second] }));
  return [
    {
      ...SHAPE,
      rule: 'out-of-square',
      where: bench.id,
      what: say`The diagonals of ${bench.id} differ by ${length(difference)}; its corner is out by ${length(across)} over its width.`,
      figure: difference,
      limit: SQUARE,
      mend: say`Pull the longer diagonal in by ${atLeast(difference / 2)} before the glue sets or the deck goes on.`,
    },
  ];
}
