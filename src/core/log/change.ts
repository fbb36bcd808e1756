import { evaluate } from '../units/evaluate.ts';
import { parseQuantity } from '../units/parse.ts';
import type { Fault } from '../units/problem.ts';
import type { Dimension } from '../units/quantity.ts';
import type { Bare } from '../units/schema.ts';
import type { Written } from '../units/written.schema.ts';
import type { Change } from './record.ts';
import type { Entry } from './schema.ts';
import type { Settables } from './settable.ts';

/** What a change may set now, by path, and what a bare number means. */
export type ChangeContext = { readonly values: Settables; readonly bare: Bare };

type Context = ChangeContext & { readonly faults: Fault[]; readonly path: string };

/** An entry's changes with both sides worked out; a side that is no value of its kind is a fault. */
export function changesOf(entry: Entry, context: Context): Change[] {
  return entry.change.map((one, i) => {
    const because = one.because ?? null;
    const at = `${context.path}.change.${i}`;
    if ('add' in one) return { ...block('add', pathOf(one.add, entry.chapter), one.block), because };
    if ('remove' in one) return { ...block('remove', pathOf(one.remove, entry.chapter), one.block), because };
    return { ...setting(one, { ...context, path: at }, entry.chapter), because };
  });
}

/** Paths are the chapter's own; one that begins with a chapter keeps it. */
function pathOf(name: string, chapter: string): string {
  return /^(?:benchwork|track|wiring|scenery|notebook)\./.test(name) ? name : `${chapter}.${name}`;
}

function textOf(written: Written): string {
  return typeof written === 'string' ? written : JSON.stringify(written);
}

function block(kind: 'add' | 'remove', set: string, written: Written): Omit<Change, 'because'> {
  const text = textOf(written);
  const texts = kind === 'add' ? { wasText: '', toText: text } : { wasText: text, toText: '' };
  return { kind, set, dimension: null, was: null, to: null, ...texts };
}

type SetOf = Extract<Entry['change'][number], { set: string }>;

function setting(one: SetOf, context: Context, chapter: string): Omit<Change, 'because'> {
  const set = pathOf(one.set, chapter);
  const now = context.values[set];
  const dimension = now === undefined || typeof now === 'string' ? guessed(set) : now.dimension;
  const texts = { wasText: textOf(one.was), toText: textOf(one.to) };
  const was = dimension === null ? null : amountOf(one.was, dimension, { ...context, path: `${context.path}.was` });
  const to = dimension === null ? null : amountOf(one.to, dimension, { ...context, path: `${context.path}.to` });
  return { kind: 'set', set, dimension, was, to, ...texts };
}

/** Everything under `dimensions` is a length, also one that is there no more. */
function guessed(set: string): Dimension | null {
  return /^benchwork\.dimensions\./.test(set) ? 'length' : null;
}

function amountOf(written: Written, dimension: Dimension, context: Context): number | null {
  const text = textOf(written);
  const parsed = parseQuantity(text, dimension, { bare: context.bare });
  if (!parsed.ok) {
    context.faults.push(...parsed.faults.map((fault) => ({ ...fault, at: context.path })));
    return null;
  }
  const amount = evaluate({ dimension, text, tree: parsed.value, at: context.path }, {});
  // A side that names other dimensions is compared by its words: what they were worth on that day is gone.
  return amount.ok ? amount.value.value : null;
}
