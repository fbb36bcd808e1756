import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
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

async function pdfOf(stand: Stand, path: string, format: 'A4' | 'Letter'): Promise<Buffer> {
  const page = await stand.browser.newPage();
  const unit = format === 'A4' ? 'mm' : 'in';
  await page.addInitScript((chosen) => localStorage.setItem('fettlebook.unit', chosen), unit);
  await page.goto(stand.site.address + path);
  const bytes = await page.pdf({ format, preferCSSPageSize: true, tagged: true, printBackground: false });
  await page.close();
  return bytes;
}

async function printed(stand: Stand, path: string, format: 'A4' | 'Letter'): Promise<readonly Printed[]> {
  return pagesOf(await pdfOf(stand, path, format));
}

type Matrix = readonly [number, number, number, number, number, number];

/** One transformation after another: points go through `inner` first (ISO 32000-1, 8.3.4). */
function after([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix {
  return [p * a + q * c, p * b + q * d, r * a + s * c, r * b + s * d, t * a + u * c + e, t * b + u * d + f];
}

function sixOf(args: unknown): Matrix {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = Array.isArray(args) ? args.map(Number) : [];
  return [a, b, c, d, e, f];
}

/** Where a path lies on its page, mm from the lower left corner. */
type Box = { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };

/** The box of every path drawn on the pages of a PDF, by the operators of its content streams. */
async function pathBoxes(bytes: Buffer): Promise<readonly Box[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const numbers = Array.from({ length: document.numPages }, (_, i) => i + 1);
  const pages = await Promise.all(numbers.map(async (number) => (await document.getPage(number)).getOperatorList()));
  return pages.flatMap(({ fnArray, argsArray }) => {
    let now: Matrix = [1, 0, 0, 1, 0, 0];
    const kept: Matrix[] = [];
    return fnArray.flatMap((what, i): readonly Box[] => {
      const args: unknown = argsArray[i];
      if (what === OPS.save) kept.push(now);
      else if (what === OPS.restore) now = kept.pop() ?? now;
      else if (what === OPS.transform) now = after(now, sixOf(args));
      else if (what === OPS.constructPath && Array.isArray(args)) {
        const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = Array.from(args[2] ?? [], Number);
        const [a, b, c, d, e, f] = now;
        const mm = (points: number) => (points * 25.4) / 72;
        const xs = [x0, x1].flatMap((x) => [y0, y1].map((y) => mm(a * x + c * y + e)));
        const ys = [x0, x1].flatMap((x) => [y0, y1].map((y) => mm(b * x + d * y + f)));
        return [{ x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }];
      }
      return [];
    });
  });
}

/** Width and height of every path, mm. */
async function pathSizes(bytes: Buffer): Promise<readonly (readonly [number, number])[]> {
  return (await pathBoxes(bytes)).map(({ x0, x1, y0, y1 }) => [x1 - x0, y1 - y0] as const);
}

/** Frames of sheets among paths, which keep the shape of ISO 5457's frame on A4, 267 by 190 mm, however large they print. */
function framesIn(boxes: readonly Box[]): readonly Box[] {
  const shape = (297 - 30) / (210 - 20);
  return boxes.filter(({ x0, x1, y0, y1 }) => x1 - x0 > 100 && Math.abs((x1 - x0) / (y1 - y0) - shape) < 0.005);
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

    test.each([
      // the bar in the margin, the frame's width and height by ISO 5457's borders of 20 and 10 mm
      ['A4', 50, 297 - 30, 210 - 20],
      ['Letter', 50.8, 279.4 - 30, 215.9 - 20],
    ] as const)('a drawing fills its %s and is true to scale: the bar is %s mm', async (format, bar, width, height) => {
      const bytes = await pdfOf(stand, '/bittern-basin/drawings/part.side.front/', format);
      const sizes = await pathSizes(bytes);
      const off = (wanted: readonly [number, number]) =>
        Math.min(...sizes.map(([x, y]) => Math.max(Math.abs(x - wanted[0]), Math.abs(y - wanted[1]))));
      expect(off([0, bar])).toBeLessThan(0.05);
      expect(off([width, height])).toBeLessThan(0.1);
      const pages = await pagesOf(bytes);
      const lying = pages.filter((page) => page.width > page.height);
      // the words and the table of the part follow on one upright page or two
      expect([1, 2]).toContain(pages.length - lying.length);
      for (const page of lying) expect(page.words).toContain('this bar is');
    });

    test('a chapter prints the frames of its drawings whole, and none says a scale or has a bar that is not true', async () => {
      const bytes = await pdfOf(stand, '/bittern-basin/benchwork/', 'A4');
      const frames = framesIn(await pathBoxes(bytes));
      expect(frames.length).toBeGreaterThan(3);
      // ISO 216: A4 is 297 mm high.
      expect(frames.filter(({ y0, y1 }) => y0 < 0 || y1 > 297)).toEqual([]);
      expect(frames.filter(({ x0, x1 }) => Math.abs(x1 - x0 - 267) < 0.1)).toEqual([]);
      const words = (await pagesOf(bytes)).map((page) => page.words).join(' ');
      // one note for a drawing, which may have two sheets
      const notes = words.match(/Not to scale as printed here/g) ?? [];
      expect(notes.length).toBeGreaterThan(frames.length / 2);
      expect(notes.length).toBeLessThanOrEqual(frames.length);
      expect(words).not.toContain('this bar is');
      expect(words).not.toMatch(/deck left off 1:\d/);
    });

    /** Tests of the wiring and wires to cut that are on paper, of those the page holds; `how` changes the page first. */
    async function ofFolds(how: () => void): Promise<{ readonly held: number; readonly onPaper: number }> {
      const page = await stand.browser.newPage();
      await page.goto(`${stand.site.address}/bittern-basin/wiring/`);
      await page.evaluate(how);
      const held = await page.evaluate(() => document.querySelectorAll('.fold .tests li').length);
      const bytes = await page.pdf({ format: 'A4', preferCSSPageSize: true });
      await page.close();
      const words = (await pagesOf(bytes)).map((one) => one.words).join(' ');
      return { held, onPaper: words.match(/Must show/g)?.length ?? 0 };
    }

    test('what is folded on a screen is whole on paper', async () => {
      const { held, onPaper: printedOnes } = await ofFolds(() => {});
      expect(held).toBeGreaterThan(10);
      expect(printedOnes).toBe(held);
      // planted fault: details that neither the style nor the script knows as folds
      const lost = await ofFolds(() => {
        for (const fold of document.querySelectorAll('.tests')) fold.closest('details')?.classList.remove('fold');
      });
      expect(lost.onPaper).toBe(0);
    });

    test('details of joints print at least two to a page', async () => {
      const pages = await printed(stand, '/bittern-basin/benchwork/', 'A4');
      const counts = pages
        .map(({ words }) => words.match(/ of [\w-]+ and [\w-]+(?:, \d+ alike)? \d+:\d/g)?.length ?? 0)
        .filter((n) => n > 0);
      expect(counts.length).toBeGreaterThan(2);
      // the first page shares its paper with what stands before the joints
      expect(Math.min(...counts.slice(1, -1))).toBeGreaterThanOrEqual(2);
    });

    test.each(['A4', 'Letter'] as const)(
      'the assembly prints two steps or more to a page of %s, each with its words and its tick',
      async (format) => {
        const pages = await printed(stand, '/bittern-basin/assembly/', format);
        const counts = pages.map(({ words }) => words.match(/In place/g)?.length ?? 0);
        const steps = counts.filter((n) => n > 0);
        expect(steps.reduce((sum, n) => sum + n, 0)).toBeGreaterThan(15);
        // the last page of steps shares its paper with what comes after them
        expect(Math.min(...steps.slice(0, -1))).toBeGreaterThanOrEqual(2);
      },
    );

    test('a child’s steps print every drawing once', async () => {
      const pages = await printed(stand, '/bittern-basin/with-a-child/', 'A4');
      const words = pages.map((page) => page.words).join(' ');
      expect(words.match(/Its drawing is at step \d+ ?: Track from above/g)?.length).toBeGreaterThan(2);
      expect(words.match(/Track from above Not to scale/g)).toHaveLength(1);
      expect(words.match(/Contours of the land Not to scale/g)).toHaveLength(1);
    });

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
