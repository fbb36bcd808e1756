import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { HtmlValidate } from 'html-validate';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { shownText } from './audit.ts';
import type { BuiltSite } from './built-site.ts';
import type { Stand } from './stand.ts';

function read(site: BuiltSite, file: string): string {
  return readFileSync(join(site.folder, file), 'utf8');
}

/** Nothing an author writes into .md runs; .mdx does. */
export function barbedNotebook(stand: Stand): void {
  describe('a barbed notebook', () => {
    test('runs nothing, loads nothing and hides nothing', async () => {
      const page = await stand.browser.newPage();
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      for (const path of stand.site.pages.filter((one) => one.startsWith('/barbed/'))) {
        await page.goto(stand.site.address + path);
        expect(await page.evaluate(() => (window as unknown as { barbed?: string }).barbed), path).toBe(undefined);
      }
      await page.goto(`${stand.site.address}/barbed/benchwork/`);
      const scripts = await page.evaluate(() =>
        [...document.scripts].map((script) => script.type + script.getAttribute('src')),
      );
      expect(
        scripts.filter((script) => !/^application\/ld\+jsonnull$|^(?:module)?\/(?:first\.js|_astro\/)/.test(script)),
      ).toEqual([]);
      const main = page.locator('main');
      await main.getByText('After the barbs.').waitFor();
      expect(await shownText(main)).toContain('Before the barbs, 1:87 at 12:30.');
      expect(
        await main.locator('iframe, style, img[onerror], [onclick], [ontoggle], meta, details:not(.fold)').count(),
      ).toBe(0);
      for (const link of await main.locator('a').all()) {
        expect(await link.getAttribute('href')).toMatch(/^(?:https?:|#|\/)/);
      }
      expect(asked.filter((url) => !url.startsWith(stand.site.address))).toEqual([]);
      await page.close();
    });

    test('keeps what ran away in its title, its photo and its data as words', async () => {
      const html = read(stand.site, 'barbed/benchwork/index.html');
      const data = /<script type="application\/ld\+json">([\s\S]*?)<\/script>/.exec(html)?.[1] ?? '';
      expect(JSON.parse(data).name).toContain('</title><script>');
    });

    test('an .mdx chapter runs, with the components that stand for directives', async () => {
      const page = await stand.browser.newPage();
      await page.goto(`${stand.site.address}/barbed/scenery/`);
      const words = (await shownText(page.locator('main'))).replaceAll('\u00A0', ' ');
      expect(words).toContain('Two and two are 4, and the side is 90 mm tall.');
      expect(await shownText(page.locator('#step-walk'))).toContain('Take the longest one.');
      expect(await page.locator('main svg.drawing').first().isVisible()).toBe(true);
      await page.close();
    });
  });
}

/** Photos are made anew. */
export function photosAnew(stand: Stand): void {
  describe('photos', () => {
    test('come out anew in several widths, without the place they were taken', async () => {
      const photos = stand.site.files.filter((file) => file.startsWith('barbed/photos/'));
      expect(photos).toEqual([
        'barbed/photos/wall.jpg.1200.jpg',
        'barbed/photos/wall.jpg.480.jpg',
        'barbed/photos/wall.jpg.960.jpg',
      ]);
      for (const file of photos) {
        const { exif, format, xmp } = await sharp(join(stand.site.folder, file)).metadata();
        expect([exif, format, xmp]).toEqual([undefined, 'jpeg', undefined]);
      }
      expect(stand.site.files.filter((file) => file.endsWith('/wall.jpg'))).toEqual([]);
    });
  });
}

/** What the build wrote, file by file. */
export function builtFiles(stand: Stand): void {
  describe('the built files', () => {
    test('are HTML that a validator accepts', async () => {
      const validator = new HtmlValidate({
        extends: ['html-validate:standard'],
        rules: {
          // Written by the compiler, and no matter to a browser.
          'doctype-style': 'off',
          'no-trailing-whitespace': 'off',
          'attribute-boolean-style': 'off',
          'long-title': 'off',
          // A group that scrolls is reached by a keyboard; a region for each table would be too many landmarks.
          'prefer-native-element': 'off',
          // Astro writes its policy where the head ends; the hashes in it are its own.
          'require-sri': 'off',
        },
      });
      const found: string[] = [];
      for (const file of stand.site.files.filter((one) => one.endsWith('.html'))) {
        const report = await validator.validateString(read(stand.site, file));
        for (const { messages } of report.results) {
          for (const { line, message, ruleId } of messages) found.push(`${file}:${line} ${ruleId} ${message}`);
        }
      }
      expect(found.slice(0, 40)).toEqual([]);
    });

    test('hold no style attribute and no handler, which the policy would refuse', () => {
      for (const file of stand.site.files.filter((one) => /\.(?:html|svg)$/.test(one))) {
        expect(read(stand.site, file), file).not.toMatch(/<[^>]*\s(?:style|on[a-z]+)="/);
      }
    });

    test('give a page at most 12 KB of script, compressed', () => {
      const scripts = stand.site.files.filter((file) => file.endsWith('.js'));
      const bytes = scripts.reduce(
        (sum, file) => sum + gzipSync(readFileSync(join(stand.site.folder, file))).length,
        0,
      );
      expect(scripts.length).toBeGreaterThanOrEqual(2);
      expect(bytes).toBeLessThanOrEqual(12 * 1024);
    });

    test('keep a policy on every page that lets nothing in from elsewhere', () => {
      for (const file of stand.site.files.filter((one) => one.endsWith('.html'))) {
        const policy = /http-equiv="content-security-policy" content="([^"]*)"/.exec(read(stand.site, file))?.[1] ?? '';
        expect(policy, file).toContain("default-src 'self'");
        expect(policy, file).not.toMatch(/unsafe|https?:|\*/);
      }
    });
  });
}
