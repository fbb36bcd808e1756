import { describe, expect, test } from 'vitest';
import { holds } from '../../src/core/geometry/polygon.ts';
import { compute } from '../../src/core/notebook.ts';
import { offsets } from '../../src/core/scenery/offsets.ts';
import { partOutline } from '../../src/core/stock/outline.ts';
import type { DrawingBook } from '../../src/drawing/book.ts';
import type { DrawingSheet, DrawingUnit } from '../../src/drawing/drawing.ts';
import { lengthText } from '../../src/drawing/figures.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { stationPitch } from '../../src/drawing/scenery/template-grid.ts';
import { loadContent } from '../../src/reading/disk.ts';
import { readContent } from '../../src/reading/read.ts';
import { complaints } from './checker.ts';

const content = readContent(await loadContent(new URL('../../content', import.meta.url).pathname));
const books: readonly DrawingBook[] = content.plans.flatMap((plan) => {
  const result = compute(plan);
  return result.ok && (result.value.scenery?.layers.length ?? 0) > 0 ? [result.value] : [];
});
const layers = books.flatMap((book) =>
  book.parts.filter(({ role }) => role === 'layer').map((part) => [part.id, book, part] as const),
);

const ways = [
  { unit: 'mm', paper: 'A4' },
  { unit: 'mm', paper: 'Letter' },
  { unit: 'in', paper: 'A4' },
  { unit: 'in', paper: 'Letter' },
] as const;

const textsOf = (sheets: readonly DrawingSheet[]) =>
  sheets.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));

/** A dashed line is spoken of if it is drawn, and drawn if it is spoken of. */
function dashFaults(sheets: readonly DrawingSheet[]): readonly string[] {
  const drawn = sheets.some(({ marks }) => marks.some((mark) => mark.kind === 'polyline' && mark.pen === 'hidden'));
  const said = textsOf(sheets).some((text) => text.includes('dashed one'));
  return drawn === said ? [] : [drawn ? 'a dashed line without a word' : 'words of a dashed line that is not there'];
}

describe('templates of the demo, to be cut from paper alone', () => {
  test('there are some', () => {
    expect(layers.length).toBeGreaterThan(5);
  });

  for (const [id, book, part] of layers) {
    test(`${id} has its offsets, datum and lines, and reads well on all papers`, () => {
      for (const way of ways) {
        const { sheets, ...drawing } = layOutDrawing(book, `part.${id}`, way);
        expect(complaints({ ...drawing, sheets }, way.paper)).toEqual([]);
        expect(dashFaults(sheets)).toEqual([]);
        const texts = textsOf(sheets);
        expect(offsetsMissing(way.unit, texts)).toEqual([]);
        // the planted fault: the table left out
        expect(
          offsetsMissing(
            way.unit,
            texts.filter((text) => !/^[\d. /+-]+ to |^touches/.test(text)),
          ).length,
        ).toBeGreaterThan(4);
        const [x = 0, y = 0] = part.places[0]?.pose.origin ?? [];
        const datum = texts.find((text) => text.startsWith('Lower left corner (0, 0)')) ?? '';
        expect(datum).toContain(`${lengthText(x, way.unit)} ${way.unit} from the left end`);
        expect(datum).toContain(`${lengthText(y, way.unit)} ${way.unit} from the front`);
      }
    });

    /** Offsets of the template that no text of its sheets prints. */
    const offsetsMissing = (unit: DrawingUnit, texts: readonly string[]) => {
      const shape = partOutline(part);
      const printed = new Set(texts.flatMap((text) => text.split(/ to |, |touches /)));
      const figures = offsets(shape, stationPitch(shape, unit)).flatMap(({ crossings }) =>
        crossings.map((y) => lengthText(y, unit)),
      );
      expect(figures.length).toBeGreaterThan(8);
      return figures.filter((figure) => !printed.has(figure));
    };

    test(`${id} has two pins at least, all in its own foam`, () => {
      const pins = part.places[0]?.marks ?? [];
      expect(pins.length).toBeGreaterThanOrEqual(2);
      for (const { at } of pins) expect(holds(partOutline(part), at)).toBe(true);
    });
  }

  test('a promise of a dashed line that is not drawn is found', () => {
    const [id, book] = layers.find(([, , part]) => part.id === 'layer.2-1') ?? [];
    if (book === undefined) throw new Error('the demo has no second layer');
    const { sheets } = layOutDrawing(book, `part.${id}`, ways[0]);
    const bare = sheets.map((sheet) => ({
      ...sheet,
      marks: sheet.marks.filter((mark) => mark.kind === 'text' || mark.pen !== 'hidden'),
    }));
    expect(dashFaults(bare)).toEqual(['words of a dashed line that is not there']);
  });
});
