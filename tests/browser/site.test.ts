import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { overflow, smallTargets, violations } from './audit.ts';
import { type BuiltSite, builtSite } from './built-site.ts';
import { launchChromium } from './chromium.ts';

let site: BuiltSite;
let browser: Browser;

beforeAll(async () => {
  [site, browser] = await Promise.all([builtSite(), launchChromium()]);
});

afterAll(async () => {
  await browser?.close();
  await site?.close();
});

/** A browser that lists whatever it asked of another place, and whatever went wrong on a page. */
async function watched(
  options: Parameters<Browser['newContext']>[0],
): Promise<{ context: BrowserContext; page: Page; strange: string[] }> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const strange: string[] = [];
  page.on('request', (request) => {
    if (!/^(?:data|blob):/.test(request.url()) && !request.url().startsWith(site.address))
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

describe('every page', () => {
  test.each([390, 1280])(
    'holds at %i px, light and dark: axe, targets, no sideways scrolling, nothing asked elsewhere',
    async (width) => {
      const { context, page, strange } = await watched({ viewport: { width, height: 900 }, colorScheme: 'light' });
      const found: string[] = [];
      for (const path of site.pages) {
        await page.goto(site.address + path);
        const wide = await overflow(page);
        if (wide > 0) found.push(`${path} is ${wide} px too wide`);
        for (const one of [...(await violations(page)), ...(await smallTargets(page))])
          found.push(`${path} light: ${one}`);
        await page.emulateMedia({ colorScheme: 'dark' });
        for (const one of await violations(page, ['color-contrast'])) found.push(`${path} dark: ${one}`);
        await page.emulateMedia({ colorScheme: 'light' });
      }
      await context.close();
      expect(site.pages.length).toBeGreaterThan(60);
      expect([...found, ...strange]).toEqual([]);
    },
    900_000,
  );

  test('links only to what answers, and to places that are there', async () => {
    const { context, page } = await watched({});
    const links = new Set<string>();
    const broken: string[] = [];
    for (const path of site.pages) {
      await page.goto(site.address + path);
      const found = await page.evaluate(() =>
        [...document.querySelectorAll<HTMLAnchorElement>('a[href]')].map((link) => link.href),
      );
      for (const href of found) if (href.startsWith(site.address)) links.add(href);
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
    const { context, page, strange } = await watched({ javaScriptEnabled: false });
    for (const path of site.pages) {
      await page.goto(site.address + path);
      expect((await page.locator('main').innerText()).length, path).toBeGreaterThan(40);
      expect(await page.locator('.switches').isVisible(), path).toBe(false);
      const lengths = page.locator('main .length .in').first();
      if ((await lengths.count()) > 0)
        expect(await lengths.isVisible(), path).toBe(path.startsWith('/lantern-siding/'));
    }
    await context.close();
    expect(strange).toEqual([]);
  });
});

describe('the switches', () => {
  test('change words, drawings and tables at once, and are remembered', async () => {
    const { context, page } = await watched({});
    await page.goto(`${site.address}/bittern-basin/benchwork/`);
    const drawing = (unit: string) => page.locator(`.drawing-view.${unit} svg`).first();
    expect(await drawing('mm').isVisible()).toBe(true);
    await page.getByRole('button', { name: 'inch' }).click();
    expect(await drawing('mm').isVisible()).toBe(false);
    expect(await drawing('in').isVisible()).toBe(true);
    expect(await page.locator('.cut-list td .mm').first().isVisible()).toBe(false);
    await page.getByRole('button', { name: 'Dark' }).click();
    await page.goto(`${site.address}/window-shelf/`);
    expect(await page.locator('html').getAttribute('data-unit')).toBe('in');
    expect(await page.locator('html').getAttribute('data-theme')).toBe('dark');
    expect(await page.getByRole('button', { name: 'inch' }).getAttribute('aria-pressed')).toBe('true');
    await context.close();
  });
});

describe('tick boxes', () => {
  test('outlive the visit, come off when the step changes, and can be saved', async () => {
    const { context, page } = await watched({ acceptDownloads: true });
    await page.goto(`${site.address}/bittern-basin/benchwork/`);
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

  test('stay off when the browser keeps something strange', async () => {
    const { context, page, strange } = await watched({});
    await page.goto(`${site.address}/bittern-basin/benchwork/`);
    for (const kept of ['[1', '7', 'null', '{"step:benchwork.rout":{"a":1}}']) {
      await page.evaluate((text) => localStorage.setItem('fettlebook.ticks.bittern-basin', text), kept);
      await page.reload();
      expect(await page.locator('input[data-tick]:checked').count()).toBe(0);
    }
    await context.close();
    expect(strange).toEqual([]);
  });
});

describe('a drawing', () => {
  test('fills the screen by its link, grows by keys and by buttons, and closes', async () => {
    const { context, page } = await watched({ viewport: { width: 390, height: 800 } });
    await page.goto(`${site.address}/bittern-basin/benchwork/`);
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
