import { applyLog } from '../../../src/core/log/apply.ts';
import type { LogRecord } from '../../../src/core/log/record.ts';
import { logRecords } from '../../../src/core/log/records.ts';
import { type Entry, entrySchema } from '../../../src/core/log/schema.ts';
import { type Settables, settablesOf } from '../../../src/core/log/settable.ts';
import { type LogState, type LogStateInput, logState } from '../../../src/core/log/state.ts';
import { parseQuantity } from '../../../src/core/units/parse.ts';
import type { Fault } from '../../../src/core/units/problem.ts';
import type { Dimension, Quantity } from '../../../src/core/units/quantity.ts';
import { quantityKit } from '../../../src/core/units/schema.ts';
import { MODEL, planned } from '../steps/demo.ts';

const SCHEMA = entrySchema(quantityKit(null));

/** An entry as the reader makes it: every scalar is text, as the file has it. */
export function entry(id: string, raw: Readonly<Record<string, unknown>>): Entry {
  const parsed = SCHEMA.safeParse({ date: id.slice(0, 10), chapter: 'benchwork', ...raw });
  if (!parsed.success) throw new Error(`${id}: ${parsed.error.message}`);
  return { ...parsed.data, id };
}

export function quantity<D extends Dimension>(dimension: D, text: string, at: string): Quantity<D> {
  const tree = parseQuantity(text, dimension, { bare: null });
  if (!tree.ok) throw new Error(tree.faults.map((fault) => fault.what).join('; '));
  return { dimension, text, tree: tree.value, at };
}

/** The chapter's values a change may set, with these lengths under dimensions. */
export function values(dimensions: Readonly<Record<string, string>> = { width: '1100 mm' }): Settables {
  const quantities = Object.entries(dimensions).map(([name, text]) => [
    name,
    quantity('length', text, `benchwork.dimensions.${name}`),
  ]);
  return settablesOf('benchwork', { dimensions: Object.fromEntries(quantities), materials: { deck: 'birch-ply-9' } });
}

export function read(
  entries: readonly Entry[],
  known: Settables = values(),
): { records: LogRecord[]; faults: Fault[] } {
  return logRecords(entries, { values: known, bare: null, scope: {} });
}

export function records(...entries: readonly Entry[]): LogRecord[] {
  return read(entries).records;
}

/** What the log brings into the model, with the chapter's own reading of the frame's sheet. */
export function applied(entries: readonly Entry[], more: { own?: string | null; values?: Settables } = {}) {
  const known = more.values ?? values();
  const own = more.own == null ? null : quantity('length', more.own, 'benchwork.materials.frame.measured');
  return applyLog({ values: known, measurable: { 'frame.thickness': own } }, read(entries, known).records);
}

/** The state of the demo table after these entries. */
export function state(entries: readonly Entry[], more: Partial<LogStateInput> = {}): LogState {
  return logState({
    records: records(...entries),
    parts: MODEL.parts,
    steps: planned([]).steps,
    benches: MODEL.benches,
    measurable: ['frame.thickness'],
    budget: null,
    toBuy: null,
    today: null,
    ...more,
  });
}

export function rules(log: Pick<LogState, 'findings'>): string[] {
  return log.findings.map((finding) => finding.rule);
}
