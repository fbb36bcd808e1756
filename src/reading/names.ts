import { isCalendarDate } from '../core/units/date.schema.ts';
import { nearest } from '../core/units/nearest.ts';
import type { Problem } from '../core/units/problem.ts';
import { fileProblem } from './source.ts';

export type Chapter = 'benchwork' | 'track' | 'wiring' | 'scenery';
export const CHAPTERS: readonly Chapter[] = ['benchwork', 'track', 'wiring', 'scenery'];

/** Pages that stand beside the notebooks on the site. */
const RESERVED = new Set([
  'about',
  'assets',
  'fonts',
  'limits',
  'log',
  'photos',
  'public',
  'search',
  'site',
  'stock',
  'trains',
  '404',
  'index',
]);

/** What a file of the content folder is, by its path alone. */
export type Role =
  | { readonly kind: 'stock' | 'trains' }
  | { readonly kind: 'head' | 'photo'; readonly slug: string }
  | { readonly kind: 'chapter'; readonly slug: string; readonly chapter: Chapter; readonly code: 'md' | 'mdx' }
  | { readonly kind: 'entry'; readonly slug: string; readonly id: string }
  | { readonly kind: 'stray'; readonly slug: string | null; readonly problem: Problem };

const PHOTO = /\.(?:jpe?g|png|webp|avif|tiff?)$/i;

function stray(path: string, slug: string | null, telling: readonly [string, string, string]): Role {
  const [rule, what, mend] = telling;
  return { kind: 'stray', slug, problem: fileProblem(path, { rule, what, mend }) };
}

function goodsRole(path: string, folder: 'stock' | 'trains', rest: readonly string[]): Role {
  const [name = ''] = rest;
  if (rest.length === 1 && /^[\w.-]+\.yaml$/.test(name)) return { kind: folder };
  return stray(path, null, [
    'file-name',
    `this is no file of ${folder}`,
    `files in ${folder}/ end in .yaml and stand in no folder of their own`,
  ]);
}

function entryRole(path: string, slug: string, name: string): Role {
  const found = /^(\d{4}-\d{2}-\d{2})((?:-[a-z0-9]+)+)\.md$/.exec(name);
  const [, day = ''] = found ?? [];
  if (found !== null && !isCalendarDate(day)) {
    return stray(path, slug, [
      'file-name',
      `\`${day}\` is no day of the calendar`,
      'name the entry by the day it happened, and write the same under `date`',
    ]);
  }
  if (found === null) {
    return stray(path, slug, [
      'file-name',
      `\`${name}\` is no name of a log entry`,
      'name it by its day and some words: 2026-03-14-first-words.md',
    ]);
  }
  return { kind: 'entry', slug, id: name.slice(0, -3) };
}

function photoRole(path: string, slug: string, name: string): Role {
  if (/\.svg$/i.test(name)) {
    return stray(path, slug, [
      'photo-kind',
      'an SVG can carry programs and is not taken as a photo',
      'save it as PNG or JPEG',
    ]);
  }
  if (PHOTO.test(name) && /^[\w. -]+$/.test(name)) return { kind: 'photo', slug };
  return stray(path, slug, [
    'photo-kind',
    `\`${name}\` is no photo this notebook can show`,
    'use JPEG, PNG, WebP, AVIF or TIFF, named with plain letters, digits, dots and hyphens',
  ]);
}

function notebookRole(path: string, slug: string, rest: readonly string[]): Role {
  const [first = '', second = ''] = rest;
  if (rest.length === 2 && first === 'log') return entryRole(path, slug, second);
  if (rest.length === 2 && first === 'photos') return photoRole(path, slug, second);
  if (rest.length === 1 && first === 'notebook.md') return { kind: 'head', slug };
  const found = /^([a-z]+)\.(md|mdx)$/.exec(first);
  const chapter = CHAPTERS.find((name) => name === found?.[1]);
  if (rest.length === 1 && chapter !== undefined) {
    return { kind: 'chapter', slug, chapter, code: found?.[2] === 'mdx' ? 'mdx' : 'md' };
  }
  const near = rest.length === 1 ? nearest(first, ['notebook.md', ...CHAPTERS.map((name) => `${name}.md`)]) : null;
  const hint = near === null ? '' : `did you mean ${near}? `;
  return stray(path, slug, [
    'file-name',
    'this file is no part of a notebook',
    `${hint}a notebook holds notebook.md, benchwork.md, track.md, wiring.md, scenery.md, log/ and photos/`,
  ]);
}

/** What is wrong with a notebook's folder name, or null. */
export function slugProblem(slug: string, file: string): Problem | null {
  if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(slug) || slug.length > 60) {
    return fileProblem(file, {
      rule: 'slug',
      what: `\`${slug}\` cannot name a notebook's folder`,
      mend: 'use small letters, digits and single hyphens, at most 60',
    });
  }
  if (!RESERVED.has(slug)) return null;
  return fileProblem(file, {
    rule: 'slug',
    what: `\`${slug}\` is the name of another page of the site`,
    mend: 'choose another name for the folder',
  });
}

export function roleOf(path: string): Role {
  const [top = '', second = '', ...rest] = path.split('/');
  if (top === 'stock' || top === 'trains') return goodsRole(path, top, [second, ...rest]);
  if (top === 'notebooks' && rest.length > 0) return notebookRole(path, second, rest);
  return stray(path, null, [
    'file-name',
    'this file is no part of the content',
    'the content folder holds stock/, trains/ and notebooks/<name>/',
  ]);
}
