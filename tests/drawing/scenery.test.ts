import { describe, expect, test } from 'vitest';
import { sceneryModel } from '../../src/core/scenery/scenery.ts';
import type { SectionPlace } from '../../src/core/scenery/section.ts';
import { sitesOf } from '../../src/core/scenery/site.ts';
import { partOutline } from '../../src/core/stock/outline.ts';
import type { DrawingBook } from '../../src/drawing/book.ts';
import { layOutDrawing } from '../../src/drawing/layout.ts';
import { listDrawings } from '../../src/drawing/list.ts';
import type { Mark, Spot } from '../../src/drawing/mark.ts';
import { cutAlong } from '../../src/drawing/scenery/along-cut.ts';
import { heightLabels } from '../../src/drawing/scenery/contour-marks.ts';
import { textBox } from '../../src/drawing/text.ts';
import { around, bare, bench, deck, foam, hill, pond, struts } from '../core/scenery/table.ts';

const boards = [
  {
    id: 'back',
    at: '',
    bench: 'table',
    edge: 'back' as const,
    stock: { ...foam, id: 'ply-9', thickness: { ...foam.thickness, listed: 9 } },
  },
];
const land = { ...bare, forms: [{ ...hill, top: [600, 520] as const }], water: [pond], boards };
const scenery = sceneryModel(land, around);
const book: DrawingBook = {
  ...{ slug: 'pond', title: 'Pond', makers: ['a neighbour'], joints: [], seams: [], sheets: [] },
  ...{ benches: [bench], parts: [struts, deck, ...scenery.parts], scenery, requests: scenery.requests },
};
const options = { unit: 'mm', paper: 'A4' } as const;
const marksOf = (id: string) => layOutDrawing(book, id, options).sheets.flatMap(({ marks }) => marks);

/** Width and height of a ring, mm on paper. */
function sizeOf(points: readonly Spot[]): readonly [number, number] {
  const side = (axis: 0 | 1) => Math.max(...points.map((p) => p[axis])) - Math.min(...points.map((p) => p[axis]));
  return [side(0), side(1)];
}

const areas = (marks: readonly Mark[]) =>
  marks.flatMap((mark) => (mark.kind === 'polygon' && mark.role === 'outline' ? [mark] : []));

/** A place of a cut across the hill's top, whose board has a corner right there. */
const placeAt = (s: number, y: number): SectionPlace => ({ s, x: 600, y });

describe('drawings of the land', () => {
  test('the plan, two sections a hill, one a water, and a template for every piece are listed', () => {
    const ids = listDrawings(book).map(({ id }) => id);
    expect(ids).toEqual(
      expect.arrayContaining([
        'scenery.contours',
        'scenery.section.down-along',
        'scenery.section.down-across',
        'scenery.section.pond-across',
        'part.board.back',
        'part.layer.1',
      ]),
    );
  });

  test('a template is drawn true to its scale', () => {
    for (const part of scenery.parts) {
      const drawing = layOutDrawing(book, `part.${part.id}`, options);
      const [first] = areas(drawing.sheets.flatMap(({ marks }) => marks));
      const drawn = sizeOf(first?.rings[0] ?? []);
      const true_ = sizeOf(partOutline(part).outline);
      expect(drawn[0] * (drawing.scale ?? Number.NaN)).toBeCloseTo(true_[0], 6);
      expect(drawn[1] * (drawing.scale ?? Number.NaN)).toBeCloseTo(true_[1], 6);
    }
  });

  test('the plan has every contour at its scale, told in words', () => {
    const drawing = layOutDrawing(book, 'scenery.contours', options);
    const texts = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    for (const { level } of scenery.contours) expect(texts).toContain(String(level));
    expect(texts).toContain('pond');
    expect(drawing.desc).toContain('rises to 100 mm');
    expect(drawing.desc).toContain('cuts strut.across-1 and deck.1');
    const lines = drawing.marks.filter((mark) => mark.kind === 'polyline' && mark.role === 'feature');
    const widths = new Set(lines.map((mark) => (mark.kind === 'polyline' ? mark.pen : '')));
    expect([...widths].sort()).toEqual(['dimension', 'edge', 'feature']);
  });

  test('a contour is wide on the side away from the upper left, narrow towards it', () => {
    const [low] = scenery.contours;
    const round = {
      level: low?.level ?? 0,
      lines: [
        {
          closed: true,
          points: [
            [0, -10],
            [10, 0],
            [0, 10],
            [-10, 0],
          ] as const,
        },
      ],
    };
    const drawn = { ...book, scenery: { ...scenery, contours: [round], water: [], lines: [] } };
    const runs = layOutDrawing(drawn, 'scenery.contours', options).marks.filter(
      (mark) => mark.kind === 'polyline' && mark.role === 'feature',
    );
    const pens = runs.flatMap((mark) => (mark.kind === 'polyline' ? [[mark.pen, mark.points.length - 1]] : []));
    // counter-clockwise from its lowest point: lower right, upper right, upper left, lower left
    expect(pens).toEqual([
      ['edge', 1],
      ['feature', 1],
      ['dimension', 1],
      ['feature', 1],
    ]);
  });

  test('heights on the contours are read apart, in inches too', () => {
    const view = { name: 'contours', scale: 10, origin: [0, 0] as const, breaks: [] };
    const marks = heightLabels(view, scenery.contours, { unit: 'in', taken: [] });
    const boxes = marks.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
    expect(boxes.length).toBeGreaterThan(2);
    for (const [i, a] of boxes.entries()) {
      for (const b of boxes.slice(i + 1)) {
        const [across, up] = [Math.max(a.x0 - b.x1, b.x0 - a.x1), Math.max(a.y0 - b.y1, b.y0 - a.y1)];
        expect(across >= 1 || up >= 0.5).toBe(true);
      }
    }
  });

  test('a section shows the top, the layers under it and what bears it', () => {
    const marks = marksOf('scenery.section.down-along');
    const dashed = marks.filter((mark) => mark.kind === 'line' && mark.role === 'hidden');
    expect(dashed).toHaveLength(3);
    const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(texts).toContain('100');
    expect(texts).toContain('600');
  });

  test('a section through the corner of a profile board shows the board, and no layer runs through its place', () => {
    const labels = (id: string) => marksOf(id).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(labels('scenery.section.down-across')).toContain('P-back');
    const edge = { roles: ['profile-board'], way: [placeAt(0, 560), placeAt(40, 600)] };
    const cut = cutAlong(book, sitesOf([bench]), edge).flatMap(({ areas: own }) =>
      own.flatMap(({ outline }) => outline),
    );
    // 9 mm thick, its face flush with the back
    expect(Math.min(...cut.map(([s]) => s))).toBeCloseTo(31, 3);
    expect(Math.max(...cut.map(([s]) => s))).toBeCloseTo(40, 3);
  });

  test('a section across the water shows it below the deck top, the notch in its strut, and its name', () => {
    const drawing = layOutDrawing(book, 'scenery.section.pond-across', options);
    const marks = drawing.sheets.flatMap((sheet) => sheet.marks);
    const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(texts).toEqual(expect.arrayContaining(['pond', 'D1', '100', '400']));
    expect(texts.join(' ')).toContain('Datum: deck top, 700 mm over the floor');
    // the water is 100 mm across and 10 mm deep
    const water = areas(marks).find(({ fill }) => fill === 'shade');
    const [wide, deep] = sizeOf(water?.rings[0] ?? []);
    expect(
      [wide * (drawing.scale ?? Number.NaN), deep * (drawing.scale ?? Number.NaN)].map(
        (mm) => Math.round(mm * 100) / 100,
      ),
    ).toEqual([100, 10]);
  });

  test('the same cut drawn aslant or bent keeps every thickness it crosses', () => {
    const all = sitesOf(book.benches);
    const heights = (way: readonly SectionPlace[]) =>
      cutAlong(book, all, { way, roles: ['deck'] }).flatMap(({ areas: cut }) =>
        cut.map(({ outline }) => Math.max(...outline.map(([, z]) => z)) - Math.min(...outline.map(([, z]) => z))),
      );
    const bent = [
      { s: 0, x: 100, y: 400 },
      { s: 100 * Math.SQRT2, x: 200, y: 500 },
      { s: 100 * Math.SQRT2 + 300, x: 500, y: 500 },
    ];
    expect(heights(bent).map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([9]);
    // a strut 18 mm thick, met at 45 degrees
    const [strut] = cutAlong(book, all, {
      way: [
        { s: 0, x: 233, y: 350 },
        { s: 200 * Math.SQRT2, x: 433, y: 550 },
      ],
      roles: ['strut'],
    });
    const along = (strut?.areas ?? []).flatMap(({ outline }) => outline.map(([s]) => s));
    expect(Math.max(...along) - Math.min(...along)).toBeCloseTo(18 * Math.SQRT2, 3);
  });

  test("a strut's drawing names the notch and who asked, and leaves its limit to the findings", () => {
    const texts = layOutDrawing(book, 'part.strut.across-1', options).sheets.flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
    );
    expect(texts.join(' ')).toContain('notch 108 mm by 10 mm');
    expect(texts.join(' ')).not.toContain('keep within');
  });
});
