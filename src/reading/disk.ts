import { constants } from 'node:fs';
import { lstat, mkdir, open, readdir, realpath, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { byCodeUnit, type ContentFile, DEEPEST_FOLDER, MOST_FILES, MOST_PHOTO, MOST_TEXT } from './content-file.ts';
import { withShipped } from './shipped.ts';

const NOTHING = new Uint8Array(0);

function isPhoto(path: string): boolean {
  return /^notebooks\/[^/]+\/photos\//.test(path);
}

function unread(path: string, kind: ContentFile['kind'], size = 0): ContentFile {
  return { path, bytes: NOTHING, kind, size };
}

/** Reads a file without following a link that was put there meanwhile, and without waiting for a pipe. */
async function readPlainFile(full: string): Promise<Uint8Array> {
  const file = await open(full, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0));
  try {
    return new Uint8Array(await file.readFile());
  } finally {
    await file.close();
  }
}

async function fileAt(root: string, path: string): Promise<ContentFile> {
  try {
    const full = join(root, path);
    const stat = await lstat(full);
    if (stat.isSymbolicLink()) return unread(path, 'link');
    if (!stat.isFile()) return unread(path, 'other');
    const photo = isPhoto(path);
    if (stat.size > (photo ? MOST_PHOTO : MOST_TEXT)) return unread(path, 'too-large', stat.size);
    return { path, bytes: photo ? NOTHING : await readPlainFile(full), kind: 'file', size: stat.size };
  } catch {
    return unread(path, 'unreadable');
  }
}

type Listing = { readonly paths: readonly string[]; readonly folders: readonly string[]; readonly failed: boolean };

/** Names in one folder; what begins with a dot is the machine's, not the author's. */
async function listing(root: string, folder: string): Promise<Listing> {
  try {
    const found = await readdir(join(root, folder), { withFileTypes: true });
    const seen = found.filter((entry) => !entry.name.startsWith('.'));
    const path = (name: string) => (folder === '' ? name : `${folder}/${name}`);
    return {
      paths: seen.filter((entry) => !entry.isDirectory()).map((entry) => path(entry.name)),
      folders: seen.filter((entry) => entry.isDirectory()).map((entry) => path(entry.name)),
      failed: false,
    };
  } catch {
    return { paths: [], folders: [], failed: true };
  }
}

async function listFiles(root: string): Promise<readonly ContentFile[]> {
  const files: ContentFile[] = [];
  let folders: readonly string[] = [''];
  for (let depth = 0; folders.length > 0 && files.length <= MOST_FILES; depth += 1) {
    const next: string[] = [];
    for (const folder of folders) {
      const found = await listing(root, folder);
      if (found.failed && folder !== '') files.push(unread(folder, 'unreadable'));
      next.push(...found.folders);
      for (const path of found.paths) {
        if (files.length <= MOST_FILES) files.push(await fileAt(root, path));
      }
    }
    folders = depth < DEEPEST_FOLDER ? next.slice(0, MOST_FILES) : [];
  }
  return files;
}

/**
 * Reads the content folder: texts whole, photos by name and size only. Links are listed and never followed; size,
 * count and depth are bounded. The order is the same on every machine. An absent folder gives no files.
 */
export async function loadContent(folder: string): Promise<ContentFile[]> {
  const root = await realpath(folder).catch(() => folder);
  const files = [...(await listFiles(root))].sort((a, b) => byCodeUnit(a.path, b.path));
  if (files.length <= MOST_FILES) return files;
  return [...files.slice(0, MOST_FILES), unread('', 'too-many', files.length)];
}

/** An author's content folder with the stock and trains of the project's own; the author's files win. */
export async function loadWithShipped(folder: string, shipped: string): Promise<ContentFile[]> {
  const own = await loadContent(folder);
  return resolve(folder) === resolve(shipped) ? own : withShipped(own, await loadContent(shipped));
}

/** Writes texts by name into one folder, which is made if it is not there. */
export async function writeTexts(folder: string, texts: Readonly<Record<string, string>>): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const [name, text] of Object.entries(texts)) await writeFile(join(folder, name), text);
}
