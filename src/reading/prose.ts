import type { Prose } from '../core/plan.ts';
import { readBody } from './body.ts';
import { sourceOf } from './source.ts';

/**
 * A step's prose stands under a heading whose text is the step's id (`## rout`), or ends with the id in backticks
 * (``## Rout the laps `rout` ``). It reaches to the next heading.
 */
export function stepOfHeading(text: string, ids: ReadonlySet<string>): string | null {
  const last = text.trim().split(/\s/).at(-1) ?? '';
  if (ids.has(text.trim())) return text.trim();
  return ids.has(last) ? last : null;
}

/** The Markdown under each step's heading, by the step's id within its chapter. */
export function proseByStep(prose: Prose, ids: ReadonlySet<string>): Readonly<Record<string, string>> {
  const { headings } = readBody(sourceOf(prose.file, prose.body, prose.firstLine));
  const found: Record<string, string> = {};
  headings.forEach((heading, i) => {
    const id = stepOfHeading(heading.text, ids);
    if (id === null) return;
    const whole = prose.body.slice(heading.offset, headings[i + 1]?.offset ?? prose.body.length);
    const start = whole.indexOf('\n');
    found[id] = start === -1 ? '' : whole.slice(start + 1).trim();
  });
  return found;
}
