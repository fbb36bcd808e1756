import { applyLog } from '../log/apply.ts';
import { logRecords } from '../log/records.ts';
import { settablesOf } from '../log/settable.ts';
import type { Plan } from '../plan.ts';
import type { Reading } from '../stock/thickness-check.ts';
import type { Quantity } from '../units/quantity.ts';

/** Readings of each role's sheet, the latest in the log. */
export type Readings = Readonly<Record<string, readonly Reading[]>>;

/** Stage 1: the log evaluated, with what it measured of the inputs and whether its changes hang together. */
export function readLog(plan: Plan) {
  const values = {
    ...settablesOf('benchwork', plan.benchwork),
    ...settablesOf('track', plan.track),
    ...settablesOf('wiring', plan.wiring),
    ...settablesOf('scenery', plan.scenery),
    ...settablesOf('notebook', plan.head),
  };
  const { records, faults } = logRecords(plan.log, { values, bare: plan.head.bare ?? null, scope: {} });
  const applied = applyLog({ values, measurable: measurable(plan) }, records);
  const readings = Object.keys(plan.benchwork.materials).map((role) => {
    const measured = applied.measured[`${role}.thickness`];
    return [role, (measured?.readings ?? []).map((value): Reading => ({ value, at: measured?.at ?? '' }))] as const;
  });
  return {
    records,
    readings: Object.fromEntries(readings),
    findings: applied.findings,
    faults: [...faults, ...applied.faults],
  };
}

/** Inputs a log reading enters, each with the chapter's own figure. */
export function measurable(plan: Plan): Readonly<Record<string, Quantity | null>> {
  const roles = Object.entries(plan.benchwork.materials).map(([role, material]) => {
    const own = typeof material === 'string' ? null : (material.measured ?? null);
    return [`${role}.thickness`, own] as const;
  });
  return Object.fromEntries(roles);
}
