import { addDays, addMonths, daysBetween } from '../core/log/calendar.ts';
import type { LogRecord } from '../core/log/record.ts';

/** A day of a month's table; null cells fill the weeks. */
export type Day = { readonly date: string; readonly day: number; readonly entries: readonly LogRecord[] };
export type Month = {
  readonly id: string;
  readonly title: string;
  readonly weeks: readonly (readonly (Day | null)[])[];
};

const NAMES = [
  ...['January', 'February', 'March', 'April', 'May', 'June'],
  ...['July', 'August', 'September', 'October', 'November', 'December'],
];

/** Days since a Monday, 0 to 6; 1970-01-05 was one. */
function weekday(date: string): number {
  return ((daysBetween('1970-01-05', date) % 7) + 7) % 7;
}

function monthOf(id: string, byDay: ReadonlyMap<string, readonly LogRecord[]>): Month {
  const first = `${id}-01`;
  const length = daysBetween(first, addMonths(first, 1));
  const days = Array.from({ length }, (_, i): Day => {
    const date = addDays(first, i);
    return { date, day: i + 1, entries: byDay.get(date) ?? [] };
  });
  const cells = [...Array.from({ length: weekday(first) }, () => null), ...days];
  const weeks = Array.from({ length: Math.ceil(cells.length / 7) }, (_, i) =>
    Array.from({ length: 7 }, (_, j) => cells[i * 7 + j] ?? null),
  );
  const [year, month] = id.split('-');
  return { id, title: `${NAMES[Number(month) - 1] ?? month} ${year}`, weeks };
}

/** The months in which something was written, oldest first, their weeks from Monday. */
export function monthsOf(log: readonly LogRecord[]): readonly Month[] {
  const byDay = new Map<string, LogRecord[]>();
  for (const entry of log) {
    const list = byDay.get(entry.date);
    if (list === undefined) byDay.set(entry.date, [entry]);
    else list.push(entry);
  }
  const ids = [...new Set(log.map(({ date }) => date.slice(0, 7)))].sort();
  return ids.map((id) => monthOf(id, byDay));
}
