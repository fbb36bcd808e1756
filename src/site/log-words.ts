import type { LogRecord, Measured } from '../core/log/record.ts';
import { lengthPair, type Pair } from './lengths.ts';
import { counted, duration, plainName } from './words.ts';

/** What an entry holds, in one line. */
export function entrySummary(entry: LogRecord): string {
  const parts = [
    plainName(entry.chapter),
    ...(entry.people === null ? [] : [counted(entry.people, 'person', 'people')]),
    ...(entry.minutes === null ? [] : [duration(entry.minutes)]),
    ...(entry.done.length > 0 ? [`${counted(entry.done.length, 'step')} done`] : []),
    ...(entry.made.length > 0 ? [`${counted(entry.made.length, 'piece')} made`] : []),
    ...(entry.measured.length > 0 ? ['measured'] : []),
    ...(entry.changes.length > 0 ? [counted(entry.changes.length, 'change')] : []),
    ...(entry.fixes.length > 0 ? [counted(entry.fixes.length, 'fix', 'fixes')] : []),
    ...(entry.trials.length > 0 ? [runSummary(entry)] : []),
    ...(entry.hidden.length > 0 ? ['a space closed in'] : []),
    ...(entry.upkeep.length > 0 ? ['upkeep'] : []),
    ...(entry.decided.length > 0 ? [counted(entry.decided.length, 'decision')] : []),
    ...(entry.spent === null ? [] : [`${entry.spent.value.toFixed(2)} ${entry.spent.currency} spent`]),
  ];
  return parts.join(' · ');
}

/** How often trains came off of all passes of an entry. */
function runSummary({ trials }: LogRecord): string {
  const sum = (key: 'off' | 'of') => trials.reduce((all, trial) => all + trial[key], 0);
  return `${sum('off')} off of ${counted(sum('of'), 'pass', 'passes')}`;
}

/** Readings of one thing, with what came of them. */
export function measuredWords(measured: Measured): Pair {
  const words = (unit: 'mm' | 'in') => {
    const readings = measured.readings.map((mm) => lengthPair(mm)[unit]).join(', ');
    const tool = measured.with === null ? '' : ` with a ${plainName(measured.with)}`;
    return `${plainName(measured.what)}${tool}: ${readings}; mean ${lengthPair(measured.mean)[unit]}, thickest ${lengthPair(measured.thickest)[unit]}`;
  };
  return { mm: words('mm'), in: words('in') };
}
