import { readFile } from 'node:fs/promises';
import { stripTypeScriptTypes } from 'node:module';
import type { Browser, Page } from 'playwright-core';

const root = new URL('../..', import.meta.url);
const host = 'http://sources.test';

/** Where the browser finds a package, from the project's folder. */
export function packageAddress(name: string): string {
  return import.meta.resolve(name).replace(root.href, '/');
}

/** A page that runs the project's own sources, their types taken off; ready when `name` is there. */
export async function sourcePage(browser: Browser, html: string, name: string): Promise<Page> {
  const page = await browser.newPage();
  await page.route(`${host}/**`, async (route) => {
    const { pathname } = new URL(route.request().url());
    if (pathname === '/') return route.fulfill({ contentType: 'text/html', body: html });
    const file = await readFile(new URL(`.${pathname}`, root));
    if (pathname.endsWith('.woff2')) return route.fulfill({ contentType: 'font/woff2', body: file });
    const text = file.toString('utf8');
    const body = pathname.endsWith('.ts') ? stripTypeScriptTypes(text) : text;
    return route.fulfill({ contentType: 'text/javascript', body });
  });
  await page.goto(`${host}/`);
  await page.waitForFunction(`globalThis.${name} !== undefined`);
  return page;
}
