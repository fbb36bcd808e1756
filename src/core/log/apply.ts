import type { Finding } from '../finding.ts';
import type { Fault } from '../units/problem.ts';
import type { Quantity } from '../units/quantity.ts';
import { chainFaults, type DatedChange, datedChanges, goneValues } from './chain.ts';
import { contradictions, latestMeasurements, type Measurement, measuredFaults } from './measurement.ts';
import type { LogRecord } from './record.ts';
import type { Settables } from './settable.ts';

/** What the log may touch. */
export type LogInputs = {
  /** values a change may set, chapter first: `benchwork.dimensions.width` */
  readonly values: Settables;
  /** inputs a reading enters, by the name the log uses (`frame.thickness`), with the chapter's own figure or null */
  readonly measurable: Readonly<Record<string, Quantity | null>>;
};

/** What the log brings into the model. */
export type Applied = {
  /** latest readings of each measured input; `mean` sets dados and lengths, `thickest` sets slots */
  readonly measured: Readonly<Record<string, Measurement>>;
  /** all changes in order; the chapter holds their outcome, so they alter nothing */
  readonly changes: readonly DatedChange[];
  readonly faults: readonly Fault[];
  readonly findings: readonly Finding[];
};

/** The measured inputs and checked changes of a log, called before anything is computed. Results (a part, a bench) stay out. */
export function applyLog(inputs: LogInputs, records: readonly LogRecord[]): Applied {
  const latest = latestMeasurements(records);
  const names = new Set(Object.keys(inputs.measurable));
  const measured = Object.fromEntries([...latest].filter(([what]) => names.has(what)));
  return {
    measured,
    changes: datedChanges(records),
    faults: [...chainFaults(records, inputs.values), ...measuredFaults(latest, inputs.measurable)],
    findings: [...goneValues(records, inputs.values), ...contradictions(records, names)],
  };
}
