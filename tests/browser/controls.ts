import { describe, expect, test } from 'vitest';
import { violations } from './audit.ts';
import type { Stand } from './stand.ts';
import { watched } from './watched.ts';

/** The switches for units and brightness. */
export function switches(stand: Stand): void {
  describe('the switches', () => {
    test('change words, drawings and tables at once, and are remembered', async () => {
      const { context, page } = await watched(stand, {});
      await page.goto(`${stand.site.address}/bittern-basin/benchwork/`);
      const drawing = (unit: string) => page.locator(`.drawing-view.${unit} svg`).first();
      expect(await drawing('mm').isVisible()).toBe(true);
      await page.getByRole('button', { name: 'inch' }).click();
      expect(await drawing('mm').isVisible()).toBe(false);
      expect(await drawing('in').isVisible()).toBe(true);
      expect(await page.locator('.cut-list td .mm').first().isVisible()).toBe(false);
      await page.getByRole('button', { name: 'Dark' }).click();
      await page.goto(`${stand.site.address}/window-shelf/`);
      expect(await page.locator('html').getAttribute('data-unit')).toBe('in');
      expect(await page.locator('html').getAttribute('data-theme')).toBe('dark');
      expect(await page.getByRole('button', { name: 'inch' }).getAttribute('aria-pressed')).toBe('true');
      await context.close();
    });
  });
}

/** Tick boxes that persist. */
export function tickBoxes(stand: Stand): void {
  describe('tick boxes', () => {
    test('outlive the visit, come off when the step changes, and can be saved', async () => {
      const { context, page } = await watched(stand, { acceptDownloads: true });
      await page.goto(`${stand.site.address}/bittern-basin/benchwork/`);
      const box = page.locator('input[data-tick="step:benchwork.rout"]');
      await box.check();
      await page.reload();
      expect(await box.isChecked()).toBe(true);
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: 'Save my ticks' }).click(),
      ]);
      expect(download.suggestedFilename()).toBe('bittern-basin-ticks.json');
      const stream = await download.createReadStream();
      const saved = JSON.parse(Buffer.concat(await stream.toArray()).toString());
      expect(Object.keys(saved.ticks)).toEqual(['step:benchwork.rout']);
      await page.evaluate(() =>
        localStorage.setItem('fettlebook.ticks.bittern-basin', '{"step:benchwork.rout":"another content"}'),
      );
      await page.reload();
      expect(await box.isChecked()).toBe(false);
      expect(await page.locator('#step-rout .tick-changed').isVisible()).toBe(true);
      await context.close();
    });

    test('of cuts and of things to buy outlive the visit, each on its own page', async () => {
      const { context, page } = await watched(stand, {});
      for (const path of ['/bittern-basin/sheets/2/', '/bittern-basin/shopping/']) {
        await page.goto(stand.site.address + path);
        const boxes = page.locator('input[data-tick]');
        expect(await boxes.count()).toBeGreaterThan(5);
        await boxes.nth(2).check();
      }
      for (const path of ['/bittern-basin/sheets/2/', '/bittern-basin/shopping/']) {
        await page.goto(stand.site.address + path);
        const boxes = await page.locator('input[data-tick]').all();
        const ticked = await Promise.all(boxes.map((box) => box.isChecked()));
        expect(ticked.flatMap((is, i) => (is ? [i] : []))).toEqual([2]);
      }
      await context.close();
    });

    test('stay off when the browser keeps something strange', async () => {
      const { context, page, strange } = await watched(stand, {});
      await page.goto(`${stand.site.address}/bittern-basin/benchwork/`);
      for (const kept of ['[1', '7', 'null', '{"step:benchwork.rout":{"a":1}}']) {
        await page.evaluate((text) => localStorage.setItem('fettlebook.ticks.bittern-basin', text), kept);
        await page.reload();
        expect(await page.locator('input[data-tick]:checked').count()).toBe(0);
      }
      await context.close();
      expect(strange).toEqual([]);
    });
  });
}

/** Drawings that fill the screen. */
export function drawings(stand: Stand): void {
  describe('a drawing', () => {
    test('fills the screen by its link, grows by keys and by buttons, and closes', async () => {
      const { context, page } = await watched(stand, { viewport: { width: 390, height: 800 } });
      await page.goto(`${stand.site.address}/bittern-basin/benchwork/`);
      await page.getByRole('link', { name: 'Enlarge' }).first().focus();
      await page.keyboard.press('Enter');
      const view = page.locator('dialog .drawing-view');
      const width = async () => (await view.boundingBox())?.width ?? 0;
      const before = await width();
      await page.keyboard.press('+');
      expect(await width()).toBeGreaterThan(before * 1.4);
      await page.getByRole('button', { name: 'Reduce' }).click();
      expect(await width()).toBeCloseTo(before, 0);
      expect(await violations(page)).toEqual([]);
      await page.keyboard.press('Escape');
      expect(await page.locator('dialog').isVisible()).toBe(false);
      await context.close();
    });
  });
}
