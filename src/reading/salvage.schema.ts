import { safeParse, type z } from 'zod';
import type { Written } from '../core/units/written.schema.ts';
import { STAND_INS, standIn } from './stand-in.ts';

/** Mutable copy of what was written. */
type Draft = string | Draft[] | { [key: string]: Draft };
type Path = readonly PropertyKey[];

const ROUNDS = STAND_INS * 2;

function copied(value: Written): Draft {
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return value.map(copied);
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, copied(item)]));
}

function inside(value: Draft | undefined, key: PropertyKey): Draft | undefined {
  if (value === undefined || typeof value === 'string') return undefined;
  if (Array.isArray(value)) return value[Number(key)];
  return Object.hasOwn(value, key) ? value[String(key)] : undefined;
}

function at(root: Draft, path: Path): Draft | undefined {
  return path.reduce<Draft | undefined>((value, key) => inside(value, key), root);
}

function put(root: Draft, path: Path, value: Draft): void {
  const parent = at(root, path.slice(0, -1));
  const key = path.at(-1);
  if (parent === undefined || typeof parent === 'string' || key === undefined) return;
  if (Array.isArray(parent)) parent[Number(key)] = value;
  else parent[String(key)] = value;
}

/** Takes away the value, or all of the list it stands in: no other value may change its place. */
function takeAway(root: Draft, path: Path): void {
  const named = path.findLastIndex((key) => typeof key === 'string');
  const parent = named === -1 ? undefined : at(root, path.slice(0, named));
  if (parent === undefined || typeof parent === 'string' || Array.isArray(parent)) return;
  const key = String(path[named]);
  if (key in parent) delete parent[key];
  else takeAway(root, path.slice(0, named));
}

/** The issues of the alternative that came furthest, with whole paths. */
function flattened(issues: readonly z.core.$ZodIssue[], path: Path): readonly z.core.$ZodIssue[] {
  return issues.flatMap((issue) => {
    const own = [...path, ...issue.path];
    if (issue.code !== 'invalid_union') return [{ ...issue, path: own }];
    const deep = issue.errors.filter((errors) => errors.some((error) => error.path.length > 0));
    const [least] = [...(deep.length > 0 ? deep : issue.errors)].sort((a, b) => a.length - b.length);
    return least === undefined ? [{ ...issue, path: own }] : flattened(least, own);
  });
}

function patch(root: Draft, issue: z.core.$ZodIssue, tried: number): void {
  const text = () => standIn(String(issue.path.at(-1) ?? ''), tried);
  if (issue.code === 'unrecognized_keys') {
    for (const key of issue.keys) takeAway(root, [...issue.path, key]);
  } else if (issue.code === 'invalid_value') put(root, issue.path, String(issue.values[0] ?? ''));
  else if (issue.code === 'custom' && typeof at(root, issue.path) === 'string') put(root, issue.path, text());
  else if (issue.code !== 'invalid_type') takeAway(root, issue.path);
  else if (issue.expected === 'string') put(root, issue.path, text());
  else put(root, issue.path, issue.expected === 'array' || issue.expected === 'tuple' ? [] : {});
}

/**
 * What can be read of a file with mistakes, so that its other values can still be checked: unreadable quantities are
 * stood in for, everything else unreadable is left out, and every value left keeps its path. Null if too little is left.
 */
export function salvaged<S extends z.ZodType>(schema: S, value: Written): z.output<S> | null {
  const draft = copied(value);
  for (let round = 0; round < ROUNDS; round += 1) {
    const result = safeParse(schema, draft);
    if (result.success) return result.data;
    for (const issue of flattened(result.error.issues, [])) patch(draft, issue, round % STAND_INS);
  }
  return null;
}
