import { addDays, addMonths, daysBetween } from './calendar.ts';
import type { LogRecord } from './record.ts';

/** Something that comes round again. `days` until it is due, negative when it is late; null without a today. */
export type UpkeepLine = {
  readonly what: string;
  readonly last: string;
  readonly entry: string;
  readonly againIn: number | null;
  readonly due: string | null;
  readonly days: number | null;
  readonly state: 'once' | 'due' | 'soon' | 'later' | 'unknown';
};

/** Due within a month counts as soon; days. */
const SOON = 30;

/** Mean month of the Gregorian calendar, days: 146097 / 4800. */
const MONTH = 30.436_875;

function dateOf(last: string, months: number | null): string | null {
  if (months === null || months <= 0) return null;
  const whole = Math.floor(months);
  return addDays(addMonths(last, whole), Math.round((months - whole) * MONTH));
}

function stateOf(due: string | null, days: number | null): UpkeepLine['state'] {
  if (due === null) return 'once';
  if (days === null) return 'unknown';
  return days <= 0 ? 'due' : days <= SOON ? 'soon' : 'later';
}

/** The latest of each upkeep and when it is due again; `today` is handed in by a command, null in a build. */
export function upkeepOf(records: readonly LogRecord[], today: string | null): UpkeepLine[] {
  const latest = new Map<string, UpkeepLine>();
  for (const record of records) {
    for (const { what, againIn } of record.upkeep) {
      const due = dateOf(record.date, againIn);
      const days = due === null || today === null ? null : daysBetween(today, due);
      latest.set(what, { what, last: record.date, entry: record.id, againIn, due, days, state: stateOf(due, days) });
    }
  }
  return [...latest.values()].sort((a, b) => byDue(a) - byDue(b) || (a.what < b.what ? -1 : 1));
}

function byDue(line: UpkeepLine): number {
  return line.due === null ? Number.MAX_SAFE_INTEGER : daysBetween('1970-01-01', line.due);
}
