import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type Scalar } from 'yaml';
import type { Problem, Spot } from '../core/units/problem.ts';
import type { Written } from '../core/units/written.schema.ts';
import { DEEPEST_VALUE } from './content-file.ts';
import { problemOn, type Source, spotAt, type Telling } from './source.ts';
import { TOO_DEEP } from './traps.ts';

/** Front matter as texts, lists and maps, with the place of every value and key by its dotted path. */
export type Tree = {
  readonly value: Written;
  readonly values: ReadonlyMap<string, Spot>;
  readonly keys: ReadonlyMap<string, Spot>;
  /** paths that already have a problem */
  readonly spoilt: ReadonlySet<string>;
  readonly problems: readonly Problem[];
};

type Walk = {
  readonly source: Source;
  readonly values: Map<string, Spot>;
  readonly keys: Map<string, Spot>;
  readonly spoilt: Set<string>;
  readonly problems: Problem[];
};

/** A value, or nothing where one could not be read. */
type Read = Written | undefined;

export function joined(prefix: string, key: string | number): string {
  return prefix === '' ? String(key) : `${prefix}.${key}`;
}

function tell(walk: Walk, at: { readonly offset: number; readonly path: string }, telling: Telling): undefined {
  walk.spoilt.add(at.path);
  walk.problems.push(problemOn(spotAt(walk.source, at.offset, at.path), telling));
  return undefined;
}

function offsetOf(node: Node): number {
  const start = node.range?.[0] ?? 0;
  const quoted = isScalar(node) && (node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE');
  return quoted ? start + 1 : start;
}

/** Why a node uses a part of YAML that notebooks do without, or null. */
function refusal(node: Node): Telling | null {
  if (isAlias(node)) {
    return {
      rule: 'yaml-alias',
      what: `*${node.source} stands for a value written elsewhere`,
      mend: 'write the value itself; a text that begins with * goes in quotes',
    };
  }
  const anchor = 'anchor' in node ? node.anchor : undefined;
  if (anchor !== undefined) {
    return {
      rule: 'yaml-anchor',
      what: `&${anchor} names a value for use elsewhere`,
      mend: 'take the name away and write the value wherever it is needed; a text that begins with & goes in quotes',
    };
  }
  if (node.tag !== undefined) {
    return {
      rule: 'yaml-tag',
      what: 'a tag with ! gives this value a type',
      mend: 'take the tag away; a text that begins with ! goes in quotes',
    };
  }
  return null;
}

function readScalar(node: Scalar, path: string, walk: Walk): Read {
  const text = typeof node.value === 'string' ? node.value : '';
  if (text !== '' || node.type !== 'PLAIN') return text;
  return tell(
    walk,
    { offset: offsetOf(node), path },
    {
      rule: 'no-value',
      what: `\`${path.slice(path.lastIndexOf('.') + 1)}\` has no value`,
      mend: 'write a value after the colon, or take the line away',
    },
  );
}

function readList(items: readonly unknown[], path: string, walk: Walk): Read {
  const list: Written[] = [];
  items.forEach((item, i) => {
    const value = readNode(item, joined(path, i), walk);
    // a hole would move the paths of all that follow
    list.push(value ?? '');
  });
  return list;
}

/** The word of a key, or nothing where the key is no word. */
function keyOf(pair: Pair, path: string, walk: Walk): string | undefined {
  const key = pair.key;
  if (isScalar(key) && typeof key.value === 'string' && key.value !== '' && refusal(key) === null) return key.value;
  const offset = isNode(key) ? offsetOf(key) : 0;
  const what = 'a key must be a plain word or words';
  return tell(walk, { offset, path }, { rule: 'key', what, mend: 'write `key: value`' });
}

function isNode(value: unknown): value is Node {
  return isScalar(value) || isMap(value) || isSeq(value) || isAlias(value);
}

const FORBIDDEN = new Set(Object.getOwnPropertyNames(Object.prototype));

/** Why a key cannot be used, or null. */
function keyRefusal(key: string, first: Spot | undefined): Telling | null {
  if (key === '<<')
    return { rule: 'yaml-merge', what: '<< would merge another map into this one', mend: 'write the keys themselves' };
  if (FORBIDDEN.has(key))
    return { rule: 'key', what: `\`${key}\` cannot be used as a name`, mend: 'choose another name' };
  if (first === undefined) return null;
  return {
    rule: 'duplicate-key',
    what: `\`${key}\` is written twice in one map, first on line ${first.line}`,
    mend: 'keep one of the two lines',
  };
}

/** In braces, a key without a colon is mostly what is left of a text that a comma cut in two. */
function loneKey(key: string, before: string | undefined): Telling {
  const glued = /^([A-Za-z][\w-]*):(\S.*)$/.exec(key);
  if (glued !== null) {
    return {
      rule: 'colon-space',
      what: `\`${key}\` has no space after its colon`,
      mend: `write \`${glued[1]}: ${glued[2]}\``,
    };
  }
  if (before !== undefined && /\d$/.test(before) && /^\d/.test(key)) {
    return {
      rule: 'comma-in-braces',
      what: `the comma ended the value \`${before}\``,
      mend: `write a decimal point: \`${before}.${key}\``,
    };
  }
  if (before !== undefined) {
    return {
      rule: 'comma-in-braces',
      what: `the comma in braces ended the text \`${before}\`, so \`${key}\` became a key`,
      mend: `put the whole text in quotes: "${before}, ${key}"`,
    };
  }
  return { rule: 'no-value', what: `\`${key}\` has no value`, mend: `write \`${key}: \` and the value` };
}

function plainText(value: unknown): string | undefined {
  return isScalar(value) && value.type === 'PLAIN' && typeof value.value === 'string' ? value.value : undefined;
}

function readMap(items: readonly Pair[], path: string, walk: Walk): Read {
  const map: Record<string, Written> = {};
  let before: string | undefined;
  for (const pair of items) {
    const key = keyOf(pair, path, walk);
    if (key === undefined) continue;
    const own = joined(path, key);
    const offset = isNode(pair.key) ? offsetOf(pair.key) : 0;
    if (pair.value === null) {
      tell(walk, { offset, path: own }, loneKey(key, before));
      before = before === undefined ? undefined : `${before}, ${key}`;
      continue;
    }
    before = plainText(pair.value);
    const refused = keyRefusal(key, walk.keys.get(own));
    if (refused !== null) {
      tell(walk, { offset, path: own }, refused);
      continue;
    }
    walk.keys.set(own, spotAt(walk.source, offset, own));
    const value = readNode(pair.value, own, walk);
    if (value !== undefined) map[key] = value;
  }
  return map;
}

function readNode(node: unknown, path: string, walk: Walk): Read {
  if (!isNode(node)) return undefined;
  const at = { offset: offsetOf(node), path };
  const refused = refusal(node);
  if (refused !== null) return tell(walk, at, refused);
  walk.values.set(path, spotAt(walk.source, at.offset, path));
  if (isScalar(node)) return readScalar(node, path, walk);
  if (path.split('.').length > DEEPEST_VALUE) {
    return tell(walk, at, TOO_DEEP);
  }
  if (isSeq(node)) return readList(node.items, path, walk);
  return isMap(node) ? readMap(node.items, path, walk) : undefined;
}

/** Turns YAML nodes into plain texts, lists and maps; `prefix` is the chapter, and starts every path. */
export function treeOf(root: unknown, source: Source, prefix: string): Tree {
  const walk: Walk = { source, values: new Map(), keys: new Map(), spoilt: new Set(), problems: [] };
  const value = readNode(root, prefix, walk);
  return { ...walk, value: value ?? {} };
}
