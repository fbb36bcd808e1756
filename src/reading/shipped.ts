import { byCodeUnit, type ContentFile } from './content-file.ts';

/**
 * An author's content folder with the stock and trains that come with the project. A file of the same path is the
 * author's own version and wins.
 */
export function withShipped(own: readonly ContentFile[], shipped: readonly ContentFile[]): ContentFile[] {
  const paths = new Set(own.map((file) => file.path));
  const added = shipped.filter(({ path }) => /^(?:stock|trains)\//.test(path) && !paths.has(path));
  return [...own, ...added].sort((a, b) => byCodeUnit(a.path, b.path));
}
