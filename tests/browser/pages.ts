import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { overflow, shownText, sliding, smallTargets, violations } from './audit.ts';
import type { Stand } from './stand.ts';
import { watched } from './watched.ts';

/** `/bittern-basin/drawings/part.side.front/` is of the kind `drawings part`; a chapter's page is a kind of its own. */
function kindOf(path: string): string {
  const [, , section = '', leaf = ''] = path.split('/');
  return leaf === '' ? path : `${section} ${/^[a-z]*/.exec(leaf)?.[0] ?? leaf}`;
}

/**
 * Every page of every notebook down to its lists, and one of each kind of part, drawing, bay and entry: the hundreds of
 * others are made by the same templates from the same marks, and are read without JavaScript below.
 */
function looked(pages: readonly string[]): readonly string[] {
  const kinds = new Set<string>();
  return pages.filter((path) => {
    const kind = kindOf(path);
    if (kinds.has(kind)) return false;
    kinds.add(kind);
    return true;
  });
}

/** A tablet held upright, px: every table and drawing of the demos is seen whole on it. */
const TABLET = 820;

/** The pages of the site, at the width of a phone and of a desk. */
export function everyPage(stand: Stand): void {
  describe('every page', () => {
    test.concurrent.each([390, 1280])(
      'holds at %i px, light and dark: axe, targets, no sideways scrolling, nothing asked elsewhere',
      async (width) => {
        const { context, page, strange } = await watched(stand, {
          viewport: { width, height: 900 },
          colorScheme: 'light',
        });
        const found: string[] = [];
        for (const path of looked(stand.site.pages)) {
          await page.goto(stand.site.address + path);
          const wide = await overflow(page);
          if (wide > 0) found.push(`${path} is ${wide} px too wide`);
          for (const one of [...(await violations(page)), ...(await smallTargets(page))])
            found.push(`${path} light: ${one}`);
          await page.emulateMedia({ colorScheme: 'dark' });
          for (const one of await violations(page, { rules: ['color-contrast'] })) found.push(`${path} dark: ${one}`);
          await page.emulateMedia({ colorScheme: 'light' });
          if (width < TABLET) continue;
          await page.setViewportSize({ width: TABLET, height: 1180 });
          for (const one of await sliding(page)) found.push(`${path} on a tablet: ${one}`);
          await page.setViewportSize({ width, height: 900 });
        }
        await context.close();
        expect(looked(stand.site.pages).length).toBeGreaterThan(60);
        expect([...found, ...strange]).toEqual([]);
      },
      900_000,
    );

    test('would be found out: planted faults are seen', async () => {
      const { context, page, strange } = await watched(stand, { viewport: { width: 390, height: 900 } });
      await page.goto(`${stand.site.address}/limits/`);
      expect([await overflow(page), await violations(page), await smallTargets(page), strange]).toEqual([
        0,
        [],
        [],
        [],
      ]);
      await page.evaluate(async () => {
        document
          .querySelector('main')
          ?.insertAdjacentHTML(
            'beforeend',
            '<img src="/mark.svg"><nav><a href="/">x</a></nav><p class="faint">faint words</p><pre class="wide">wide</pre>',
          );
        document.querySelector<HTMLElement>('.faint')?.style.setProperty('color', '#ddd');
        document.querySelector<HTMLElement>('.wide')?.style.setProperty('width', '900px');
        await fetch('https://elsewhere.example/').catch(() => null);
      });
      expect(await overflow(page)).toBeGreaterThan(100);
      const rules = (await violations(page)).map((one) => one.split(':')[0]);
      expect(rules).toEqual(expect.arrayContaining(['color-contrast', 'image-alt']));
      expect(await smallTargets(page)).toHaveLength(1);
      expect(strange.join(' ')).toContain('elsewhere.example');
      await page.goto(`${stand.site.address}/bittern-basin/benchwork/`);
      expect((await sliding(page)).length).toBeGreaterThan(0);
      await context.close();
    });

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
      const { address, files, folder } = stand.site;
      const html = files
        .filter((file) => file.endsWith('.html'))
        .map((file) => readFileSync(join(folder, file), 'utf8'));
      const links = new Set(
        html.flatMap((page) => [...page.matchAll(/\s(?:href|src)="(\/[^"]*|#[^"]*)"/g)].map(([, to = '']) => to)),
      );
      const broken: string[] = [];
      const texts = new Map<string, string>();
      for (const to of [...links].filter((one) => one.startsWith('/'))) {
        const [path = '', anchor] = to.split('#');
        if (!texts.has(path)) {
          const answer = await fetch(address + path);
          if (answer.status !== 200 || answer.redirected) broken.push(`${answer.status} ${path}`);
          texts.set(path, await answer.text());
        }
        if (anchor && !texts.get(path)?.includes(`id="${anchor}"`)) broken.push(`no place ${to}`);
      }
      for (const page of html) {
        for (const [, anchor] of page.matchAll(/\shref="#([^"]+)"/g))
          if (!page.includes(`id="${anchor}"`)) broken.push(`no place #${anchor}`);
      }
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
