import type { Notebook } from '../core/notebook.ts';
import type { Plan, Prose } from '../core/plan.ts';
import { nearest } from '../core/units/nearest.ts';
import type { Problem } from '../core/units/problem.ts';
import { valueNamed, valueNames } from '../core/values.ts';
import { readBody } from './body.ts';
import { stepOfHeading } from './prose.ts';
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

/** A heading that is one word, or ends in one in backticks, and is nearly a step's id: its prose would stand beside no step. */
function headingProblems(prose: Prose, steps: readonly string[]): readonly Problem[] {
  const source = sourceOf(prose.file, prose.body, prose.firstLine);
  const { headings } = readBody(source);
  const known = new Set(steps);
  const headed = new Set(headings.flatMap(({ text }) => stepOfHeading(text, known) ?? []));
  return headings.flatMap(({ text, offset }) => {
    if (stepOfHeading(text, known) !== null || !/^[a-z0-9]+(?:-[a-z0-9]+)+$/.test(text.trim())) return [];
    const near = nearest(
      text.trim(),
      steps.filter((id) => !headed.has(id)),
    );
    if (near === null) return [];
    const telling = {
      rule: 'step-heading',
      what: `\`${text.trim()}\` heads the words of a step, but no step of this chapter is called so`,
      mend: `did you mean \`${near}\`? A heading that is no step's is better written as words`,
    };
    return [problemOn(spotAt(source, offset, prose.chapter), telling)];
  });
}

/** Names asked for in the words of a notebook that its model and its `drawings` do not have; .mdx is code and is not read. */
export function proseProblems(plan: Plan, notebook: Notebook, drawings: readonly string[]): readonly Problem[] {
  return plan.prose
    .filter(({ file }) => !file.endsWith('.mdx'))
    .flatMap((prose) => [
      ...problemsIn(prose, notebook, drawings),
      ...headingProblems(prose, stepIds(notebook, prose.chapter)),
    ]);
}

/** Ids of a chapter's steps as its headings name them, without the chapter. */
function stepIds({ steps }: Notebook, chapter: string): readonly string[] {
  return steps.filter((step) => step.chapter === chapter).map(({ id }) => id.slice(chapter.length + 1));
}
