/**
 * One file of the content folder. `path` is relative to it, with forward slashes. Photos and whatever was not read
 * have no bytes; `size` is in bytes.
 */
export type ContentFile = {
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly kind: 'file' | 'link' | 'other' | 'too-large' | 'too-many' | 'unreadable';
  readonly size: number;
};

/** Most a text file may hold, bytes: a year of log entries fits in a tenth of it. */
export const MOST_TEXT = 1_000_000;
/** Most a photo may hold, bytes. */
export const MOST_PHOTO = 60_000_000;
/** Most files in one content folder. */
export const MOST_FILES = 20_000;
/** Deepest folder that is looked into, counted from the content folder. */
export const DEEPEST_FOLDER = 5;
/** Most characters of front matter, of one line, and of nested braces, brackets and steps of indent. */
export const MOST_FRONT_MATTER = 200_000;
export const LONGEST_LINE = 20_000;
export const DEEPEST_VALUE = 24;

/** By code unit, so that every file system gives one order. */
export function byCodeUnit(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
