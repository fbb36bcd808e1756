import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { Stand } from './stand.ts';

/** A browser that lists whatever it asked of another place, and whatever went wrong on a page. */
export async function watched(
  stand: Stand,
  options: Parameters<Browser['newContext']>[0],
): Promise<{ context: BrowserContext; page: Page; strange: readonly string[] }> {
  const context = await stand.browser.newContext(options);
  const page = await context.newPage();
  const strange: string[] = [];
  page.on('request', (request) => {
    if (!/^(?:data|blob):/.test(request.url()) && !request.url().startsWith(stand.site.address))
      strange.push(`asked ${request.url()}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) strange.push(`${response.status()} ${response.url()}`);
  });
  page.on('pageerror', (error) => strange.push(`threw ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') strange.push(`said ${message.text()}`);
  });
  return { context, page, strange };
}
