import { lstat, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import type { Prose } from '../core/plan.ts';
import { chapterProse } from './chapter-prose.ts';
import type { Book } from './notebooks.ts';
import { fileAt } from './paths.ts';
import { photoFile } from './prose/directives.ts';
import type { Stretch } from './prose/render.ts';

/** Formats a camera or scanner writes; SVG is a program and is refused. */
const FORMATS: readonly string[] = ['jpeg', 'png', 'webp', 'heif', 'tiff', 'gif'];
const WIDTHS = [480, 960, 1600] as const;

export type Photo = {
  readonly file: string;
  readonly width: number;
  readonly height: number;
  readonly address: string;
  readonly sizes: readonly { readonly width: number; readonly name: string; readonly address: string }[];
};

/** Files marked private in any entry: they stay at home wherever else they are named. */
function privateFiles(book: Book): ReadonlySet<string> {
  return new Set(
    book.notebook.log.flatMap((entry) => entry.photos.filter((photo) => photo.private).map((photo) => photo.file)),
  );
}

async function bytesOf(book: Book, file: string): Promise<Buffer> {
  const name = photoFile(file);
  if (name === null) throw new Error(`a photo's name is letters, digits, dots and hyphens, and '${file}' is not`);
  const path = join(book.photos, name);
  if (!(await lstat(path)).isFile()) throw new Error(`photo '${file}' is not a file`);
  return readFile(path);
}

/** Name of a re-encoded photo: no trace of the original but its name. */
function published(file: string, width: number): string {
  return `${file.replace(/[^\w-]/g, '-')}.${width}.jpg`;
}

/** A photo as its pages show it, or null when it is private. Errors: not a photo, or a name that leads elsewhere. */
export async function photoFor(book: Book, file: string): Promise<Photo | null> {
  if (privateFiles(book).has(file)) return null;
  const { format, autoOrient } = await sharp(await bytesOf(book, file), { failOn: 'error' }).metadata();
  if (!FORMATS.includes(format)) throw new Error(`photo '${file}' is ${format}, which is not a photo`);
  const fitting = WIDTHS.filter((width) => width < autoOrient.width);
  const widths = fitting.length < WIDTHS.length ? [...fitting, autoOrient.width] : fitting;
  const sizes = widths.map((width) => {
    const name = published(file, width);
    return { width, name, address: fileAt(book.notebook.slug, 'photos', name) };
  });
  const largest = widths.at(-1) ?? autoOrient.width;
  const height = Math.round((autoOrient.height * largest) / autoOrient.width);
  return {
    file,
    width: largest,
    height,
    address: fileAt(book.notebook.slug, 'photos', published(file, largest)),
    sizes,
  };
}

/** The photo anew at that width: upright, and without metadata. */
export async function reencoded(book: Book, file: string, width: number): Promise<Buffer> {
  const image = sharp(await bytesOf(book, file), { failOn: 'error' });
  return image
    .autoOrient()
    .resize({ width, withoutEnlargement: true })
    .flatten({ background: '#ffffff' })
    .jpeg({ quality: 82 })
    .toBuffer();
}

/** `log/2026-03-14-rout` of `notebooks/a/log/2026-03-14-rout.md`. */
function fileName({ file }: Prose): string {
  return file
    .split('/')
    .slice(2)
    .join('/')
    .replace(/\.mdx?$/, '');
}

function filesIn(stretches: readonly Stretch[]): readonly string[] {
  return stretches.flatMap((stretch) => {
    if (stretch.kind === 'photo') return [stretch.file];
    return stretch.kind === 'step' ? filesIn(stretch.stretches) : [];
  });
}

/** Every photo a page shows: those of the log that are not private, and those that prose names. */
export async function photosPublished(book: Book): Promise<readonly Photo[]> {
  const chapters = await Promise.all(book.prose.map((one) => chapterProse(book, fileName(one))));
  const inProse = chapters.flatMap(({ code, ofStep, stretches }) => [
    ...(code?.photos ?? []),
    ...filesIn(stretches),
    ...Object.values(ofStep).flatMap(filesIn),
  ]);
  const inLog = book.notebook.log.flatMap((entry) => entry.photos.map((photo) => photo.file));
  const photos = await Promise.all([...new Set([...inProse, ...inLog])].sort().map((file) => photoFor(book, file)));
  return photos.filter((photo) => photo !== null);
}
