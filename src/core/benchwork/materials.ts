import type { BoardStock, SheetStock, Stock } from '../stock/goods.ts';
import type { KnownThickness } from '../stock/thickness.ts';
import { knownThickness, type Reading, readingFaults } from '../stock/thickness-check.ts';
import { evaluate } from '../units/evaluate.ts';
import { nearest } from '../units/nearest.ts';
import { done, type Fault, failed, type Result } from '../units/problem.ts';
import { fault } from './fault.ts';
import type { Benchwork } from './schema.ts';

type MaterialSource = Benchwork['materials'][string];

/** The sheet or board a role is cut from; null when there is none of that id. */
export function sheetOf(material: MaterialSource, stock: readonly Stock[]): SheetStock | BoardStock | null {
  const id = typeof material === 'string' ? material : material.stock;
  const found = stock.find((one) => one.id === id);
  return found?.kind === 'sheet' || found?.kind === 'board' ? found : null;
}

/** What the thicknesses rest on: the stock files and the latest readings of each role in the log. */
export type Measured = {
  readonly stock: readonly Stock[];
  readonly readings: Readonly<Record<string, readonly Reading[]>>;
};

/**
 * Thickness of each role's sheet: the log's readings, else the chapter's own `measured`, else as listed. Faults: a stock
 * that is none, a reading of another sheet. Whether log and chapter agree is `measuredFaults` in the log.
 */
export function materialThicknesses(
  benchwork: Benchwork,
  measured: Measured,
): Result<Readonly<Record<string, KnownThickness>>> {
  const faults: Fault[] = [];
  const known = Object.entries(benchwork.materials).flatMap(([role, material]) => {
    const answer = roleThickness(role, material, measured);
    if (answer.ok) return [[role, answer.value] as const];
    faults.push(...answer.faults);
    return [];
  });
  return faults.length > 0 ? failed(...faults) : done(Object.fromEntries(known));
}

function roleThickness(role: string, material: MaterialSource, measured: Measured): Result<KnownThickness> {
  const at = `benchwork.materials.${role}`;
  const sheet = sheetOf(material, measured.stock);
  if (sheet === null) return failed(stockFault(at, material, measured.stock));
  const own = ownReading(at, material);
  if (!own.ok) return own;
  const logged = measured.readings[role] ?? [];
  const faults = readingFaults(sheet, [...own.value, ...logged]);
  if (faults.length > 0) return failed(...faults);
  const used = logged.length > 0 ? logged : own.value;
  const known = {
    ...knownThickness(
      sheet,
      used.map(({ value }) => value),
    ),
    dated: logged.length > 0,
  };
  return done(known);
}

function ownReading(at: string, material: MaterialSource): Result<readonly Reading[]> {
  if (typeof material === 'string' || material.measured === undefined) return done([]);
  const amount = evaluate(material.measured, {});
  return amount.ok ? done([{ value: amount.value.value, at: `${at}.measured` }]) : amount;
}

function stockFault(at: string, material: MaterialSource, stock: readonly Stock[]): Fault {
  const id = typeof material === 'string' ? material : material.stock;
  const path = typeof material === 'string' ? at : `${at}.stock`;
  const cuts = stock.filter(({ kind }) => kind === 'sheet' || kind === 'board').map((one) => one.id);
  const what = `${id} is no sheet or board in the stock files`;
  const near = nearest(id, cuts);
  const mend = near === null ? `use one of ${cuts.join(', ')}, or add it to a stock file` : `did you mean ${near}?`;
  return fault('stock-unknown', path, { what, mend });
}
