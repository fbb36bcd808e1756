import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import type { Stand } from './stand.ts';

type Printed = { readonly width: number; readonly height: number; readonly words: string };

/** The pages of a PDF: size in mm and the words on each. 1 pt = 25.4 / 72 mm (PDF, ISO 32000-1, 8.3.2.3). */
async function pagesOf(bytes: Buffer): Promise<readonly Printed[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const numbers = Array.from({ length: document.numPages }, (_, i) => i + 1);
  return Promise.all(
    numbers.map(async (number) => {
      const page = await document.getPage(number);
      const [, , width = 0, height = 0] = page.view;
      const { items } = await page.getTextContent();
      const words = items
        .map((item) => ('str' in item ? item.str : ''))
        .join(' ')
        .replaceAll(/\s+/g, ' ');
      return { width: (width * 25.4) / 72, height: (height * 25.4) / 72, words };
    }),
  );
}

async function printed(stand: Stand, path: string, format: 'A4' | 'Letter'): Promise<readonly Printed[]> {
  const page = await stand.browser.newPage();
  await page.goto(stand.site.address + path);
  const bytes = await page.pdf({ format, preferCSSPageSize: true, tagged: true, printBackground: false });
  await page.close();
  return pagesOf(bytes);
}

/** Chapters and sheets as they come out of a printer. */
export function onPaper(stand: Stand): void {
  describe('on paper', () => {
    test.each([
      // ISO 216: A4 is 210 by 297 mm; ANSI/ASME Y14.1: Letter is 8.5 by 11 in.
      ['A4', 210, 297],
      ['Letter', 215.9, 279.4],
    ] as const)(
      'a chapter fills %s, with its contents, its steps, and a number on each page',
      async (format, width, height) => {
        const pages = await printed(stand, '/bittern-basin/benchwork/', format);
        expect(pages.length).toBeGreaterThan(2);
        pages.forEach((page, i) => {
          expect(Math.abs(page.width - width)).toBeLessThan(0.5);
          expect(Math.abs(page.height - height)).toBeLessThan(0.5);
          expect(page.words.replaceAll(' ', '')).toContain(`${i + 1}/${pages.length}`);
        });
        const words = pages.map((page) => page.words).join(' ');
        expect(words).toContain('On this page');
        expect(words).toContain('Rip the frame strips');
        expect(words).not.toContain('Skip to the page');
        expect(words).not.toContain('Save my ticks');
      },
    );

    test.each(['/bittern-basin/sheets/', '/bittern-basin/shopping/', '/bittern-basin/', '/lantern-siding/benchwork/'])(
      '%s prints',
      async (path) => {
        const pages = await printed(stand, path, 'A4');
        expect(pages.map((page) => page.words).join(' ').length).toBeGreaterThan(200);
      },
    );

    test('a sheet prints with its drawing first, every cut to tick after it, and no list of cuts twice', async () => {
      const pages = await printed(stand, '/bittern-basin/sheets/2/', 'A4');
      const words = pages.map((page) => page.words).join(' ');
      expect(pages[0]?.words).toContain('Cutting layout');
      expect(words).toContain('What falls off');
      expect(words).toContain('Trim the lower edge');
      expect(words).not.toContain('Save my ticks');
      const orders = words.match(/Cuts in order/g) ?? [];
      expect(orders.length).toBeLessThanOrEqual(1);
    });
  });
}
