import type { Notebook } from '../core/notebook.ts';
import type { Plan, Prose } from '../core/plan.ts';
import { nearest } from '../core/units/nearest.ts';
import type { Problem } from '../core/units/problem.ts';
import { listDrawings } from '../drawing/list.ts';
import { readBody } from '../reading/body.ts';
import { problemOn, sourceOf, spotAt, type Telling } from '../reading/source.ts';

const measures = ['length', 'width', 'thickness', 'count'];

/** Everything `:value[...]` may ask for: named dimensions, and the measures of parts and of their pieces. */
function valueNames(notebook: Notebook): readonly string[] {
  const ids = notebook.parts.flatMap((part) => [part.id, ...part.places.map((place) => place.id)]);
  const ofParts = [...new Set(ids)].flatMap((id) => measures.map((measure) => `${id}.${measure}`));
  return [...notebook.dimensions.map(({ name }) => name), ...ofParts];
}

function unknown(name: string, { names, noun }: { readonly names: readonly string[]; readonly noun: string }): Telling {
  const near = nearest(name, names);
  const some = names.slice(0, 12).map((known) => `\`${known}\``);
  const there = `known are ${some.join(', ')}${names.length > some.length ? ` and ${names.length - some.length} more` : ''}`;
  const mend = near === null ? there : `did you mean \`${near}\`? ${there}`;
  return { rule: 'unknown-name', what: `\`${name}\` is no ${noun} of this notebook`, mend };
}

/** A drawing is named in full or within its chapter. */
function problemsIn(prose: Prose, notebook: Notebook): readonly Problem[] {
  const source = sourceOf(prose.file, prose.body, prose.firstLine);
  const values = valueNames(notebook);
  const drawings = listDrawings(notebook).map(({ id }) => id);
  return readBody(source).directives.flatMap(({ name, label, attributes, offset }) => {
    const of = attributes.of ?? '';
    const told = (telling: Telling) => problemOn(spotAt(source, offset, prose.chapter), telling);
    if (name === 'value' && label !== '' && !values.includes(label))
      return [told(unknown(label, { names: values, noun: 'value' }))];
    if (name !== 'drawing' || of === '' || drawings.includes(of) || drawings.includes(`${prose.chapter}.${of}`))
      return [];
    return [told(unknown(of, { names: drawings, noun: 'drawing' }))];
  });
}

/** Names asked for in the words of a notebook that its computed model does not have; .mdx is code and is not read. */
export function proseProblems(plan: Plan, notebook: Notebook): readonly Problem[] {
  return plan.prose.filter(({ file }) => !file.endsWith('.mdx')).flatMap((prose) => problemsIn(prose, notebook));
}
