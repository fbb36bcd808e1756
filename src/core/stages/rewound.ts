import { type DatedChange, textsAfter } from '../log/chain.ts';
import type { LogRecord } from '../log/record.ts';
import type { Plan } from '../plan.ts';
import { parseQuantity } from '../units/parse.ts';
import type { Dimension } from '../units/quantity.ts';

/** A plan as it was, and what of it could not be put back. */
export type Rewound = { readonly plan: Plan; readonly lost: readonly string[] };

const CHAPTERS = ['benchwork', 'track', 'wiring', 'scenery', 'head'] as const;
type Chapter = (typeof CHAPTERS)[number];

type Bare = 'mm' | null;

/** What stands instead of a value; null where nothing can. */
type Mend = (value: unknown) => unknown;

const GONE = Symbol('gone');

function isQuantity(value: object): value is { readonly dimension: Dimension; readonly at: string } {
  return 'tree' in value && 'dimension' in value && 'text' in value && 'at' in value;
}

/** The value with another text, if that reads as what it was. */
function rewritten(text: string, bare: Bare): Mend {
  return (value) => {
    if (typeof value === 'string') return text;
    if (typeof value === 'number') return Number.isFinite(Number(text)) ? Number(text) : null;
    if (typeof value !== 'object' || value === null || !isQuantity(value)) return null;
    const parsed = parseQuantity(text, value.dimension, { bare });
    return parsed.ok ? { ...value, text, tree: parsed.value } : null;
  };
}

/** The longest name that begins a path and is a key here: ids may hold dots. */
function keyIn(value: object, path: readonly string[]): readonly [key: string, rest: readonly string[]] | null {
  for (let end = path.length; end > 0; end--) {
    const name = path.slice(0, end).join('.');
    if (Object.hasOwn(value, name)) return [name, path.slice(end)];
    if (!Array.isArray(value)) continue;
    const found = value.findIndex((item: unknown) => typeof item === 'object' && item !== null && idOf(item) === name);
    if (found >= 0) return [String(found), path.slice(end)];
  }
  return null;
}

function idOf(item: object): unknown {
  return 'id' in item ? item.id : undefined;
}

/** A copy with the value at a path mended; null when there is none or it can't be. */
function mended(value: unknown, path: readonly string[], mend: Mend): unknown {
  if (path.length === 0) return mend(value);
  if (typeof value !== 'object' || value === null) return null;
  const step = keyIn(value, path);
  if (step === null) return null;
  const [key, rest] = step;
  const inner = mended(Object.entries(value).find(([name]) => name === key)?.[1], rest, mend);
  if (inner === null) return null;
  if (Array.isArray(value))
    return value.flatMap((item: unknown, i) => (String(i) !== key ? [item] : inner === GONE ? [] : [inner]));
  const others = Object.entries(value).filter(([name]) => name !== key || inner !== GONE);
  return Object.fromEntries(others.map(([name, item]) => [name, name === key ? inner : item]));
}

function chapterOf(path: string): readonly [Chapter | null, readonly string[]] {
  const [first = '', ...rest] = path.split('.');
  const name = first === 'notebook' ? 'head' : first;
  return [CHAPTERS.find((one) => one === name) ?? null, rest];
}

function withMended(plan: Plan, path: string, mend: Mend): Plan | null {
  const [chapter, rest] = chapterOf(path);
  if (chapter === null) return null;
  const value = mended(plan[chapter], rest, mend);
  // Only leaves were replaced by leaves of their kind, or an item of a list or map taken out: the shape holds.
  return value === null ? null : ({ ...plan, [chapter]: value } as Plan);
}

function undone(plan: Plan, change: Pick<DatedChange, 'kind' | 'set'>): Plan | null {
  return change.kind === 'add' ? withMended(plan, change.set, () => GONE) : null;
}

/**
 * The plan as it was once the first `count` entries were written: later changes undone, later entries left out. A block that a
 * later entry took away can't be put back, and a value that no longer exists can't be set: both are told.
 */
export function rewound(plan: Plan, records: readonly LogRecord[], count: number): Rewound {
  const entries = new Set(records.slice(0, count).map(({ id }) => id));
  const lost: string[] = [];
  let past: Plan = { ...plan, log: plan.log.filter(({ id }) => entries.has(id)) };
  const keep = (next: Plan | null, path: string) => {
    if (next === null) lost.push(path);
    else past = next;
  };
  for (const [path, text] of Object.entries(textsAfter(records, count)))
    keep(withMended(past, path, rewritten(text, plan.head.bare ?? null)), path);
  const blocks = records.slice(count).flatMap((record) => record.changes.filter(({ kind }) => kind !== 'set'));
  for (const change of blocks.toReversed()) keep(undone(past, change), change.set);
  return { plan: past, lost };
}
