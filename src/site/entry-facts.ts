import type { Change, Fix, LogRecord } from '../core/log/record.ts';
import { both, type Html, line, link, listed, partLink, text } from './html.ts';
import { lengthPair } from './lengths.ts';
import { measuredWords } from './log-words.ts';
import type { Book } from './notebooks.ts';
import { at, stepAnchor } from './paths.ts';
import { laidWords, spotWords, trialWords } from './run-words.ts';
import { duration, plainName } from './words.ts';

/** One thing an entry records: what it is, and its words. */
export type Fact = { readonly name: string; readonly words: Html };

function ifAny(before: string, words: string | null): Html {
  return words === null ? text('') : text(`${before}${words}`);
}

function stepLink(book: Book, id: string): Html {
  const step = book.notebook.steps.find((one) => one.id === id);
  if (step === undefined) return text(plainName(id));
  return link(`${at(book.notebook.slug, step.chapter)}#${stepAnchor(id)}`, step.title);
}

const LEAVES = { full: 'as strong as before', half: 'half as stiff as before', hinge: 'a hinge', nothing: 'nothing' };

/** What broke, where, why, and what the mend leaves. */
export function fixWords(book: Book, fix: Fix): Html {
  const where =
    fix.at === null ? text('') : line(text(', '), both(lengthPair(fix.at)), text(` from ${fix.from ?? 'its end'}`));
  const mend = fix.mend === null ? ' Not mended yet' : ` Mend: ${fix.mend}`;
  const leaves = fix.leaves === null ? '' : `; it leaves ${LEAVES[fix.leaves]}`;
  return line(
    partLink(book, fix.part),
    where,
    text(`: ${fix.what}`),
    ifAny(', because of ', fix.cause),
    text(`.${mend}${leaves}.`),
  );
}

function workFacts(book: Book, entry: LogRecord): readonly Fact[] {
  return [
    ...(entry.done.length > 0
      ? [{ name: 'Steps done', words: listed(entry.done.map((id) => stepLink(book, id))) }]
      : []),
    ...(entry.made.length > 0
      ? [{ name: 'Pieces made', words: listed(entry.made.map((id) => partLink(book, id))) }]
      : []),
    ...(entry.placed.length > 0
      ? [{ name: 'Put in place', words: listed(entry.placed.map((id) => partLink(book, id))) }]
      : []),
    ...(entry.apart.length > 0
      ? [{ name: 'Taken apart', words: listed(entry.apart.map((id) => partLink(book, id))) }]
      : []),
    ...entry.measured.map((measured) => ({ name: 'Measured', words: both(measuredWords(measured)) })),
    ...entry.fixes.map((fix) => ({ name: 'Fixed', words: fixWords(book, fix) })),
  ];
}

const CHANGED: Readonly<Record<Change['kind'], string>> = { set: 'Changed', add: 'Added', remove: 'Taken out' };

function changeWords({ kind, set, toText, wasText }: Change): string {
  return kind === 'set' ? `${set}: from ${wasText} to ${toText}` : set;
}

function thoughtFacts(entry: LogRecord): readonly Fact[] {
  return [
    ...entry.changes.map((change) => ({
      name: CHANGED[change.kind],
      words: line(text(changeWords(change)), ifAny(', because ', change.because)),
    })),
    ...entry.decided.map(({ because, ratherThan, what }) => ({
      name: 'Decided',
      words: line(text(what), ifAny(', rather than ', ratherThan), ifAny(', because ', because)),
    })),
    ...entry.accepted.map(({ because, finding, where }) => ({
      name: 'Lived with',
      words: text(`${plainName(finding)} at ${plainName(where)}, because ${because}`),
    })),
  ];
}

function laterFacts(entry: LogRecord): readonly Fact[] {
  return [
    ...entry.laid.map((laid) => ({ name: 'As laid', words: line(spotWords(laid), laidWords(laid)) })),
    ...entry.trials.map((trial) => ({ name: 'Trial', words: line(spotWords(trial), text(trialWords(trial))) })),
    ...entry.hidden.map(({ access, id }) => ({
      name: 'Closed',
      words: text(`${plainName(id)}: reached by: ${access ?? 'nothing written down'}`),
    })),
    ...entry.upkeep.map(({ againIn, what }) => ({
      name: 'Upkeep',
      words: text(againIn === null ? what : `${what}, again in ${againIn} months`),
    })),
    ...(entry.spent === null
      ? []
      : [{ name: 'Spent', words: text(`${entry.spent.value.toFixed(2)} ${entry.spent.currency}`) }]),
    ...(entry.minutes === null ? [] : [{ name: 'Time', words: text(duration(entry.minutes)) }]),
  ];
}

/** All that an entry's front matter records, in words. */
export function entryFacts(book: Book, entry: LogRecord): readonly Fact[] {
  return [...workFacts(book, entry), ...thoughtFacts(entry), ...laterFacts(entry)];
}
