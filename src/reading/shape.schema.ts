import { safeParse, type z } from 'zod';
import type { Written } from '../core/units/written.schema.ts';

type Schema = z.core.$ZodType;

/** A schema's definition, told apart by its type. */
function definition(schema: Schema): z.core.$ZodTypes['_zod']['def'] {
  // every schema zod makes is one of $ZodTypes; its own base type does not say so
  return (schema as z.core.$ZodTypes)._zod.def;
}

/** The schema that faces the author: without what is wrapped round it or done after it. */
export function facing(schema: Schema): Schema {
  const def = definition(schema);
  switch (def.type) {
    case 'optional':
    case 'nullable':
    case 'default':
    case 'readonly':
      return facing(def.innerType);
    case 'pipe':
      return facing(def.in);
    case 'lazy':
      return facing(def.getter());
    default:
      return schema;
  }
}

/** The alternatives of a schema that is one of several; else itself. */
export function alternatives(schema: Schema): readonly Schema[] {
  const def = definition(facing(schema));
  return def.type === 'union' ? def.options.flatMap((option) => alternatives(option)) : [schema];
}

/** Keys a map may have, in the schema's order; nothing for what is no map of known keys. */
export function keysOf(schema: Schema): readonly string[] {
  const def = definition(facing(schema));
  return def.type === 'object' ? Object.keys(def.shape) : [];
}

/** Keys a map must have. */
export function requiredKeysOf(schema: Schema): readonly string[] {
  const def = definition(facing(schema));
  if (def.type !== 'object') return [];
  return Object.entries(def.shape).flatMap(([key, value]) => (safeParse(value, undefined).success ? [] : [key]));
}

export type Form = 'map' | 'list' | 'text';

/** What the author has to write for a schema. */
export function formOf(schema: Schema): Form {
  const def = definition(facing(schema));
  if (def.type === 'object' || def.type === 'record') return 'map';
  return def.type === 'array' || def.type === 'tuple' ? 'list' : 'text';
}

/** Fixed words a schema takes, or nothing. */
export function choicesOf(schema: Schema): readonly string[] {
  const def = definition(facing(schema));
  if (def.type === 'enum') return Object.values(def.entries).map(String);
  return def.type === 'literal' ? def.values.map(String) : [];
}

export function formWritten(value: Written): Form {
  if (typeof value === 'string') return 'text';
  return isList(value) ? 'list' : 'map';
}

export function isList(value: Written): value is readonly Written[] {
  return Array.isArray(value);
}

function child(schema: Schema, key: string | number): Schema | undefined {
  const def = definition(facing(schema));
  if (def.type === 'object') return def.shape[String(key)];
  if (def.type === 'record') return def.valueType;
  if (def.type === 'array') return def.element;
  return def.type === 'tuple' ? def.items[Number(key)] : undefined;
}

/** How well an alternative suits what was written: its form first, then the share of keys it knows. */
function suits(schema: Schema, value: Written): number {
  if (formOf(schema) !== formWritten(value)) return -1;
  if (typeof value === 'string') return choicesOf(schema).includes(value) ? 2 : choicesOf(schema).length > 0 ? 0 : 1;
  const known = keysOf(schema);
  if (isList(value) || known.length === 0) return 0;
  const written = Object.keys(value);
  const leading = requiredKeysOf(schema)[0];
  const lead = leading !== undefined && written.includes(leading) ? 1 : 0;
  const fixed = known.filter((key) => typeof value[key] === 'string' && isChosen(schema, key, String(value[key])));
  return lead + fixed.length * 100 + written.filter((key) => known.includes(key)).length * 2;
}

/** Whether a key that takes one fixed word has it: the `kind` of goods. */
function isChosen(schema: Schema, key: string, text: string): boolean {
  const own = child(schema, key);
  if (own === undefined) return false;
  const choices = choicesOf(own);
  return choices.length === 1 && choices[0] === text;
}

/** The alternative the author most likely meant. */
export function meant(schema: Schema, value: Written): Schema {
  const [first = schema, ...others] = alternatives(schema);
  return others.reduce((best, other) => (suits(other, value) > suits(best, value) ? other : best), first);
}

export function childValue(value: Written | undefined, key: string | number): Written | undefined {
  if (value === undefined || typeof value === 'string') return undefined;
  if (isList(value)) return value[Number(key)];
  return Object.hasOwn(value, key) ? value[key] : undefined;
}

/** The schema a value inside is held to. */
export function childSchema(schema: Schema, key: string | number): Schema | undefined {
  return child(schema, key);
}
