import { describe, expect, test } from 'vitest';
import { overflow, shownText, smallTargets, violations } from './audit.ts';
import type { Stand } from './stand.ts';
import { watched } from './watched.ts';

/** Every page of the site, at the width of a phone and of a desk. */
export function everyPage(stand: Stand): void {
  describe('every page', () => {
    test.each([390, 1280])(
      'holds at %i px, light and dark: axe, targets, no sideways scrolling, nothing asked elsewhere',
      async (width) => {
        const { context, page, strange } = await watched(stand, {
          viewport: { width, height: 900 },
          colorScheme: 'light',
        });
        const found: string[] = [];
        for (const path of stand.site.pages) {
          await page.goto(stand.site.address + path);
          const wide = await overflow(page);
          if (wide > 0) found.push(`${path} is ${wide} px too wide`);
          for (const one of [...(await violations(page)), ...(await smallTargets(page))])
            found.push(`${path} light: ${one}`);
          await page.emulateMedia({ colorScheme: 'dark' });
          for (const one of await violations(page, { rules: ['color-contrast'] })) found.push(`${path} dark: ${one}`);
          await page.emulateMedia({ colorScheme: 'light' });
        }
        await context.close();
        expect(stand.site.pages.length).toBeGreaterThan(60);
        expect([...found, ...strange]).toEqual([]);
      },
      900_000,
    );

    test('has drawings whose lines and letters stand out, light and dark', async () => {
      const { context, page } = await watched(stand, {});
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        await page.goto(`${stand.site.address}/bittern-basin/drawings/benchwork.plan/`);
        expect(await violations(page, { drawings: 'inside' }), colorScheme).toEqual([]);
      }
      await context.close();
    });

    test('links only to what answers, and to places that are there', async () => {
      const { context, page } = await watched(stand, {});
      const links = new Set<string>();
      const broken: string[] = [];
      for (const path of stand.site.pages) {
        await page.goto(stand.site.address + path);
        const found = await page.evaluate(() =>
          [...document.querySelectorAll<HTMLAnchorElement>('a[href]')].map((link) => link.href),
        );
        for (const href of found) if (href.startsWith(stand.site.address)) links.add(href);
      }
      const anchors = new Map<string, string>();
      for (const href of links) {
        const [address = '', anchor] = href.split('#');
        if (!anchors.has(address)) {
          const answer = await fetch(address);
          if (answer.status !== 200 || answer.redirected) broken.push(`${answer.status} ${address}`);
          anchors.set(address, await answer.text());
        }
        if (anchor && !anchors.get(address)?.includes(`id="${decodeURIComponent(anchor)}"`))
          broken.push(`no place ${href}`);
      }
      await context.close();
      expect(links.size).toBeGreaterThan(100);
      expect(broken).toEqual([]);
    });

    test('can be read without JavaScript, in the unit of its notebook', async () => {
      const { context, page, strange } = await watched(stand, { javaScriptEnabled: false });
      for (const path of stand.site.pages) {
        await page.goto(stand.site.address + path);
        expect((await shownText(page.locator('main'))).length, path).toBeGreaterThan(40);
        expect(await page.locator('.switches').isVisible(), path).toBe(false);
        const lengths = page.locator('main .length .in').first();
        if ((await lengths.count()) > 0)
          expect(await lengths.isVisible(), path).toBe(path.startsWith('/lantern-siding/'));
      }
      await context.close();
      expect(strange).toEqual([]);
    });
  });
}
