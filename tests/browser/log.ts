import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Download, Page } from 'playwright-core';
import { describe, expect, onTestFinished, test } from 'vitest';
import { openBooks } from '../../src/cli/books.ts';
import { violations } from './audit.ts';
import type { Stand } from './stand.ts';
import { watched } from './watched.ts';

const root = new URL('../..', import.meta.url).pathname;

async function textOf(download: Download): Promise<string> {
  const stream = await download.createReadStream();
  return Buffer.concat(await stream.toArray()).toString();
}

async function saved(page: Page): Promise<{ readonly name: string; readonly text: string }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the entry as a file' }).click(),
  ]);
  return { name: download.suggestedFilename(), text: await textOf(download) };
}

/** The notebooks with one more entry in Bittern Basin's log, as `check` reads them. */
async function withEntry({ name, text }: { readonly name: string; readonly text: string }) {
  const content = mkdtempSync(join(tmpdir(), 'fettlebook-entry-'));
  onTestFinished(() => rmSync(content, { recursive: true, force: true }));
  cpSync(join(root, 'content'), content, { recursive: true });
  writeFileSync(join(content, 'notebooks', 'bittern-basin', 'log', name), text);
  const books = await openBooks(content, join(root, 'content'));
  return { ...books, book: books.notebooks.find(({ slug }) => slug === 'bittern-basin') };
}

const NOTES =
  'Cut :value[side] and ::parts\n<script>alert(1)</script> at 12:30, 1:160 — "quoted"\n\n---\n# not a title';

/** The page that makes an entry of ticks, minutes and notes. */
export function entryPage(stand: Stand): void {
  describe('the page that writes an entry', () => {
    test('keeps what is on it, works without a network, and its file is one that check accepts', async () => {
      const { context, page, strange } = await watched(stand, {
        acceptDownloads: true,
        viewport: { width: 390, height: 800 },
      });
      await page.goto(`${stand.site.address}/bittern-basin/write/`);
      expect(await page.getByLabel('Day').inputValue()).toMatch(/^\d{4}-\d\d-\d\d$/);
      await page.getByLabel('Day').fill('2026-11-21');
      await page.getByLabel('In a few words').fill('Ötto’s evening');
      await page.getByLabel('People').fill('2');
      await page.getByLabel('Minutes').fill('75');
      await page.getByLabel('Money spent').fill('18,5');
      const step = page.locator('input[name="done"]').first();
      const piece = page.locator('input[name="made"]').first();
      const [stepId, pieceId] = [await step.inputValue(), await piece.inputValue()];
      await step.check();
      await piece.check();
      await page.getByLabel('Notes').fill(NOTES);
      await page.reload();
      await context.setOffline(true);
      expect(await page.getByLabel('Minutes').inputValue()).toBe('75');
      expect(await step.isChecked()).toBe(true);
      await page.getByText('The file as it will be').click();
      const { name, text } = await saved(page);
      expect(await page.locator('[data-entry-text]').textContent()).toBe(text);
      expect(name).toBe('2026-11-21-otto-s-evening.md');
      expect(await violations(page)).toEqual([]);
      const { book, problems } = await withEntry({ name, text });
      expect(problems).toEqual([]);
      const entry = book?.log.find(({ id }) => `${id}.md` === name);
      expect(entry).toMatchObject({ minutes: 75, people: 2, spent: { value: 18.5, currency: 'EUR' } });
      expect([entry?.done, entry?.made]).toEqual([[stepId], [pieceId]]);
      await context.setOffline(false);
      await context.close();
      // Without a network a letter of a font not yet seen may be asked for in vain.
      expect(strange.filter((one) => !one.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([]);
    });

    test('takes over steps ticked on their chapter, unless they changed since', async () => {
      const { context, page } = await watched(stand, {});
      await page.goto(`${stand.site.address}/bittern-basin/write/`);
      const boxes = page.locator('input[name="done"]');
      const [first = '', second = ''] = await boxes.evaluateAll((all) =>
        all.map((box) => (box instanceof HTMLInputElement ? box.value : '')),
      );
      const chapter = first.split('.')[0];
      await page.goto(`${stand.site.address}/bittern-basin/${chapter}/`);
      await page.locator(`input[data-tick="step:${first}"]`).check();
      await page.evaluate((id) => {
        const ticks = JSON.parse(localStorage.getItem('fettlebook.ticks.bittern-basin') ?? '{}');
        localStorage.setItem('fettlebook.ticks.bittern-basin', JSON.stringify({ ...ticks, [`step:${id}`]: 'older' }));
      }, second);
      await page.goto(`${stand.site.address}/bittern-basin/write/`);
      expect(await page.locator(`input[name="done"][value="${first}"]`).isChecked()).toBe(true);
      expect(await page.locator(`input[name="done"][value="${second}"]`).isChecked()).toBe(false);
      await context.close();
    });

    test('asks for words before it saves, starts anew, and minds no strange store', async () => {
      const { context, page, strange } = await watched(stand, {});
      await page.goto(`${stand.site.address}/bittern-basin/write/`);
      for (const kept of ['[1', '7', 'null', '{"done":"x","minutes":{}}', '{"made":[1,null]}']) {
        await page.evaluate((text) => localStorage.setItem('fettlebook.entry.bittern-basin', text), kept);
        await page.reload();
        expect(await page.locator('form[data-entry]').isVisible()).toBe(true);
      }
      const title = page.getByLabel('In a few words');
      await page.getByRole('button', { name: 'Save the entry as a file' }).click();
      expect(await title.evaluate((box) => box.matches(':invalid'))).toBe(true);
      await title.fill('x');
      await page.getByRole('button', { name: 'Start anew' }).click();
      await page.reload();
      expect(await title.inputValue()).toBe('');
      await context.close();
      expect(strange).toEqual([]);
    });

    test('without a script says how else; the slip fits one sheet of paper', async () => {
      const { context, page } = await watched(stand, { javaScriptEnabled: false });
      await page.goto(`${stand.site.address}/bittern-basin/write/`);
      expect(await page.locator('form[data-entry]').isVisible()).toBe(false);
      expect(await page.getByText('npm run log').isVisible()).toBe(true);
      await page.goto(`${stand.site.address}/bittern-basin/slip/`);
      const pdf = (await page.pdf({ preferCSSPageSize: true, format: 'A4' })).toString('latin1');
      expect([...pdf.matchAll(/\/Type\s*\/Page\b(?!s)/g)]).toHaveLength(1);
      await context.close();
    });
  });
}

/** The log's timeline, and the way to what is hidden. */
export function logPages(stand: Stand): void {
  describe('the log', () => {
    test('is sifted by its links without a script', async () => {
      const { context, page } = await watched(stand, { javaScriptEnabled: false });
      await page.goto(`${stand.site.address}/bittern-basin/log/`);
      const entries = page.locator('ol.log > li');
      const shown = async () => {
        const all = await entries.all();
        return (await Promise.all(all.map((one) => one.isVisible()))).filter(Boolean).length;
      };
      const whole = await entries.count();
      expect(whole).toBeGreaterThanOrEqual(20);
      expect(await shown()).toBe(whole);
      await page.locator('.sifts').getByRole('link', { name: 'Running' }).click();
      expect(await shown()).toBe(await page.locator('ol.log > li.is-trial').count());
      expect(await page.getByText('Only entries with trains run.').isVisible()).toBe(true);
      await page.locator('.sift:target').getByRole('link', { name: 'Show all' }).click();
      expect(await shown()).toBe(whole);
      await context.close();
    });

    test('answers in two clicks from the cover what is behind the hill and how to get at it', async () => {
      const { context, page } = await watched(stand, { viewport: { width: 390, height: 800 } });
      await page.goto(`${stand.site.address}/bittern-basin/`);
      await page.getByRole('link', { name: /behind or under: chalk hill/i }).click();
      const answer = page.locator('#behind-chalk-hill').locator('xpath=..');
      expect(await answer.textContent()).toContain('lifts straight up');
      expect(await answer.locator('img').count()).toBe(1);
      await page.goto(`${stand.site.address}/bittern-basin/`);
      await page.getByRole('link', { name: 'Places' }).click();
      const listed = page.locator('#behind-chalk-hill');
      await listed.waitFor();
      expect(await listed.textContent()).toMatch(/chalk hill/i);
      expect(new URL(page.url()).pathname).toBe('/bittern-basin/places/');
      await context.close();
    });

    test('publishes no private photo, and no feed without an address of the site', () => {
      const { files } = stand.site;
      expect(files.filter((file) => /bittern-basin\/photos\/back-wall/.test(file)).length).toBeGreaterThan(0);
      expect(files.filter((file) => /helpers/.test(file))).toEqual([]);
      expect(files.filter((file) => file.endsWith('rss.xml'))).toEqual([]);
    });
  });
}
