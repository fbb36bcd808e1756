import type { Notebook } from '../core/notebook.ts';
import type { Plan, Prose } from '../core/plan.ts';
import { nearest } from '../core/units/nearest.ts';
import type { Problem } from '../core/units/problem.ts';
import { valueNamed, valueNames } from '../core/values.ts';
import { readBody } from './body.ts';
import { problemOn, sourceOf, spotAt, type Telling } from './source.ts';

function unknown(name: string, { names, noun }: { readonly names: readonly string[]; readonly noun: string }): Telling {
  const near = nearest(name, names);
  const some = names.slice(0, 12).map((known) => `\`${known}\``);
  const there = `known are ${some.join(', ')}${names.length > some.length ? ` and ${names.length - some.length} more` : ''}`;
  const mend = near === null ? there : `did you mean \`${near}\`? ${there}`;
  return { rule: 'unknown-name', what: `\`${name}\` is no ${noun} of this notebook`, mend };
}

/** A drawing is named in full or within its chapter. */
function problemsIn(prose: Prose, notebook: Notebook, drawings: readonly string[]): readonly Problem[] {
  const source = sourceOf(prose.file, prose.body, prose.firstLine);
  return readBody(source).directives.flatMap(({ name, label, attributes, offset }) => {
    const of = attributes.of ?? '';
    const told = (telling: Telling) => problemOn(spotAt(source, offset, prose.chapter), telling);
    if (name === 'value' && label !== '' && valueNamed(notebook, label) === null)
      return [told(unknown(label, { names: valueNames(notebook), noun: 'value' }))];
    if (name !== 'drawing' || of === '' || drawings.includes(of) || drawings.includes(`${prose.chapter}.${of}`))
      return [];
    return [told(unknown(of, { names: drawings, noun: 'drawing' }))];
  });
}

/** Names asked for in the words of a notebook that its model and its `drawings` do not have; .mdx is code and is not read. */
export function proseProblems(plan: Plan, notebook: Notebook, drawings: readonly string[]): readonly Problem[] {
  return plan.prose
    .filter(({ file }) => !file.endsWith('.mdx'))
    .flatMap((prose) => problemsIn(prose, notebook, drawings));
}
