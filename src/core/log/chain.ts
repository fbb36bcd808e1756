import type { Finding } from '../finding.ts';
import { evaluate } from '../units/evaluate.ts';
import type { Fault } from '../units/problem.ts';
import { say } from '../units/say.ts';
import { slipsOf } from './names.ts';
import type { Change, LogRecord } from './record.ts';
import { entryPath } from './records.ts';
import type { Settable, Settables } from './settable.ts';

/** One change with the entry that tells it. */
export type DatedChange = Change & { readonly entry: string; readonly date: string; readonly at: string };

/** All changes of a log in its order. */
export function datedChanges(records: readonly LogRecord[]): DatedChange[] {
  return records.flatMap((record) =>
    record.changes.map((change, i) => ({
      ...change,
      entry: record.id,
      date: record.date,
      at: `${entryPath(record.id)}.change.${i}`,
    })),
  );
}

/** Values that differ by less are one value; mm and the other core units. */
const SAME = 1e-6;

type Side = { readonly value: number | null; readonly text: string };

/** Texts that differ only in spaces say the same. */
function plain(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

function same(a: Side, b: Side): boolean {
  if (a.value !== null && b.value !== null) return Math.abs(a.value - b.value) <= SAME;
  return plain(a.text) === plain(b.text);
}

function present(value: Settable): Side {
  if (typeof value === 'string') return { value: null, text: value };
  const amount = evaluate(value, {});
  return { value: amount.ok ? amount.value.value : null, text: value.text };
}

const was = (change: Change): Side => ({ value: change.was, text: change.wasText });
const to = (change: Change): Side => ({ value: change.to, text: change.toText });

function broken(before: DatedChange, change: DatedChange): Fault[] {
  if (same(to(before), was(change))) return [];
  return [
    {
      rule: 'change-chain',
      at: `${change.at}.was`,
      what: `you have 'was: ${change.wasText}', but ${before.entry} set ${change.set} to ${before.toText}`,
      mend: `write was: ${before.toText}, or log the change from ${before.toText} to ${change.wasText} between them`,
    },
  ];
}

function ended(change: DatedChange, value: Settable): Fault[] {
  const now = present(value);
  if (same(to(change), now)) return [];
  return [
    {
      rule: 'change-end',
      at: `${change.at}.to`,
      what: `the log's last change sets ${change.set} to ${change.toText}, but the chapter has ${now.text}`,
      mend: `write ${change.toText} in the chapter, or log the change from ${change.toText} to ${now.text}`,
    },
  ];
}

/** Every `was` is the previous `to`, and the last `to` is what the chapter has now. */
export function chainFaults(records: readonly LogRecord[], values: Settables): Fault[] {
  const latest = new Map<string, DatedChange>();
  const faults: Fault[] = [];
  for (const change of datedChanges(records).filter((one) => one.kind === 'set')) {
    const before = latest.get(change.set);
    if (before !== undefined) faults.push(...broken(before, change));
    latest.set(change.set, change);
  }
  const slips = unknownValues(records, values);
  for (const change of latest.values()) {
    const value = Object.hasOwn(values, change.set) ? values[change.set] : undefined;
    if (value !== undefined) faults.push(...ended(change, value));
    else faults.push(...slipFaults(change, slips.get(change.set) ?? null));
  }
  return faults;
}

/** Changed values the plan has not, each with the value that was meant, if a slip of the pen explains it. */
function unknownValues(records: readonly LogRecord[], values: Settables): ReadonlyMap<string, string | null> {
  const unknown = datedChanges(records).filter((one) => one.kind === 'set' && !Object.hasOwn(values, one.set));
  return slipsOf(
    unknown.map((one) => one.set),
    Object.keys(values),
  );
}

function slipFaults(change: DatedChange, near: string | null): Fault[] {
  if (near === null) return [];
  return [
    {
      rule: 'change-unknown',
      at: `${change.at}.set`,
      what: `the plan has no value '${change.set}'`,
      mend: `did you mean '${near}'?`,
    },
  ];
}

/** A note for each changed value the plan has no more; its history is kept. */
export function goneValues(records: readonly LogRecord[], values: Settables): Finding[] {
  const removed = new Set(datedChanges(records).flatMap((one) => (one.kind === 'remove' ? [one.set] : [])));
  const slips = unknownValues(records, values);
  const sets = datedChanges(records).filter((one) => one.kind === 'set' && slips.get(one.set) === null);
  const gone = sets.filter((one) => !removed.has(one.set));
  return gone.map((change) => ({
    rule: 'change-gone',
    level: 'note',
    where: change.entry,
    chapter: change.set.split('.')[0] ?? '',
    what: say`The log changed ${change.set}, which the plan no longer has.`,
    figure: null,
    limit: null,
    unit: 'count',
    mend: say`Log its removal with 'remove', or put it back.`,
    source: 'this notebook',
    accepted: null,
  }));
}

/**
 * The settable values as they were when only the first `count` entries were written, as text: a value changed later goes back to
 * what the next change says it was. Values no change touches are as they are.
 */
export function textsAfter(records: readonly LogRecord[], count: number): Readonly<Record<string, string>> {
  const texts: Record<string, string> = {};
  const later = datedChanges(records.slice(count)).filter((one) => one.kind === 'set');
  for (const change of later) if (!Object.hasOwn(texts, change.set)) texts[change.set] = change.wasText;
  return texts;
}
