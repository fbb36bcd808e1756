import { existsSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Where notebooks are kept: NOTEBOOK_CONTENT, or `content` in the folder the command runs in. */
export function contentFolder(): string {
  return resolve(process.env.NOTEBOOK_CONTENT ?? 'content');
}

const LIST = 'virtual:mdx-chapters';
const HERE = fileURLToPath(import.meta.url);

function mdxFiles(content: string): readonly string[] {
  const notebooks = join(content, 'notebooks');
  if (!existsSync(notebooks)) return [];
  return readdirSync(notebooks, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap((entry) => readdirSync(join(notebooks, entry.name)).map((file) => join(notebooks, entry.name, file)))
    .filter((file) => file.endsWith('.mdx'))
    .sort();
}

/** `slug/chapter` to the module of each .mdx chapter. */
function listing(files: readonly string[]): string {
  const rows = files.map((file) => {
    const [slug, name] = file.split(/[\\/]/).slice(-2);
    return `${JSON.stringify(`${slug}/${name?.replace(/\.mdx$/, '')}`)}: () => import(${JSON.stringify(file)})`;
  });
  return `export const chapters = {${rows.join(',\n')}};`;
}

/** The words below the front matter, on the lines they stand on: front matter has one reader, and it is not this one. */
export function withoutFrontMatter(source: string): string {
  const front = /^\uFEFF?---[ \t]*\r?\n[\s\S]*?\n---[ \t]*(?=\r?\n|$)/.exec(source);
  if (front === null) return source;
  return front[0].replace(/[^\r\n]/g, '') + source.slice(front[0].length);
}

/** Vite plugin: lists the .mdx chapters, hides their front matter, and lets them import what the site imports. */
export function chapterFiles() {
  return {
    name: 'fettlebook-chapter-files',
    enforce: 'pre' as const,
    async resolveId(this: Resolver, source: string, importer: string | undefined) {
      if (source === LIST) return `\0${LIST}`;
      if (importer?.endsWith('.mdx') !== true || /^[./\0]/.test(source)) return null;
      return this.resolve(source, HERE, { skipSelf: true });
    },
    load(id: string): string | null {
      if (id === `\0${LIST}`) return listing(mdxFiles(contentFolder()));
      if (!id.endsWith('.mdx') || !id.startsWith(realpathSync(contentFolder()))) return null;
      return withoutFrontMatter(readFileSync(id, 'utf8'));
    },
  };
}

type Resolver = { resolve(source: string, importer: string, options: { skipSelf: boolean }): Promise<unknown> };
