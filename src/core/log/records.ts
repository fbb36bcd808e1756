import type { Fault } from '../units/problem.ts';
import type { Scope } from '../units/quantity.ts';
import { type ChangeContext, changesOf } from './change.ts';
import { type Worker, worker } from './evaluated.ts';
import { currentName } from './names.ts';
import type {
  Acceptance,
  EntryKind,
  Fix,
  Laid,
  LineSpot,
  LogRecord,
  Measured,
  Money,
  Trial,
  Upkeep,
} from './record.ts';
import type { Entry } from './schema.ts';

/** What entries are read against: names for expressions, and what a change may set. */
export type LogContext = ChangeContext & { readonly scope: Scope };

/** Path of an entry in the plan's spots. */
export function entryPath(id: string): string {
  return `log.${id}`;
}

/** By date, then by id; the order of files does not matter. */
export function inLogOrder<T extends { readonly date: string; readonly id: string }>(entries: readonly T[]): T[] {
  return [...entries].sort((a, b) => (a.date === b.date ? byText(a.id, b.id) : byText(a.date, b.date)));
}

function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Every entry evaluated, oldest first, with today's names of what was renamed; faults for what does not work out. */
export function logRecords(entries: readonly Entry[], context: LogContext) {
  const ordered = inLogOrder(entries);
  const renamed: Record<string, string> = {};
  for (const entry of ordered) Object.assign(renamed, entry.renamed ?? {});
  const faults: Fault[] = [];
  const records = ordered.map((entry): LogRecord => {
    const work = worker(context.scope);
    const record = recordOf(entry, { work, context, name: (id) => currentName(id, renamed) });
    faults.push(...work.faults);
    return record;
  });
  return { records, faults };
}

type Reading = { readonly work: Worker; readonly context: LogContext; readonly name: (id: string) => string };

function recordOf(entry: Entry, reading: Reading): LogRecord {
  const { work, name } = reading;
  const values = {
    done: entry.done.map((id) => fullStep(id, entry.chapter)),
    made: entry.made.map(name),
    placed: entry.placed.map(name),
    apart: entry.apart.map(name),
    measured: entry.measured.map((one) => measuredOf(one, reading)),
    changes: changesOf(entry, { ...reading.context, faults: work.faults, path: entryPath(entry.id) }),
    fixes: entry.fix.map((one) => fixOf(one, reading)),
    laid: entry.laid.map((one) => laidOf(one, work)),
    trials: entry.trial.map((one) => trialOf(one, work)),
    decided: entry.decided.map((one) => ({
      what: one.what,
      ratherThan: one['rather-than'] ?? null,
      because: one.because ?? null,
    })),
    hidden: entry.hidden.map((one) => ({
      id: one.id,
      access: one.access,
      photo: one.photo ?? null,
      test: one.test ?? null,
    })),
    photos: entry.photos,
    upkeep: entry.upkeep.map((one): Upkeep => ({ what: one.what, againIn: work.number(one['again-in']) })),
    spent: moneyOf(entry, work),
    accepted: entry.accept.map((one) => acceptanceOf(one, work)),
  };
  const head = { id: entry.id, date: entry.date, chapter: entry.chapter, title: titleOf(entry.id) };
  const time = { minutes: work.number(entry.minutes), people: work.number(entry.people) };
  return { ...head, ...time, kinds: kindsOf(values, time.minutes), ...values };
}

/** `rout` of a benchwork entry is `benchwork.rout`. */
function fullStep(id: string, chapter: string): string {
  return /^(?:benchwork|track|wiring|scenery)\./.test(id) ? id : `${chapter}.${id}`;
}

/** The words of a file's name, first letter large: `2026-01-24-strips` is `Strips`. */
function titleOf(id: string): string {
  const words = id.replace(/^\d{4}-\d{2}-\d{2}-?/, '').replaceAll('-', ' ');
  return words === '' ? id : `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

function measuredOf(one: Entry['measured'][number], { work, name }: Reading): Measured {
  const readings = one.readings.flatMap((reading) => work.number(reading) ?? []);
  const count = Math.max(1, readings.length);
  return {
    what: name(one.what),
    readings,
    texts: one.readings.map((reading) => reading.text),
    mean: readings.reduce((sum, value) => sum + value, 0) / count,
    thickest: Math.max(...readings, ...(readings.length === 0 ? [0] : [])),
    thinnest: Math.min(...readings, ...(readings.length === 0 ? [0] : [])),
    with: one.with ?? null,
    within: work.number(one.within),
  };
}

function fixOf(one: Entry['fix'][number], { work, name }: Reading): Fix {
  const place = { part: name(one.part), at: work.number(one.at), from: one.from ?? null };
  return { ...place, what: one.what, cause: one.cause ?? null, mend: one.mend, leaves: one.leaves };
}

type AlongLine = Entry['laid'][number] | Entry['trial'][number];

function spotOf(one: AlongLine, work: Worker): LineSpot {
  if ('past' in one) return { line: one.line, past: one.past, by: work.number(one.by), at: null };
  return { line: one.line, past: null, by: null, at: work.number(one.at) };
}

function laidOf(one: Entry['laid'][number], work: Worker): Laid {
  return {
    ...spotOf(one, work),
    heightStep: work.number(one['height-step']),
    sideStep: work.number(one['side-step']),
    gap: work.number(one.gap),
    gauge: work.number(one.gauge),
    kink: work.number(one.kink),
    twist: work.number(one.twist),
  };
}

function trialOf(one: Entry['trial'][number], work: Worker): Trial {
  const counts = { off: work.number(one.off) ?? 0, of: work.number(one.of) ?? 0 };
  return { ...spotOf(one, work), ...counts, vehicle: one.vehicle ?? null, direction: one.direction ?? null };
}

function moneyOf(entry: Entry, work: Worker): Money | null {
  const amount = work.amount(entry.spent);
  return amount === null ? null : { value: amount.value, currency: amount.currency ?? '' };
}

function acceptanceOf(one: Entry['accept'][number], work: Worker): Acceptance {
  const amount = work.amount(one.figure);
  const figure = { figure: amount?.value ?? null, dimension: amount?.dimension ?? null };
  return { finding: one.finding, where: one.where, ...figure, because: one.because };
}

type Values = Omit<LogRecord, 'id' | 'date' | 'chapter' | 'title' | 'minutes' | 'people' | 'kinds'>;

function kindsOf(values: Values, minutes: number | null): EntryKind[] {
  const worked =
    minutes !== null || [values.done, values.made, values.placed, values.apart].some((list) => list.length > 0);
  const found: readonly (readonly [EntryKind, boolean])[] = [
    ['work', worked],
    ['measurement', values.measured.length > 0],
    ['change', values.changes.length > 0],
    ['fix', values.fixes.length > 0],
    ['laid', values.laid.length > 0],
    ['trial', values.trials.length > 0],
    ['decision', values.decided.length > 0],
    ['closing', values.hidden.length > 0],
    ['upkeep', values.upkeep.length > 0],
    ['purchase', values.spent !== null],
    ['acceptance', values.accepted.length > 0],
    ['photo', values.photos.length > 0],
  ];
  const kinds = found.filter(([, is]) => is).map(([kind]) => kind);
  return kinds.length === 0 ? ['words'] : kinds;
}
