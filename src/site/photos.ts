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

/** Name of a re-encoded photo: `wall.jpg.480.jpg`. */
function published(file: string, width: number): string {
  return `${file}.${width}.jpg`;
}

/** The photo anew at that width: upright, and without metadata; of a damaged file whatever can be seen. */
async function encoded(bytes: Buffer, width: number): Promise<Buffer> {
  const image = sharp(bytes, { failOn: 'none' }).autoOrient().resize({ width, withoutEnlargement: true });
  return image.flatten({ background: '#ffffff' }).jpeg({ quality: 82 }).toBuffer();
}

type Size = { readonly width: number; readonly height: number };

/** Upright size of a picture that can be decoded, else null: what only bears a photo's name is none. */
async function sizeOf(bytes: Buffer): Promise<Size | null> {
  try {
    const { autoOrient, format } = await sharp(bytes, { failOn: 'none' }).metadata();
    if (!FORMATS.includes(format)) return null;
    await encoded(bytes, 16);
    return autoOrient;
  } catch {
    return null;
  }
}

function widthsFor({ width }: Size): readonly number[] {
  const smaller = WIDTHS.filter((one) => one < width);
  return smaller.length < WIDTHS.length ? [...smaller, width] : smaller;
}

/**
 * A photo as its pages show it; `private` when its makers keep it, `unreadable` when it is no picture.
 * Errors: a name that leads elsewhere, or that no plain file has.
 */
export async function photoFor(book: Book, file: string): Promise<Photo | 'private' | 'unreadable'> {
  if (privateFiles(book).has(file)) return 'private';
  const size = await sizeOf(await bytesOf(book, file));
  if (size === null) return 'unreadable';
  const sizes = widthsFor(size).map((width) => {
    const name = published(file, width);
    return { width, name, address: fileAt(book.notebook.slug, 'photos', name) };
  });
  const { address, width } = sizes.at(-1) ?? { address: '', width: size.width };
  return { file, address, sizes, width, height: Math.max(1, Math.round((size.height * width) / size.width)) };
}

/** The bytes of a published photo. */
export async function reencoded(book: Book, file: string, width: number): Promise<Buffer> {
  return encoded(await bytesOf(book, file), width);
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
  return photos.filter((photo) => typeof photo !== 'string');
}
