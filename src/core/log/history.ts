import type { Step } from '../steps/step.ts';
import type { LogRecord } from './record.ts';

/** Something that happened to one instance. */
export type PartEvent = {
  readonly instance: string;
  readonly date: string;
  readonly entry: string;
  readonly kind: 'made' | 'measured' | 'mended' | 'scrapped' | 'placed' | 'apart';
  /** the author's words, or a measured figure as typed */
  readonly words: string;
};

type Told = Pick<PartEvent, 'date' | 'entry'>;

function events(told: Told, kind: PartEvent['kind'], ids: readonly string[]): PartEvent[] {
  return ids.map((instance) => ({ ...told, instance, kind, words: '' }));
}

/** The instance a measured name is about: `side.front.length` is about `side.front`. */
function measuredInstance(what: string): string {
  return what.replace(/\.(?:length|width|thickness|diagonals|height)$/, '');
}

function mends(told: Told, record: LogRecord): PartEvent[] {
  return record.fixes.map((fix) => {
    const kind = fix.leaves === 'nothing' ? 'scrapped' : 'mended';
    return { ...told, instance: fix.part, kind, words: `${fix.what}; ${fix.mend ?? 'not mended'}` };
  });
}

function readings(told: Told, record: LogRecord): PartEvent[] {
  return record.measured.map((one) => ({
    ...told,
    instance: measuredInstance(one.what),
    kind: 'measured',
    words: `${one.what} ${one.texts.join(', ')}`,
  }));
}

/**
 * What one entry says happened, in the order it can have happened: what broke or came apart, what was made, measured, mended,
 * and put in its place, by name or by a step that puts it there.
 */
function eventsOf(record: LogRecord, fits: ReadonlyMap<string, readonly string[]>): PartEvent[] {
  const told = { date: record.date, entry: record.id };
  const mended = mends(told, record);
  const placed = [...new Set([...record.placed, ...record.done.flatMap((id) => fits.get(id) ?? [])])];
  return [
    ...mended.filter((one) => one.kind === 'scrapped'),
    ...events(told, 'apart', record.apart),
    ...events(told, 'made', record.made),
    ...readings(told, record),
    ...mended.filter((one) => one.kind === 'mended'),
    ...events(told, 'placed', placed),
  ];
}

/** All events of a log by instance, oldest first; instances the plan does not have are kept. */
export function historyOf(records: readonly LogRecord[], steps: readonly Step[]): Map<string, PartEvent[]> {
  const fits = new Map(steps.map((step) => [step.id, step.fits ?? []]));
  const history = new Map<string, PartEvent[]>();
  for (const event of records.flatMap((record) => eventsOf(record, fits))) {
    const list = history.get(event.instance);
    if (list === undefined) history.set(event.instance, [event]);
    else list.push(event);
  }
  return history;
}
