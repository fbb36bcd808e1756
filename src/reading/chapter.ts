import type { Prose } from '../core/plan.ts';
import type { Problem, Spot } from '../core/units/problem.ts';
import { type Body, readBody } from './body.ts';
import type { ContentFile } from './content-file.ts';
import { frontMatter } from './front-matter.ts';
import { sourceOf, spotAt, textOf } from './source.ts';
import { readYaml, type Yaml } from './yaml.ts';

/** A Markdown file parted into keys and words, before any schema. */
export type Page = {
  readonly file: string;
  readonly root: string;
  readonly yaml: Yaml;
  readonly prose: Prose;
  readonly body: Body;
  readonly problems: readonly Problem[];
  /** false when the file could not even be parted */
  readonly parted: boolean;
};

const NO_BODY: Body = { directives: [], headings: [], pictures: [], problems: [] };

/** Reads one Markdown file; `root` is its chapter, `notebook`, `track`, `log.2026-03-14-words`. */
export function readPage(file: ContentFile, root: string): Page {
  const { text, problems: unread } = textOf(file);
  const front = unread.length > 0 ? null : frontMatter(file.path, text);
  const parted = front !== null && front.problems.length === 0;
  const bodySource = sourceOf(file.path, front?.body ?? '', front?.bodyLine ?? 1);
  // an .mdx body is code, which its own compiler reads
  const body = parted && !file.path.endsWith('.mdx') ? readBody(bodySource) : NO_BODY;
  return {
    file: file.path,
    root,
    yaml: readYaml(sourceOf(file.path, front?.yaml ?? '', 2), root),
    prose: { chapter: root, file: file.path, body: bodySource.text, firstLine: bodySource.firstLine },
    body,
    problems: [...unread, ...(front?.problems ?? []), ...body.problems],
    parted,
  };
}

/** The place of an offset into a page's words. */
export function spotInBody(page: Page, offset: number): Spot {
  return spotAt(sourceOf(page.file, page.prose.body, page.prose.firstLine), offset, page.root);
}
