import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import type { Server } from 'node:http';
import { join, relative } from 'node:path';
import { makeSite } from '../../src/cli/astro.ts';
import { listen, siteServer } from '../../src/cli/static-site.ts';
import { barbedContent } from './content.ts';

const root = new URL('../..', import.meta.url).pathname;

export type BuiltSite = {
  readonly folder: string;
  /** `http://127.0.0.1:4321`, without a slash at its end */
  readonly address: string;
  /** `/`, `/bittern-basin/`, ...; one of each kind of part, drawing and entry in `samples` */
  readonly pages: readonly string[];
  readonly files: readonly string[];
  readonly close: () => Promise<void>;
};

function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

function pagesIn(files: readonly string[]): readonly string[] {
  return files.filter((file) => file.endsWith('index.html')).map((file) => `/${file.replace(/index\.html$/, '')}`);
}

function closed(server: Server): Promise<void> {
  server.closeAllConnections();
  return new Promise((resolve) => server.close(() => resolve()));
}

/** The demo notebooks and the barbed one, built as `npm run build` builds them, and served. */
export async function builtSite(): Promise<BuiltSite> {
  // Inside the checkout, where Astro keeps its own half-made files beside it and no other build finds them.
  const folder = mkdtempSync(join(root, 'dist-browser-'));
  const content = await barbedContent();
  await makeSite(root)(content, folder);
  const server = siteServer(folder);
  const address = (await listen(server, 4400)).replace(/\/$/, '');
  const files = filesIn(folder);
  const close = async () => {
    await closed(server);
    for (const made of [folder, content]) rmSync(made, { recursive: true, force: true });
  };
  return { folder, address, pages: pagesIn(files), files, close };
}
