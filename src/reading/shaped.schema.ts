import { safeParse, type z } from 'zod';
import type { Problem } from '../core/units/problem.ts';
import type { Page } from './chapter.ts';
import { mistakes } from './mistakes.schema.ts';
import { placed } from './quantities.ts';
import { salvaged } from './salvage.schema.ts';
import { problemOn, type Source } from './source.ts';
import { joined } from './tree.ts';
import { readYaml, type Yaml } from './yaml.ts';

/** One file's keys and values held to a schema. `value` is what can be used of it, for more checks if `sound` is false. */
export type Shaped<T> = {
  readonly value: T | null;
  readonly sound: boolean;
  readonly yaml: Yaml;
  readonly problems: readonly Problem[];
};

/** What a schema refuses for a reason that none of our own words cover. */
function leftover(
  schema: z.ZodType,
  yaml: Yaml,
  where: { readonly file: string; readonly root: string },
): readonly Problem[] {
  const result = safeParse(schema, yaml.value);
  if (result.success) return [];
  return result.error.issues.map((issue) => {
    const path = issue.path.reduce<string>((whole, key) => joined(whole, String(key)), where.root);
    const spot = yaml.values.get(path) ?? { file: where.file, line: 1, column: 1, path };
    return problemOn(spot, {
      rule: 'shape',
      what: `this cannot be read: ${issue.message}`,
      mend: 'compare it with the guide',
    });
  });
}

/** Reads front matter or a YAML file by its schema; every quantity gets its place. */
export function shaped<S extends z.ZodType>(schema: S, source: Source, root: string): Shaped<z.output<S>> {
  const yaml = readYaml(source, root);
  return shapedYaml(schema, yaml, { file: source.file, root });
}

export function shapedYaml<S extends z.ZodType>(
  schema: S,
  yaml: Yaml,
  where: { readonly file: string; readonly root: string },
): Shaped<z.output<S>> {
  const own = [...yaml.problems, ...mistakes({ tree: yaml, ...where }, schema)];
  const result = own.length === 0 ? safeParse(schema, yaml.value) : null;
  if (result?.success === true) return { value: placed(result.data, where.root), sound: true, yaml, problems: [] };
  const problems = own.length === 0 ? leftover(schema, yaml, where) : own;
  const rest = salvaged(schema, yaml.value);
  return { value: rest === null ? null : placed(rest, where.root), sound: false, yaml, problems };
}

/** A page's keys held to a schema; nothing if the file could not be parted, since that is told already. */
export function shapedPage<S extends z.ZodType>(schema: S, page: Page): Shaped<z.output<S>> {
  if (!page.parted) return { value: null, sound: false, yaml: page.yaml, problems: [] };
  return shapedYaml(schema, page.yaml, page);
}
