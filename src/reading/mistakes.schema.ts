import { safeParse, type z } from 'zod';
import { nearest } from '../core/units/nearest.ts';
import type { Fault, Problem, Spot } from '../core/units/problem.ts';
import type { Written } from '../core/units/written.schema.ts';
import {
  alternatives,
  childSchema,
  childValue,
  choicesOf,
  type Form,
  formOf,
  formWritten,
  isList,
  keysOf,
  meant,
  requiredKeysOf,
} from './shape.schema.ts';
import { problemOn, type Telling } from './source.ts';
import { joined, type Tree } from './tree.ts';
import type { Yaml } from './yaml.ts';

type Schema = z.core.$ZodType;
type Search = { readonly tree: Yaml; readonly file: string; readonly root: string };
type Place = { readonly schema: Schema; readonly value: Written; readonly path: string };

const HOW: Readonly<Record<Form, string>> = {
  map: 'write its keys below it, each as `key: value`',
  list: 'write each item on a line of its own after a hyphen, or all of them in [ ]',
  text: 'write one value after the colon',
};
const CALLED: Readonly<Record<Form, string>> = { map: 'a map of keys', list: 'a list', text: 'one value' };

function nameOf(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1);
}

/** What a place is called in a sentence: its key, or the list it stands in. */
function called(path: string): string {
  const name = nameOf(path);
  if (!/^\d+$/.test(name)) return `\`${name}\``;
  return `item ${Number(name) + 1} of \`${nameOf(path.slice(0, path.lastIndexOf('.')))}\``;
}

function spotOf(search: Search, path: string): Spot {
  return search.tree.values.get(path) ?? { file: search.file, line: 1, column: 1, path };
}

function keySpotOf(search: Search, path: string): Spot {
  if (path === search.root) return { file: search.file, line: 1, column: 1, path };
  return search.tree.keys.get(path) ?? spotOf(search, path);
}

function listed(words: readonly string[]): string {
  return words.map((word) => `\`${word}\``).join(', ');
}

function unknownKey(search: Search, place: Place, key: string): Problem {
  const known = keysOf(place.schema);
  const near = nearest(key, known);
  const where = place.path === search.root ? 'this file' : called(place.path);
  const hint = near === null ? '' : `did you mean \`${near}\`? `;
  return problemOn(keySpotOf(search, joined(place.path, key)), {
    rule: 'unknown-key',
    what: `\`${key}\` is not a key of ${where}`,
    mend: `${hint}keys here are ${listed(known)}`,
  });
}

function missingKey(search: Search, place: Place, key: string): Problem {
  const own = childSchema(place.schema, key);
  const choices = own === undefined ? [] : choicesOf(own);
  const where = place.path === search.root ? 'this file' : called(place.path);
  const mend =
    choices.length === 0 ? `add \`${key}: \` and its value` : `add \`${key}: \` and one of ${listed(choices)}`;
  return problemOn(keySpotOf(search, place.path), {
    rule: 'missing-key',
    what: `\`${key}\` is missing from ${where}`,
    mend,
  });
}

function wrongForm(search: Search, place: Place): Problem {
  const forms = [...new Set(alternatives(place.schema).map(formOf))];
  const glued = typeof place.value === 'string' ? /^([A-Za-z][\w.-]*):(\S.*)$/.exec(place.value) : null;
  if (glued !== null && forms.includes('map')) {
    return problemOn(spotOf(search, place.path), {
      rule: 'colon-space',
      what: `\`${glued[1]}:\` has no space after its colon`,
      mend: `write \`${glued[1]}: ${glued[2]}\``,
    });
  }
  const hyphen = typeof place.value === 'string' ? /^-([^\s-]\S*)/.exec(place.value) : null;
  if (hyphen !== null && forms.includes('list')) {
    return problemOn(spotOf(search, place.path), {
      rule: 'hyphen-space',
      what: `\`${hyphen[0]}\` has no space after its hyphen`,
      mend: `write \`- ${hyphen[1]}\``,
    });
  }
  return problemOn(spotOf(search, place.path), {
    rule: 'wrong-type',
    what: `${called(place.path)} takes ${forms.map((form) => CALLED[form]).join(' or ')}, and this is ${CALLED[formWritten(place.value)]}`,
    mend: forms.map((form) => HOW[form]).join('; or '),
  });
}

function faultOf(issue: z.core.$ZodIssue): Fault | null {
  if (issue.code !== 'custom') return null;
  const fault: unknown = issue.params?.fault;
  return isFault(fault) ? fault : null;
}

function isFault(value: unknown): value is Fault {
  return typeof value === 'object' && value !== null && 'rule' in value && 'what' in value && 'mend' in value;
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

/** What is wrong with a text, by the first alternative that is no fixed word; fixed words are listed. */
function badText(search: Search, place: Place, text: string): Problem | null {
  const open = alternatives(place.schema).filter((schema) => formOf(schema) === 'text');
  if (open.some((schema) => safeParse(schema, text).success) && safeParse(place.schema, text).success) return null;
  const choices = open.flatMap(choicesOf);
  const free = open.find((schema) => choicesOf(schema).length === 0);
  const spot = spotOf(search, place.path);
  const issue = free === undefined ? undefined : safeParse(free, text).error?.issues[0];
  const fault = issue === undefined ? null : faultOf(issue);
  const or = choices.length === 0 ? '' : `; or write ${listed(choices)}`;
  if (fault !== null) {
    return problemOn(
      { ...spot, column: spot.column + (fault.offset ?? 0) },
      { rule: fault.rule, what: fault.what, mend: fault.mend + or },
    );
  }
  return problemOn(
    spot,
    issue === undefined ? wrongChoice(place, text, choices) : wrongWords(place, text, issue.message + or),
  );
}

function wrongChoice(place: Place, text: string, choices: readonly string[]): Telling {
  const near = nearest(text, choices);
  const hint = near === null ? '' : `; did you mean \`${near}\`?`;
  return {
    rule: 'choice',
    what: `${called(place.path)} cannot be \`${shortened(text)}\``,
    mend: `write one of ${listed(choices)}${hint}`,
  };
}

function wrongWords(place: Place, text: string, takes: string): Telling {
  return { rule: 'words', what: `${called(place.path)} cannot be \`${shortened(text)}\``, mend: `write ${takes}` };
}

function inMap(search: Search, place: Place, value: Readonly<Record<string, Written>>): readonly Problem[] {
  const written = Object.keys(value);
  const known = keysOf(place.schema);
  const isRecord = known.length === 0;
  const spoilt = (key: string) => search.tree.spoilt.has(joined(place.path, key));
  const cut = search.tree.cut && place.path === search.root;
  const unknown = isRecord ? [] : written.filter((key) => !known.includes(key) && !spoilt(key));
  const meantBy = new Set(unknown.map((key) => nearest(key, known)));
  const absent = (key: string) => !written.includes(key) && !spoilt(key) && !meantBy.has(key);
  const missing = cut ? [] : requiredKeysOf(place.schema).filter(absent);
  return [
    ...unknown.map((key) => unknownKey(search, place, key)),
    ...missing.map((key) => missingKey(search, place, key)),
    ...written.flatMap((key) => inChild(search, place, key)),
  ];
}

function inChild(search: Search, place: Place, key: string | number): readonly Problem[] {
  const path = joined(place.path, key);
  const schema = childSchema(place.schema, key);
  const value = childValue(place.value, key);
  if (schema === undefined || value === undefined || search.tree.spoilt.has(path)) return [];
  return mistakesIn(search, { schema, value, path });
}

/** What a list or map gets wrong as a whole: too few items, names that are no names. */
function asWhole(search: Search, place: Place): readonly Problem[] {
  const result = safeParse(place.schema, place.value);
  if (result.success) return [];
  return result.error.issues.flatMap((issue): Problem[] => {
    if (issue.code === 'invalid_key') {
      const key = String(issue.path[0] ?? '');
      const takes = issue.issues[0]?.message ?? 'another name';
      const telling = { rule: 'name', what: `\`${key}\` cannot be a name here`, mend: `write ${takes}` };
      return issue.path.length === 1 ? [problemOn(keySpotOf(search, joined(place.path, key)), telling)] : [];
    }
    if (issue.path.length > 0 || issue.code === 'unrecognized_keys' || issue.code === 'invalid_union') return [];
    const takes = issue.code === 'too_small' || issue.code === 'too_big' ? countWanted(issue) : issue.message;
    const telling = { rule: 'list', what: `${called(place.path)} does not hold what it takes`, mend: `write ${takes}` };
    return [problemOn(spotOf(search, place.path), telling)];
  });
}

function countWanted(issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig): string {
  if (!/^Too (?:small|big)|^Invalid/.test(issue.message)) return issue.message;
  return issue.code === 'too_small' ? `${issue.minimum} values` : `${issue.maximum} values`;
}

function mistakesIn(search: Search, whole: Place): readonly Problem[] {
  const place = { ...whole, schema: meant(whole.schema, whole.value) };
  if (formOf(place.schema) !== formWritten(place.value)) return [wrongForm(search, whole)];
  const { value } = place;
  if (typeof value === 'string') {
    const bad = badText(search, whole, value);
    return bad === null ? [] : [bad];
  }
  const inside = isList(value) ? value.flatMap((_, i) => inChild(search, place, i)) : inMap(search, place, value);
  return [...inside, ...asWhole(search, place)];
}

/** All mistakes of a file's keys and values against its schema, each at its place. */
export function mistakes(search: Search, schema: Schema): readonly Problem[] {
  return mistakesIn(search, { schema, value: search.tree.value, path: search.root });
}

export type { Search, Tree };
