import type { EntryKind, LogRecord } from '../core/log/record.ts';
import { CHAPTERS } from './chapters.ts';

/** One way to look at the log: only entries of a kind or of a chapter. */
export type Sift = { readonly id: string; readonly title: string; readonly only: string; readonly count: number };

const KINDS: Readonly<Record<EntryKind, readonly [title: string, only: string]>> = {
  work: ['Work', 'entries with work done'],
  measurement: ['Measured', 'entries with readings'],
  change: ['Changes', 'entries that changed the plan'],
  fix: ['Fixes', 'entries with a fix'],
  laid: ['Track as laid', 'entries that measured the track'],
  trial: ['Running', 'entries with trains run'],
  decision: ['Decisions', 'entries with a decision'],
  closing: ['Closed in', 'entries that tell of a space out of sight'],
  upkeep: ['Upkeep', 'entries with upkeep'],
  purchase: ['Bought', 'entries with money spent'],
  acceptance: ['Lived with', 'entries that accept a finding'],
  photo: ['Photos', 'entries with photos'],
  words: ['Words', 'entries of words alone'],
};

const ORDER = Object.keys(KINDS).filter((kind): kind is EntryKind => Object.hasOwn(KINDS, kind));

/** Ways to sift a log, those that would leave something, kinds first. */
export function siftsOf(log: readonly LogRecord[]): readonly Sift[] {
  const kinds = ORDER.map((kind): Sift => {
    const [title, only] = KINDS[kind];
    return { id: `only-${kind}`, title, only, count: log.filter(({ kinds: all }) => all.includes(kind)).length };
  });
  const chapters = CHAPTERS.map(({ id, title }): Sift => {
    const count = log.filter(({ chapter }) => chapter === id).length;
    return { id: `only-${id}`, title, only: `entries of ${title.toLowerCase()}`, count };
  });
  return [...kinds, ...chapters].filter(({ count }) => count > 0);
}

/** Names by which the style sheet keeps an entry in sight: its kinds and its chapter. */
export function siftNames({ chapter, kinds }: LogRecord): string {
  return [...kinds, chapter].map((name) => `is-${name}`).join(' ');
}
